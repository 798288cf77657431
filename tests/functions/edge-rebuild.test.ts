import { execFile } from "node:child_process";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, expect, it } from "vitest";
import { batchOf, type Company, type Loose, newCompany, newJob } from "../helpers/edge.ts";
import { type LargeEdge, largeEdge } from "../helpers/large-company.ts";

let large: LargeEdge;
let company: Company;
let job: string;
beforeAll(async () => {
  large = await largeEdge();
  company = await newCompany(large.url, large.operatorKey);
  const made = await newJob(company);
  job = made.job;
  const reading = await made.phone.entry(job, company.people.crew, "reading-taken", { item: "top-below-soil", typed: "3 1/4", unit: "in" });
  expect((await company.crew.post(`/api/jobs/${job}/entries`, batchOf(reading))).status).toBe(200);
  expect((await company.office.get(`/api/jobs/${job}`)).status).toBe(200);
}, 120_000);
afterAll(async () => {
  await large?.stop();
});

const compared = async (): Promise<Loose> => (await company.office.get(`/api/rebuild/${job}`)).body;
const places = ({ differences }: Loose): readonly string[] => differences.map(({ place }: { place: string }) => place).sort();

it("names what differs of findings, of the register's row and of the owner's rows; written anew only where it is asked for", async () => {
  expect(await compared()).toEqual({ job, same: true, differences: [] });
  const spoilt = ["observed/job/title", "observed/pictures", "observed/readings/0/value", "afterWork/title", "findings"].sort();
  const of = [company.company, job] as const;
  await large.write([
    ["UPDATE observed SET content = json_set(content, '$.title', 'Oak Street') WHERE company = ?1 AND job = ?2 AND part = 'job'", ...of],
    ["UPDATE observed SET content = json_set(content, '$[0].value', 1) WHERE company = ?1 AND job = ?2 AND part = 'readings'", ...of],
    ["DELETE FROM observed WHERE company = ?1 AND job = ?2 AND part = 'pictures'", ...of],
    ["UPDATE after_work SET content = json_set(content, '$.title', 'Oak Street') WHERE company = ?1 AND job = ?2", ...of],
    ["UPDATE finding SET computed = json_set(computed, '$.findings', NULL) WHERE company = ?1 AND job = ?2", ...of],
  ]);
  expect(places(await compared())).toEqual(spoilt);
  expect(places(await compared())).toEqual(spoilt);
  const rewritten = await company.office.post(`/api/rebuild/${job}`);
  expect([rewritten.status, rewritten.body.same]).toEqual([200, false]);
  expect(places(rewritten.body)).toEqual(spoilt);
  expect(await compared()).toEqual({ job, same: true, differences: [] });
  expect((await company.crew.post(`/api/rebuild/${job}`)).status).toBe(403);
});

it("rows of an older form, and those whose making was lost, are made before a question is answered", async () => {
  const of = [company.company, job] as const;
  const spoil = "UPDATE observed SET content = '[]' WHERE company = ?1 AND job = ?2 AND part = 'readings'";
  const ways = [
    "UPDATE observed SET made = 0 WHERE company = ?1 AND job = ?2",
    "INSERT INTO observed_late (company, job, number) VALUES (?1, ?2, 1)",
  ];
  for (const way of ways) {
    await large.write([
      [spoil, ...of],
      [way, ...of],
    ]);
    expect(places(await compared()).length, way).toBeGreaterThan(0);
    expect((await company.owner.get("/api/questions/cost")).body).toMatchObject({ jobs: 1, behind: 0 });
    expect(await compared()).toEqual({ job, same: true, differences: [] });
  }
});

const program = fileURLToPath(new URL("../../infra/local/rebuild.ts", import.meta.url));

/** What `npm run rebuild` says at the end, and how it exits. */
const ran = (...asked: readonly string[]): Promise<readonly [number, string]> =>
  new Promise((resolve) => {
    execFile(process.execPath, [program, ...asked], (fault, out, said) =>
      resolve([fault === null ? 0 : Number(fault.code), `${out}${said}`.trim().split("\n").at(-1) ?? ""]),
    );
  });

it("the command goes through every job with the owner's link, writes anew what differs, and says how many", async () => {
  const link = async (): Promise<string> => {
    const { body } = await company.owner.post(`/api/people/${company.people.owner}/links`);
    return new URL(body.link, large.url).href;
  };
  const says = (same: number, observed: number): string =>
    `${same} of 1 jobs give the same again; differed: findings of 0, rows of the register of 0, rows of the owner's questions of ${observed}`;
  expect(await ran("--link", await link())).toEqual([0, says(1, 0)]);
  const spoil = "UPDATE observed SET content = '[]' WHERE company = ?1 AND job = ?2 AND part = 'readings'";
  await large.write([[spoil, company.company, job]]);
  expect(await ran("--compare", "--link", await link())).toEqual([1, says(0, 1)]);
  expect(await ran("--link", await link())).toEqual([1, `${says(0, 1)}; what differed is written anew`]);
  expect(await ran("--link", await link())).toEqual([0, says(1, 0)]);
  expect((await ran("--lnk"))[0]).toBe(2);
});
