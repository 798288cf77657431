import { productOfThree, waterCases } from "../helpers/doubt/cases-water.ts";
import { againstChance } from "./against-chance.ts";

againstChance([productOfThree, ...waterCases]);
