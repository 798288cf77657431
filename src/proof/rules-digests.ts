/** SHA-256 of the built file of each version of the rules, `infra/rules/<version>.js`; written by `npm run rules`. */
export const rulesDigests: Readonly<Record<number, string>> = {
  1: "c21a65d105e3679c6fa4e5341b025df92150b3e5caae2c0d30cd09e547470a6c",
};
