import { lineCases } from "../helpers/doubt/cases-line.ts";
import { againstChance } from "./against-chance.ts";

againstChance(lineCases);
