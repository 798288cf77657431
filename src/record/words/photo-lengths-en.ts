/** What a photo with a card in it measured, beside what the tape said, in English. */
export const photoLengthsEn = {
  both: "Tape: {tape} ± {tapeDoubt}; in the photo: {measured} ± {measuredDoubt}.",
  tape: "Tape: {tape} ± {tapeDoubt}.",
  photo: "In the photo: {measured} ± {measuredDoubt}.",
  length: "{measured} ± {measuredDoubt}",
  agree: "They agree.",
  disagree: "They do not agree.",
  "cannot tell": "The photo cannot tell: {why}.",
  often: "Measured in photos {times} times; the last one is compared.",
  "because-no reading": "no reading by tape counts here",
  "because-not flat": "the card did not lie flat",
  "because-card elsewhere": "looked at once more, the photo shows the card in another place",
  "because-too doubtful": "it would have to be known to ± {needed}",
  "because-tape too rough": "the tape's reading would have to be known to ± {needed}",
  "because-card not found": "looked at once more, the photo shows no card",
  "because-not shown": "somebody looked at the picture, and it does not show it",
  "because-refused": "what was entered with it makes no length",
} as const;

export type PhotoLengthSentence = keyof typeof photoLengthsEn;
