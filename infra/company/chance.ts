export { type Chance, chanceFrom } from "../chance/index.ts";
