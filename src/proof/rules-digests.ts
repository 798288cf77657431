/** SHA-256 of the built file of each version of the rules, `infra/rules/<version>.js`; written by `npm run rules`. */
export const rulesDigests: Readonly<Record<number, string>> = {
  1: "b05bf0c2ab7506478c2cb8beba1cecc3f6ca5c26c7da8b1992354b1c27967523",
};
