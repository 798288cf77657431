import type { CostInputs } from "../deploy/index.ts";
import type { Driven } from "./drive.ts";
import type { Options } from "./options.ts";
import type { Platform } from "./platform.ts";
import type { Simulated } from "./simulation.ts";

/** What a run of the simulation has to tell. */
export interface Reported {
  readonly options: Options;
  readonly driven: Driven;
  readonly outcome: Simulated;
  readonly platform: Platform;
  readonly inputs: CostInputs;
}
