import { beforeAll, describe, expect, it } from "vitest";
import type { Ledger } from "#core/ledger/index.ts";
import { checkRecord, checkSaid, fileNames, judge, type RecordCheck, type RecordFile } from "#core/proof/index.ts";
import { changedBytes } from "../../helpers/changed-bytes.ts";
import { means, newSigner, resealed, type SealedSample, sealedSample, withFile } from "../../helpers/sealed-record.ts";

let sample: SealedSample;
beforeAll(async () => {
  sample = await sealedSample();
});

const codes = ({ faults }: RecordCheck): readonly string[] => faults.map(({ code }) => code);
const lines = (check: RecordCheck, title: string): readonly string[] =>
  checkSaid(check, 1, "en").sections.find((section) => section.title === title)?.lines ?? [];
const changed = (check: RecordCheck): readonly string[] => lines(check, "What was changed");
/** An entry of the ledger whose typed reading occurs nowhere else. */
const typedEntry = (): { number: number; typed: string } => {
  const { entries } = sample.ledger;
  const typed = entries.map(({ body }) => (body.what as { content?: { typed?: unknown } }).content?.typed);
  const place = typed.findIndex((one) => typeof one === "string" && typed.filter((other) => other === one).length === 1);
  return { number: place + 1, typed: typed[place] as string };
};

describe("a record as it was issued", () => {
  it("is unchanged, judged again, and nobody's until a list of keys says whose", async () => {
    const check = await checkRecord(sample.file, means());
    expect(check).toMatchObject({ standing: "unchanged", faults: [], key: sample.signer.kid });
    expect(check.company).toBeUndefined();
    expect(check.judged).toMatchObject({ is: "judged", again: { other: [], otherClearances: [], added: [], withheld: [] } });
    const said = checkSaid(check, sample.file.pages.length, "en");
    expect(said.standing).toBe(`Unchanged since it was sealed with key ${sample.signer.kid}`);
    expect(said.by).toContain("cannot be told here");
    const named = checkSaid(await checkRecord(sample.file, means([sample.keys])), 1, "en");
    expect(named.by).toBe("By Stillwater Yard Works: the key is in its list of keys.");
  });

  it("says what is withheld, by entry and reason", async () => {
    const check = await checkRecord(sample.file, means());
    const count = sample.ledger.entries.filter(({ body }) => body.who !== undefined).length;
    expect(count).toBeGreaterThan(5);
    expect(check.withheld).toHaveLength(count);
    expect(lines(check, "Withheld")[0]).toMatch(/^names and contacts, left out of this edition: entries 1, 21, 41/);
    const whole = await sealedSample({ edition: "company" });
    expect(lines(await checkRecord(whole.file, means()), "Withheld")).toEqual(["Nothing is withheld."]);
  });

  it("does not say by whom where the key is in another company's list, or was retired before", async () => {
    const other = await checkRecord(sample.file, means([{ ...sample.keys, company: "another" }]));
    expect([other.standing, codes(other), other.company]).toEqual(["at odds", ["seal-company"], undefined]);
    const retired = (at: number) => means([{ ...sample.keys, keys: [{ x: sample.signer.x, retired: at }] }]);
    expect(codes(await checkRecord(sample.file, retired(sample.seal.issuedAt)))).toEqual([]);
    expect(codes(await checkRecord(sample.file, retired(sample.seal.issuedAt - 1)))).toEqual(["seal-key-retired"]);
  });
});

