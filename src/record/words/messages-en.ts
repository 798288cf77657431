/** What the company writes to others, in English. `{…}` are filled in. */
export const messagesEn = {
  "greeting-named": "Hello {name},",
  greeting: "Hello,",
  "released-subject": "{job}: the record of what was built and buried",
  "released-1":
    "The record of {job} is ready: what was built, what lies buried where, how to run it, and how to check that nothing of it was changed.",
  "released-2": "It opens here without signing in, until we end the link:",
  "released-3": "Please save the PDF that it leads to, and give it to whoever owns the place after you.",
  "others-subject": "{job}: your paper for {what}",
  "others-1": "At {job} we need your paper for {what}, with your name and what you did.",
  "others-2": "This link is for you alone. It needs no sign-in, and it ends when you have used it:",
  "warranty-subject": "{job}: days of service and of cover",
  "warranty-1": "These are the days of {job} that are still to come, as they stand on {day}:",
  "warranty-none": "No day of {job} is still to come, as it stands on {day}.",
  "warranty-2": "They are in the calendar file with this message too. What holds is the text of our terms.",
  "notice-subject": "Warranties: what comes until {day}",
  "notice-1": "As it is entered today, these days come within the next {days} days:",
  "notice-2": "What has passed already stands in the register of warranties.",
} as const;

export type MessageText = keyof typeof messagesEn;
