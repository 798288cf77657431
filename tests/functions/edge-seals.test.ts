import { beforeAll, describe, expect, inject, it } from "vitest";
import { checkRecord, type KeyList, readKeyList } from "#core/proof/index.ts";
import { meansWith } from "#infra/verify/means.ts";
import { readPdf } from "#infra/verify/read-pdf.ts";
import { Client, type Company, newCompany, newJob } from "../helpers/edge.ts";

let company: Company;
let record: { readonly pdf: string };
beforeAll(async () => {
  company = await newCompany(inject("edge"), inject("operatorKey"));
  const { job } = await newJob(company);
  record = (await company.office.post(`/api/jobs/${job}/records`, { edition: "customer" })).body;
});

/** Asked for by nobody in particular: whoever was handed a record may. */
const published = async () => (await new Client(inject("edge")).get(`/api/companies/${company.company}/keys`)).body;
const list = async (): Promise<KeyList> => {
  const read = readKeyList(await published());
  if (!read.ok) throw new Error(read.refusal.code);
  return read.value;
};
const checked = async (pdf: string, keys: readonly KeyList[]) => {
  const means = meansWith(keys);
  const read = await readPdf(Uint8Array.from((await company.office.get(pdf)).bytes), means);
  if (!read.ok) throw new Error(read.refusal.code);
  return checkRecord(read.value, means);
};

describe("an issued record", () => {
  it("is sealed with the company's key, which is published and was made when first needed", async () => {
    const set = await published();
    expect(set).toMatchObject({
      company: company.company,
      name: "Stillwater Yard Works",
      keys: [{ kty: "OKP", crv: "Ed25519", alg: "EdDSA", use: "sig" }],
    });
    // the public half alone
    expect(Object.keys(set.keys[0]).sort()).toEqual(["alg", "crv", "kid", "kty", "made", "use", "x"]);
    const check = await checked(record.pdf, [await list()]);
    expect(check).toMatchObject({ standing: "unchanged", faults: [], key: set.keys[0].kid, company: { id: company.company } });
    expect(check.judged).toMatchObject({ is: "judged", again: { other: [], added: [], otherClearances: [] } });
    const { entries } = (await company.owner.get("/api/company/ledger")).body;
    const told = entries.filter((one: { envelope: { kind: string } }) => one.envelope.kind === "seal-key-made");
    expect(told.map((one: { body: { what: { content: unknown } } }) => one.body.what.content)).toEqual([
      { key: check.key, x: set.keys[0].x },
    ]);
  });

  it("stays verifiable when the company takes a new key; what is issued then has the new one", async () => {
    const [before] = (await published()).keys;
    const made = await company.owner.post("/api/company/keys");
    expect(made).toMatchObject({ status: 201, body: { key: expect.stringMatching(/^[A-Za-z0-9_-]{43}$/) } });
    const { keys } = await published();
    expect(keys.map(({ kid, retired }: { kid: string; retired?: number }) => [kid, retired !== undefined])).toEqual([
      [before.kid, true],
      [made.body.key, false],
    ]);
    const { job } = await newJob(company);
    const next = (await company.office.post(`/api/jobs/${job}/records`, { edition: "company" })).body;
    const lists = [await list()];
    expect(await checked(record.pdf, lists)).toMatchObject({ standing: "unchanged", key: before.kid, company: { id: company.company } });
    expect(await checked(next.pdf, lists)).toMatchObject({ standing: "unchanged", key: made.body.key, company: { id: company.company } });
  });

  it("is nobody's by the list of another company", async () => {
    const other = await newCompany(inject("edge"), inject("operatorKey"));
    const none = readKeyList((await new Client(inject("edge")).get(`/api/companies/${other.company}/keys`)).body);
    // no key before the first record
    expect(none).toMatchObject({ ok: false, refusal: { code: "key-list-shape", place: "keys" } });
    const { job } = await newJob(other);
    expect((await other.office.post(`/api/jobs/${job}/records`, { edition: "customer" })).status).toBe(201);
    const theirs = readKeyList((await new Client(inject("edge")).get(`/api/companies/${other.company}/keys`)).body);
    if (!theirs.ok) throw new Error(theirs.refusal.code);
    const check = await checked(record.pdf, [theirs.value]);
    expect([check.standing, check.company]).toEqual(["unchanged", undefined]);
  });

  it("two first records at once are sealed with one key", async () => {
    const fresh = await newCompany(inject("edge"), inject("operatorKey"));
    const jobs = [await newJob(fresh), await newJob(fresh)];
    const issued = await Promise.all(jobs.map(({ job }) => fresh.office.post(`/api/jobs/${job}/records`, { edition: "customer" })));
    expect(issued.map(({ status }) => status)).toEqual([201, 201]);
    expect((await new Client(inject("edge")).get(`/api/companies/${fresh.company}/keys`)).body.keys).toHaveLength(1);
  });
});
