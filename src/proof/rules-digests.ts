/** SHA-256 of the built file of each version of the rules, `infra/rules/<version>.js`; written by `npm run rules`. */
export const rulesDigests: Readonly<Record<number, string>> = {
  1: "47d7c2d0d0e66e77aa478dbb7e473558ef2b9a456c9373d1a69d0efb965d23d8",
};
