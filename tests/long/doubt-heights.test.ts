import { heightCases } from "../helpers/doubt/cases-heights.ts";
import { againstChance } from "./against-chance.ts";

againstChance(heightCases);
