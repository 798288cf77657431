export { type CardsSurroundings, cardsPages } from "./page.ts";
