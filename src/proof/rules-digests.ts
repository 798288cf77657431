/** SHA-256 of the built file of each version of the rules, `infra/rules/<version>.js`; written by `npm run rules`. */
export const rulesDigests: Readonly<Record<number, string>> = {
  1: "ef2fa4b354d2df8acbbbb42b4a34755e54749518fd6626f6784760009996ce86",
};
