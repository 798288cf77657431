export { lookAlike } from "./alike.ts";
export { isPlainlyShown, shownText } from "./shown.ts";
