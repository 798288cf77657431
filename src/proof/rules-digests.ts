/** SHA-256 of the built file of each version of the rules, `infra/rules/<version>.js`; written by `npm run rules`. */
export const rulesDigests: Readonly<Record<number, string>> = {
  1: "60c57008c3a68733a1a9c907f5af147886d60b86fa87baa209ca459b750d0301",
};
