import { mkdir, mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser, Page } from "puppeteer";
import { expect } from "vitest";
import { Between } from "./between.ts";
import { firstVisit, inLedger, keptOn, linkFor } from "./crew-phone.ts";
import { type Company, newCompany, newJob } from "./edge.ts";
import { newScreen, openBrowser, type Screen } from "./screen.ts";

/** Where the screenshots of the last run lie. */
export const shots = fileURLToPath(new URL("../../out/screens", import.meta.url));

export const idsOn = async (one: Page): Promise<readonly string[]> => (await keptOn(one)).entries.map(({ id }) => id);

/** The page is looked at again. */
export const look = (one: Page): Promise<unknown> => one.evaluate(() => document.dispatchEvent(new Event("visibilitychange")));

/** One visit of a crew: a job, a signal that can be weak, a phone that has been there once. */
export interface Visit {
  readonly job: string;
  readonly signal: Between;
  readonly screen: Screen;
  readonly page: Page;
  readonly leave: () => Promise<void>;
}

/** A crew's phone with all that can befall what it has not sent yet. Between it and the real edge stands a signal that can be weak. */
export class CrewSignal {
  readonly company: Company;
  readonly browser: Browser;
  /** Where the pictures lie that the phone took. */
  readonly folder: string;
  readonly #edge: string;

  private constructor(edge: string, company: Company, browser: Browser, folder: string) {
    this.#edge = edge;
    this.company = company;
    this.browser = browser;
    this.folder = folder;
  }

  static async begin(edge: string, operatorKey: string): Promise<CrewSignal> {
    await mkdir(shots, { recursive: true });
    const folder = await mkdtemp(join(tmpdir(), "asburied-queue-"));
    return new CrewSignal(edge, await newCompany(edge, operatorKey), await openBrowser(), folder);
  }

  async end(): Promise<void> {
    await this.browser.close();
    await rm(this.folder, { recursive: true, force: true });
  }

  newLink(signal: Between): Promise<string> {
    return linkFor(this.company, this.company.people.crew, signal.address);
  }

  async visit(): Promise<Visit> {
    const { job } = await newJob(this.company);
    const signal = await new Between(this.#edge).open();
    const screen = await newScreen(this.browser);
    await firstVisit(screen.page, await this.newLink(signal));
    const leave = async (): Promise<void> => {
      await screen.close().catch(() => {});
      await signal.close();
    };
    return { job, signal, screen, page: screen.page, leave };
  }

  /** Entries of people at the edge, besides the two that open a job: these, each taken once. */
  async expectOnce({ job, signal }: Pick<Visit, "job" | "signal">, ids: readonly string[]): Promise<void> {
    const counts = await inLedger(this.company, job);
    expect(ids.map((id) => counts.get(id))).toEqual(ids.map(() => 1));
    expect(counts.size).toBe(ids.length + 2);
    expect(ids.map((id) => signal.entriesTaken.get(id))).toEqual(ids.map(() => 1));
  }
}
