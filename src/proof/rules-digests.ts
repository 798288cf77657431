/** SHA-256 of the built file of each version of the rules, `infra/rules/<version>.js`; written by `npm run rules`. */
export const rulesDigests: Readonly<Record<number, string>> = {
  1: "eb6440ff9eedc475d692a7003ec280778e13a632bdf8f93b39991d49f0ba27b0",
};
