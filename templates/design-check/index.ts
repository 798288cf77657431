export { type DesignPageSurroundings, designCheckPage } from "./page.ts";
