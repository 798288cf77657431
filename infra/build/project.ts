import { fileURLToPath } from "node:url";

/** The project's root, with a slash at the end. */
export const project = fileURLToPath(new URL("../../", import.meta.url));
