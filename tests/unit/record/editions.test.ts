import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { JobLedger } from "#core/job/index.ts";
import type { RecordModel } from "#core/record/index.ts";
import { defaultSheet } from "#infra/sheets/index.ts";
import { recordPage, releasedPage } from "#templates/record/index.ts";
import { recordOf } from "../../helpers/record.ts";
import frozen from "../../samples/job/frozen-1.json" with { type: "json" };
import { twoDayLedger } from "../../samples/two-day-job.ts";

const jobs: readonly (readonly [string, JobLedger])[] = [
  ["the frozen job", frozen.ledger as unknown as JobLedger],
  ["two days, the spillway before the trench", twoDayLedger(defaultSheet(), { order: "spillway before trench" })],
];

/** Everybody who enters, with a name that must not be in the customer's edition. */
const people = Object.fromEntries(
  jobs.flatMap(([, { entries }]) => entries.map(({ author }) => [author.person, { name: "Quillon Zabriskie", role: "crew" as const }])),
);

const needed = new Set(["job-opened", "version-taken-over", "design-set", "tag-added"]);

/** The job as it would be if some of its entries had never been made. */
const without = ({ entries, versions }: JobLedger, dropped: ReadonlySet<number>): JobLedger => ({
  entries: entries.filter(({ kind }, at) => needed.has(kind) || !dropped.has(at)),
  versions,
});

const exceptionsOf = ({ exceptions }: RecordModel) => exceptions.map(({ title, verdictWord, tone }) => [title, verdictWord, tone]);
const escaped = (text: string): string =>
  text.replaceAll("&", "&amp;").replaceAll("'", "&#39;").replaceAll('"', "&quot;").replaceAll("<", "&lt;");
/** Words of a page without its elements, so that a sentence stands in it as it was given. */
const wordsOf = (html: string): string =>
  html
    .replace(/<style>[\s\S]*?<\/style>/g, "")
    .replace(/<[^>]+>/g, "")
    .replace(/\s+/g, "");
const photo = () => ({ missing: "not here" });

describe.each(jobs)("%s, with any of its entries left out", (_, whole) => {
  it("has the same exceptions in the customer's edition as in the company's, and prints each, on paper and on the phone's page", () => {
    let most = 0;
    let named = false;
    fc.assert(
      fc.property(fc.uniqueArray(fc.nat(whole.entries.length - 1), { maxLength: 60 }), (dropped) => {
        const ledger = without(whole, new Set(dropped));
        const [customer, company] = (["customer", "company"] as const).map((edition) => recordOf(ledger, { edition, people })) as [
          RecordModel,
          RecordModel,
        ];
        expect(exceptionsOf(customer)).toEqual(exceptionsOf(company));
        expect(customer.findings.map(({ check, tag, verdict }) => [check, tag, verdict])).toEqual(
          company.findings.map(({ check, tag, verdict }) => [check, tag, verdict]),
        );
        named ||= JSON.stringify(company).includes("Zabriskie");
        most = Math.max(most, customer.exceptions.length);
        for (const page of [recordPage(customer, { fonts: "", photo }), releasedPage(customer, { pdf: "/pdf", photo })]) {
          const words = wordsOf(page);
          expect(words).not.toContain("Zabriskie");
          for (const { title, verdictWord, says } of customer.exceptions) {
            // in short on the first page, and in full
            expect(words).toContain(escaped(`${verdictWord} ${title}`).replace(/\s+/g, ""));
            expect(words).toContain(escaped(says).replace(/\s+/g, ""));
          }
        }
      }),
      { numRuns: 8 },
    );
    expect(most).toBeGreaterThan(3);
    expect(named).toBe(true);
  });
});
