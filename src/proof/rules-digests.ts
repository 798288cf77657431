/** SHA-256 of the built file of each version of the rules, `infra/rules/<version>.js`; written by `npm run rules`. */
export const rulesDigests: Readonly<Record<number, string>> = {
  1: "d17b864949fe4c67c7268bd79afef17587a677f484b5eef3e4e3a7bd68deb9e5",
};
