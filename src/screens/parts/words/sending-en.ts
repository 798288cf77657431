/** The crew's phone: what is kept, what is sent, who enters. */
export const sendingEn = {
  "newer-app": "A newer version lies ready.",
  "take-newer": "Take it now",
  "signed-out-kept": "Signed out. Everything is kept on this phone; ask the office for a new link and it goes on by itself.",
  "phone-person": "Enters here",
  "phone-who": "Who enters on this phone today?",
  "phone-not-sent-one": "1 not sent.",
  "phone-not-sent-other": "{count} not sent.",
  "phone-troubled-one": "1 not taken by the office: read why.",
  "phone-troubled-other": "{count} not taken by the office: read why.",
  "phone-sending": "Sending a picture: {share} %.",
  "phone-away": "No answer since {time}.",
  "phone-all-sent": "Everything sent. Read at {time}.",
  "phone-signed-out": "Signed out.",
  "phone-not-here": "Not on this phone",
  "phone-not-here-how": "This phone does not hold it yet. With signal it comes by itself.",
} as const;
