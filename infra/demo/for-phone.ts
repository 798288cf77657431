import { defaultSheet } from "../sheets/index.ts";
import { settings } from "./company.ts";
import { courtyard } from "./courtyard.ts";
import { enterAll } from "./enter.ts";
import { found, keep } from "./founding.ts";
import { openJob } from "./open-job.ts";
import { Phone, randomId } from "./phone.ts";
import type { JobScript, Line } from "./script.ts";
import { sideYard } from "./side-yard.ts";

/** A company whose jobs show a crew's phone everything that it has a page for. */
export interface ForPhone {
  /** Everything covered; open and not yet; open and clear. */
  readonly jobs: { readonly covered: string; readonly notYet: string; readonly clear: string };
  /** A whole address that signs a crew member in, once. */
  readonly crewLink: () => Promise<string>;
  /** Another, for the office. */
  readonly officeLink: () => Promise<string>;
  readonly speak: (language: "en" | "es") => Promise<void>;
}

const untilCovered = (lines: readonly Line[]): readonly Line[] =>
  lines.slice(
    0,
    lines.findIndex((line) => "covers" in line),
  );

/** The side yard once more, up to the moment at which its tank may be backfilled. */
const corner: JobScript = { ...sideYard, title: "Corner fall", ownNumber: "OG-26-045", crew: untilCovered(sideYard.crew) };

/** Founds a company of its own with three jobs of the demo. Their photos are drawn nowhere: only their entries are there. */
export async function forPhone(edge: string, operatorKey: string): Promise<ForPhone> {
  const founded = await found(edge, operatorKey, randomId());
  const versions = await keep(founded);
  const { office, first, owner } = founded;
  const desk = new Phone(office.person);
  const sheet = defaultSheet();
  const open = async (script: JobScript): Promise<string> => {
    const book = await openJob(desk, office.client, script, versions);
    const shared = { book, sheet, script, photos: new Map(), labels: new Map() };
    await enterAll({ ...shared, phone: desk, fixes: false }, script.office);
    await office.client.empty(book);
    await enterAll({ ...shared, phone: new Phone(first.person), fixes: true }, script.crew);
    await first.client.empty(book);
    return book.job;
  };
  const linkOf = async (person: string): Promise<string> => {
    const { link } = await owner.send<{ link: string }>("POST", `/api/people/${person}/links`);
    return new URL(link, edge).href;
  };
  return {
    jobs: { covered: await open(courtyard), notYet: await open(sideYard), clear: await open(corner) },
    crewLink: () => linkOf(first.person),
    officeLink: () => linkOf(office.person),
    speak: async (language) => {
      await owner.send("PUT", "/api/company/settings", { ...(settings as object), language });
    },
  };
}
