/** SHA-256 of the built file of each version of the rules, `infra/rules/<version>.js`; written by `npm run rules`. */
export const rulesDigests: Readonly<Record<number, string>> = {
  1: "874e5acc936309534f1deaa2ef410b93185843263e7a576a26118f15e683f582",
};