describe("a record that was changed", () => {
  it("names the entry whose reading was changed, by its title, and the finding that no longer comes out", async () => {
    const { number, typed } = typedEntry();
    const file = withFile(sample.file, fileNames.ledger, (text) => text.replace(JSON.stringify(typed), JSON.stringify("9 1/8")));
    const check = await checkRecord(file, means([sample.keys]));
    expect(check.standing).toBe("changed");
    expect(codes(check)).toEqual(expect.arrayContaining(["seal-file-changed", "ledger-part-digest", "seal-finding"]));
    const reading = sample.model.steps.flatMap(({ readings }) => readings).find((one) => one.number === number);
    const title = reading?.title;
    expect(title).toBeTruthy();
    expect(changed(check).filter((line) => line.startsWith(`Entry ${number} (${title}): `))).toHaveLength(1);
    expect(changed(check).filter((line) => line.endsWith(`As it was sealed, the record prints ${reading?.typed} for it.`))).toHaveLength(1);
    // all other entries are as they were
    expect(check.faults.filter(({ place }) => place.startsWith("entries/") && !place.startsWith(`entries/${number - 1}/`))).toEqual([]);
  });

  it("names the entry at which the ledger's text is broken", async () => {
    const [first, second] = sample.ledger.entries.slice(6, 8).map(({ envelope }) => `"id":${JSON.stringify(envelope.id)}`);
    const file = withFile(sample.file, fileNames.ledger, (text) =>
      text.replace(first as string, '"id"x').replace(second as string, '"id"y'),
    );
    const check = await checkRecord(file, means());
    expect(check.faults.filter(({ code }) => code === "seal-file-not-json").map(({ place }) => place)).toEqual(["entries/6", "entries/7"]);
    expect(check.judged).toMatchObject({ is: "not judged" });
  });

  it("shows what the page said and what it says now", async () => {
    const page = sample.file.pages[3] as string;
    const word = page.split(" ")[5] as string;
    const pages = sample.file.pages.map((one, i) => (i === 3 ? one.replace(` ${word} `, " otherwise ") : one));
    const check = await checkRecord({ ...sample.file, pages }, means());
    expect(codes(check)).toEqual(["seal-page-words"]);
    expect(check.faults[0]?.figures).toMatchObject({
      page: 4,
      was: expect.stringContaining(word),
      now: expect.stringContaining("otherwise"),
    });
  });

  it("counts pages and pictures, and knows each picture", async () => {
    const [, ...pages] = sample.file.pages;
    expect(codes(await checkRecord({ ...sample.file, pages }, means()))).toContain("seal-pages");
    const [, ...pictures] = sample.file.pictures;
    const gone = await checkRecord({ ...sample.file, pictures: [...pictures, "e".repeat(64)] }, means());
    expect(codes(gone)).toEqual(["seal-picture-missing", "seal-picture-unknown"]);
  });

  it("tells a file that is gone and one that came later", async () => {
    const files = new Map(sample.file.files);
    files.delete(fileNames.findings);
    files.set("more.txt", new Uint8Array([1]));
    expect(codes(await checkRecord({ ...sample.file, files }, means()))).toEqual(["seal-file-missing", "seal-file-unexpected"]);
    files.delete(fileNames.seal);
    const unsealed = await checkRecord({ ...sample.file, files }, means());
    expect([unsealed.standing, codes(unsealed)]).toEqual(["not sealed", ["seal-missing"]]);
    expect(checkSaid(unsealed, 1, "es")).toMatchObject({
      tone: "changed",
      standing: "Sin sello",
      sections: [{ title: "Lo que falta" }, {}],
    });
  });

  it("sealed anew with another key is unchanged by that key, and not the company's", async () => {
    const forger = await newSigner();
    const forged: RecordFile = await resealed(sample, forger);
    const check = await checkRecord(forged, means([sample.keys]));
    expect([check.standing, check.key, check.company]).toEqual(["unchanged", forger.kid, undefined]);
    expect(checkSaid(check, 1, "en").by).toContain("cannot be told here");
  });

  it("sealed anew over a changed reading still does not give its findings", async () => {
    const { typed } = typedEntry();
    const file = withFile(sample.file, fileNames.ledger, (text) => text.replace(JSON.stringify(typed), JSON.stringify("9 1/8")));
    const check = await checkRecord(await resealed({ ...sample, file }, await newSigner()), means());
    expect(codes(check)).toEqual(expect.arrayContaining(["ledger-part-digest", "seal-finding"]));
    expect(codes(check)).not.toContain("seal-file-changed");
    expect(check.standing).toBe("at odds");
    expect(lines(check, "What does not agree").length).toBeGreaterThan(1);
  });

  it("the seal's own words are held against the files", async () => {
    const head = { number: 3, hash: "c".repeat(64) };
    const change = { job: "job-two", head, version: 7, modelDigest: "d".repeat(64) };
    const check = await checkRecord(await resealed(sample, await newSigner(), change), means());
    expect(check.faults.map(({ figures }) => figures.what)).toEqual(["job", "head", "model", "version"]);
    expect(checkSaid(check, 1, "en").standing).toMatch(/^Not changed since .* does not agree with itself$/);
  });

  it("rules that are not here, or another build of them, are no fault of the record, and nothing is called worked out", async () => {
    const signer = await newSigner();
    const newer = await checkRecord(await resealed(sample, signer, { rules: { version: 9, digest: "a".repeat(64) } }), means());
    expect(newer.judged).toMatchObject({ is: "not judged", why: { code: "rules-unknown" } });
    const other = await checkRecord(await resealed(sample, signer, { rules: { version: 1, digest: "a".repeat(64) } }), means());
    expect([other.standing, other.judged]).toMatchObject(["unchanged", { is: "not judged", why: { code: "rules-differ" } }]);
    expect(lines(other, "Worked out again from the attached entries")[0]).toMatch(/^Not worked out again\./);
  });
});

