/** Words of the printed cards that lie in pictures, in English. `{…}` are figures. */
export const cardsEn = {
  document: "Cards for pictures: {job}",
  kind: "Card for pictures",
  step: "Step {number}",
  "any-step": "Any step",
  codes: "Four codes that name this card's job and step",
  "how.flat":
    "Lay it flat on the plane that is measured, nothing under it and nothing over its codes. Bent or lifted at a corner, it measures another plane.",
  "how.near": "Take the picture so that all four codes are in it and what is measured lies within two lengths of the card.",
  "how.agrees": "The codes tell which job and step the picture belongs to. Where the picture was put elsewhere, somebody is asked.",
  "how.ruler":
    "Before use, lay a tape against the ruler. Unless it reads 10\u00a0in (254\u00a0mm), print again at 100 %, not fitted to the page.",
  "how.caution": "Nobody goes into a trench, under a stone or near wiring for a card: then it is left out.",
} as const;

export type CardsWord = keyof typeof cardsEn;
