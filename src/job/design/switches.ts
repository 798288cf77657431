import { type Design, switchOn } from "../figures.ts";
import type { ToleranceSheet } from "../sheet.ts";

/** What a design says yes or no to, as far as the arithmetic asks. */
export interface DesignSwitches {
  /** Keeps the pipe full above it when the pump stops. */
  readonly checkValve?: boolean;
  readonly roundBasin?: boolean;
  readonly makeUpValve?: boolean;
}

const camel = (id: string): string => id.replace(/-([a-z0-9])/g, (_, letter: string) => letter.toUpperCase());

/** Switches by the ids that a tolerance sheet gives them, each by its id in camelCase; other ids are let be. */
export const switchesBySheetId = (switches: Readonly<Record<string, boolean>>): DesignSwitches =>
  Object.fromEntries(Object.entries(switches).map(([id, on]) => [camel(id), on]));

/** The switches of a tolerance sheet under a design. */
export const designSwitches = (sheet: ToleranceSheet, design: Design): DesignSwitches =>
  switchesBySheetId(Object.fromEntries(sheet.switches.map(({ id }) => [id, switchOn(sheet, design, id)])));
