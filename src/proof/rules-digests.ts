/** SHA-256 of the built file of each version of the rules, `infra/rules/<version>.js`; written by `npm run rules`. */
export const rulesDigests: Readonly<Record<number, string>> = {
  1: "f2bca37b3377a1ef8e74303369a73696993449bbcf95cad290bbb2c84d4a9819",
};
