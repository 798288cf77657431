/** SHA-256 of the built file of each version of the rules, `infra/rules/<version>.js`; written by `npm run rules`. */
export const rulesDigests: Readonly<Record<number, string>> = {
  1: "fac66de1aad37d2834a8f7b48b1541e7073278bc6cd9c80f56928db93ccf2035",
};
