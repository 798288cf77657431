export { keySet, newKey, type SigningKey, signingKey } from "./keys.ts";
export { signed } from "./sign.ts";