it("a finding that rests on a withheld part is listed, not called the same", async () => {
  const place = typedEntry().number - 1;
  const hidden = (ledger: Ledger): Ledger => ({
    ...ledger,
    entries: ledger.entries.map((entry, i) => (i === place ? { ...entry, body: { ...entry.body, what: { withheld: "erasure" } } } : entry)),
  });
  const erased = await sealedSample({ alter: hidden });
  const check = await checkRecord(erased.file, means());
  expect(check.standing).toBe("unchanged");
  if (check.judged?.is !== "judged") throw new Error("not judged");
  const { withheld, same } = check.judged.again;
  expect(withheld.length).toBeGreaterThan(0);
  expect(withheld.length + same).toBe(check.judged.sealed.findings.length);
  const id = erased.ledger.entries[place]?.envelope.id ?? "";
  expect(withheld.every(({ entries }) => entries.includes(id))).toBe(true);
  expect(lines(check, "Worked out again from the attached entries").at(-1)).toMatch(/^Not recomputed, because .* is withheld: ./);
  expect(lines(check, "Withheld").some((line) => line.startsWith("what was entered, erased on request: entries "))).toBe(true);
});

it("one unit off is said and no fault, two are one", async () => {
  const off = (by: number) => ({
    rules: 1,
    judge: (ledger: Ledger, at: number) => {
      const { findings, clearances } = judge(ledger, at);
      const place = findings.findIndex(({ value }) => value !== undefined);
      return { clearances, findings: findings.map((one, i) => (i === place ? { ...one, value: (one.value ?? 0) + by } : one)) };
    },
  });
  const one = await checkRecord(sample.file, means([], off(1)));
  expect(one.judged).toMatchObject({ is: "judged", again: { oneUnit: [{}], other: [] } });
  expect(one.standing).toBe("unchanged");
  expect(codes(await checkRecord(sample.file, means([], off(2))))).toEqual(["seal-finding"]);
});

it("every one of 150 bytes that were changed in the attached files is noticed, and a changed seal vouches for nobody", async () => {
  const small = await sealedSample({ entries: 12 });
  expect((await checkRecord(small.file, means([small.keys]))).standing).toBe("unchanged");
  const unnoticed: unknown[] = [];
  for await (const { file, at, to, check } of changedBytes(small, 150, 20_261_128)) {
    if (check.standing === "unchanged" || check.faults.length === 0) unnoticed.push({ file, at, to });
    if (file === fileNames.seal && check.company !== undefined) unnoticed.push({ file, at, to, company: check.company });
  }
  expect(unnoticed).toEqual([]);
}, 60_000);

it("pages that were sealed without something that the sealed data say are told, and are no change since", async () => {
  const { standing } = sample.model;
  const pages = sample.file.pages.map((page) => page.replaceAll(standing, ""));
  const file = withFile({ ...sample.file, pages }, fileNames.pages, () => JSON.stringify({ format: 1, pages }));
  const check = await checkRecord(await resealed({ ...sample, file }, await newSigner()), means());
  expect([check.standing, check.faults.map(({ code, figures }) => [code, figures.text])]).toEqual([
    "at odds",
    [["seal-text-not-shown", standing]],
  ]);
});

it("whatever somebody seals with a key of their own, it is told and nothing throws", async () => {
  const forger = await newSigner();
  const deep = `${"[".repeat(20_000)}${"]".repeat(20_000)}`;
  const model = JSON.parse(new TextDecoder().decode(sample.file.files.get(fileNames.model))) as object;
  const odd = ["[]", "null", "{}", "1", "", "x", '{"format":1}', deep, `{"findings":[null],"steps":[{}],"title":${deep}}`];
  const spoilt = [{ steps: [{}] }, { findings: [null] }, { others: [1] }, { title: {} }, { paperPictures: undefined }];
  const cases = [
    ...[fileNames.model, fileNames.findings, fileNames.pages, fileNames.ledger].flatMap((name) => odd.map((text) => [name, text] as const)),
    ...spoilt.map((change) => [fileNames.model, JSON.stringify({ ...model, ...change })] as const),
    [fileNames.findings, '{"findings":[],"clearances":[],"withheld":{"findings":["a"],"clearances":[]}}'] as const,
    [fileNames.findings, '{"findings":[{}],"clearances":[{}],"withheld":{"findings":[],"clearances":[]}}'] as const,
  ];
  const quick = means([], { rules: 1, judge: () => ({ findings: [], clearances: [] }) });
  for (const [name, text] of cases) {
    const file = withFile(sample.file, name, () => text);
    const check = await checkRecord(await resealed({ ...sample, file }, forger), quick);
    expect(check.standing, `${name} ${text.slice(0, 60)}`).not.toBe("unchanged");
    expect(checkSaid(check, 1, "en").sections.length).toBeGreaterThan(0);
  }
}, 60_000);
