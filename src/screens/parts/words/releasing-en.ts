/** Words of the office's page for a record that is issued in a language and released to its receiver, in English. */
export const releasingEn = {
  "issue-language": "In the language of its receiver",
  "issue-language-en": "English",
  "issue-language-es": "Spanish",
  "releasing-title": "Release version {version} to its receiver",
  "releasing-how":
    "Issued is not yet released. Releasing is told in the job and makes a link that opens the record on a phone without sign-in, until you end it.",
  "releasing-to": "To whom, and how",
  "releasing-do": "Release it",
  "releasing-made": "Released. The link is shown only now: copy it and give it to the receiver.",
  "releasing-open": "{to}: released {time}, the link opens the record.",
  "releasing-ended": "{to}: the link ended {time}.",
  "releasing-end": "End this link",
  "message-about-released": "A message with this link",
  "message-about-others": "A message with this link for them",
  "message-about-warranty": "A message about the days to come",
  "message-how":
    "The message is a file that your own mail program opens and sends. Nothing is sent from here unless a mail service is named for this installation.",
  "message-name": "For whom",
  "message-address": "Mail address",
  "message-language": "In the language of its reader",
  "message-make": "Make the message",
  "message-send": "Send it from here",
  "message-making": "Making it …",
  "message-made": "Made. Open the file and send it.",
  "message-sent": "Sent: the mail service took it.",
} as const;
