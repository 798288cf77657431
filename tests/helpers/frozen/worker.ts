import { edgeOf } from "#functions/edge/edge.ts";
import { routes } from "#functions/edge/routes/index.ts";

/** The edge with its clock standing still, for tests: noon of 4 May 2026, UTC. */
export const FROZEN_MS = 1_777_896_000_000;

export default edgeOf(routes, () => FROZEN_MS);
