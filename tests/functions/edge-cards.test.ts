import { beforeAll, describe, expect, inject, it } from "vitest";
import { cardText } from "#core/job/index.ts";
import { digest } from "#infra/node-digest.ts";
import { cardPhoto } from "../helpers/card-photo.ts";
import { batchOf, type Company, type Loose, newCompany, newJob, sha256, until } from "../helpers/edge.ts";
import { readWords } from "../helpers/pdf.ts";

let company: Company;
let job: Awaited<ReturnType<typeof newJob>>;
let other: Awaited<ReturnType<typeof newJob>>;
let id: string;
beforeAll(async () => {
  company = await newCompany(inject("edge"), inject("operatorKey"));
  [job, other] = [await newJob(company), await newJob(company)];
  id = (await company.office.get("/api/session")).body.company;
});

/** A photo in which a card of this job and step lies, or two of them; its bytes are another photo's at every call. */
async function photoWith(...cards: readonly { readonly of: string; readonly step?: string }[]): Promise<Uint8Array> {
  const texts = await Promise.all(
    cards.map(async ({ of, step }) => {
      const named = { company: id, job: of, ...(step === undefined ? {} : { step }) };
      const text = await cardText(digest, named, { paper: "letter", place: 0 });
      return text.ok ? text.value : "";
    }),
  );
  return cardPhoto({ side: 90, texts, width: 900, height: 700, at: [100, 80] });
}

/** What the office is told of cards in a picture of an item of the job's. */
async function told(photo: Uint8Array, item = "footing-seen"): Promise<readonly string[]> {
  const sha = sha256(photo);
  expect((await company.crew.ask("PUT", `/api/photos/${sha}`, { bytes: photo })).status).toBe(201);
  const what = { item, photo: sha, bytes: photo.length, type: "image/jpeg", taken: Date.UTC(2026, 4, 4, 12) };
  const { sealed, ...rest } = await job.phone.entry(job.job, company.people.crew, "picture-taken", what);
  await company.crew.post(`/api/jobs/${job.job}/entries`, batchOf({ sealed, ...rest } as Parameters<typeof batchOf>[0]));
  const lines = await until(
    async (): Promise<Loose[]> =>
      (await company.office.get(`/api/jobs/${job.job}/pictures`)).body.pictures.find((one: Loose) => one.entry === sealed.id)?.lines ?? [],
    (all) => all.length > 0 && all.every(({ key }) => key !== "photo.not-read-yet"),
  );
  return lines.flatMap(({ key, speaks }) => (key.startsWith("photo.card-") ? [`${speaks} ${key}`] : []));
}

describe("cards that lie in pictures", () => {
  it("are printed for the office, a page each, and for nobody else", async () => {
    const head = (await company.office.get(`/api/jobs/${job.job}`)).body.head;
    const paper = await company.office.get(`/api/jobs/${job.job}/cards/pdf`);
    expect(paper).toMatchObject({ status: 200 });
    expect(paper.headers.get("content-type")).toBe("application/pdf");
    const { pages, title } = await readWords(paper.bytes);
    expect(title).toMatch(/^Cards for pictures: /);
    // three of its four steps ask for a picture: dig-hole, stand-post, top-of-footing
    expect(pages).toHaveLength(4);
    expect(pages.at(-1)).toContain("Any step");
    expect((await company.office.get(`/api/jobs/${job.job}`)).body.head).toEqual(head);
    expect(await company.crew.get(`/api/jobs/${job.job}/cards/pdf`)).toMatchObject({ status: 403, body: { code: "role-not-allowed" } });
    expect(await company.office.get("/api/jobs/nobody/cards/pdf")).toMatchObject({ status: 404, body: { code: "job-unknown" } });
  });

  it("speak for a picture where they agree, and ask where they do not", async () => {
    expect(await told(await photoWith({ of: job.job, step: "top-of-footing" }))).toEqual(["for photo.card-step"]);
    expect(await told(await photoWith({ of: job.job, step: "dig-hole" }))).toEqual(["against photo.card-other-step"]);
    expect(await told(await photoWith({ of: job.job }))).toEqual(["for photo.card-job"]);
    expect(await told(await photoWith({ of: other.job }))).toEqual(["against photo.card-other-job"]);
    expect(await told(await photoWith({ of: job.job }, { of: other.job }))).toEqual(["neither photo.card-several"]);
    expect(await told(await photoWith({ of: "a-job-that-never-was" }))).toEqual(["neither photo.card-tells-nothing"]);
    expect(await told(await photoWith())).toEqual([]);
  });
});
