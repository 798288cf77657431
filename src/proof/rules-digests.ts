/** SHA-256 of the built file of each version of the rules, `infra/rules/<version>.js`; written by `npm run rules`. */
export const rulesDigests: Readonly<Record<number, string>> = {
  1: "7ee343ad3954d462d7637c85833d1d883aac1c3e348f892edbd067a12d21d840",
};
