export { clockThatCanBeSet, setClock } from "./clock.ts";
export { crewScreens } from "./list.ts";
export { sizes, type WalkPlan, walkScreens } from "./walk.ts";
