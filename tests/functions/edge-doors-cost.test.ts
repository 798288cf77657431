import { beforeAll, expect, inject, it } from "vitest";
import { seeded } from "../faults/seeded.ts";
import { Authenticator } from "../helpers/authenticator.ts";
import { Client, type Company, type Loose, newCompany, newJob } from "../helpers/edge.ts";

// Whoever tries a door must not learn from the answer, nor from how long it took, whether what was tried is known there.

/** Tries of each kind at each door, in pairs: what the machine does besides slows both of a pair. */
const TRIES = 40;
/**
 * A tenth is own: at some milliseconds a try it lies below what any line adds. Beyond it, four standard errors of the median of the
 * pairs' ratios (1.2533 s/√n of their logarithms, s from the median deviation times 1.4826), which chance passes in one of 16,000
 * comparisons; and whatever the noise, a ratio of 1.6 is none.
 */
const SHARE = 0.1;
const ERRORS = 4;
const MOST = 1.6;

const median = (all: readonly number[]): number => [...all].sort((a, b) => a - b)[all.length >> 1] ?? 0;

/** The median of the pairs' ratios, and up to which ratio, either way, chance and line explain it. */
function compared(known: readonly number[], unknown: readonly number[]): { readonly ratio: number; readonly most: number } {
  const logs = known.map((one, i) => Math.log(one / (unknown[i] ?? one)));
  const middle = median(logs);
  const error = (1.2533 * 1.4826 * median(logs.map((one) => Math.abs(one - middle)))) / Math.sqrt(logs.length);
  return { ratio: Math.exp(middle), most: Math.min(MOST, Math.exp(Math.log(1 + SHARE) + ERRORS * error)) };
}
const isAlike = ({ ratio, most }: ReturnType<typeof compared>): boolean => ratio < most && 1 / ratio < most;

const edge = inject("edge");
let company: Company;
beforeAll(async () => {
  company = await newCompany(edge, inject("operatorKey"));
});

let addresses = 0;
/** Each try from another address, so that no limit answers in the door's place. */
const from = (): Record<string, string> => {
  addresses += 1;
  return { "cf-connecting-ip": `198.51.${addresses >> 8}.${addresses & 255}`, "x-asburied": "1" };
};

interface Trial {
  readonly milliseconds: number;
  readonly said: object;
}

async function tried(path: string, init: { method?: string; json?: unknown; headers?: Record<string, string> } = {}): Promise<Trial> {
  const { method = "GET", json, headers = {} } = init;
  const body = json === undefined ? {} : { body: JSON.stringify(json) };
  const type = json === undefined ? {} : { "content-type": "application/json" };
  const began = performance.now();
  const answer = await fetch(`${edge}${path}`, { method, redirect: "manual", headers: { ...from(), ...type, ...headers }, ...body });
  const text = await answer.text();
  const milliseconds = performance.now() - began;
  const said = Object.fromEntries([...answer.headers].filter(([name]) => !["date", "x-request-id"].includes(name)));
  return { milliseconds, said: { ...said, status: answer.status, text: text.replace(/"requestId":"[^"]*"/, "") } };
}

type Door = readonly [name: string, known: () => Promise<Trial>, unknown: () => Promise<Trial>];

const post = (path: string, json: unknown) => tried(path, { method: "POST", json });
const token = (): string => Buffer.from(crypto.getRandomValues(new Uint8Array(32))).toString("base64url");
const digits = (): string => Array.from(crypto.getRandomValues(new Uint8Array(12)), (byte) => byte % 10).join("");

/** A code, a link and so on that were good once, beside ones that were never given. */
async function doors(): Promise<readonly Door[]> {
  const { office, owner, people } = company;
  const code = (await office.post(`/api/people/${people.crew}/codes`, {})).body;
  expect((await post("/api/join", { digits: code.digits })).said).toMatchObject({ status: 204 });
  const { link } = (await owner.post(`/api/people/${people.crew}/links`)).body;
  await new Client(edge).signIn(link);
  const { job } = await newJob(company);
  const others = (await office.post(`/api/jobs/${job}/others-links`, { step: "top-of-footing", what: "A paper" })).body;
  const { links } = (await office.get(`/api/jobs/${job}/others-links`)).body;
  expect((await office.post(`/api/jobs/${job}/others-links/${links[0].link}/withdraw`)).status).toBe(204);
  const { record } = (await office.post(`/api/jobs/${job}/records`, { edition: "customer" })).body;
  const released = (await office.post(`/api/records/${record}/releases`, { to: "Dana" })).body;
  const { releases } = (await office.get(`/api/records/${record}/releases`)).body;
  expect((await office.post(`/api/records/${record}/releases/${releases[0].release}/end`)).status).toBe(204);
  const recovery = (of: string, person: string) =>
    tried(`/api/companies/${of}/recovery`, { method: "POST", json: { person }, headers: { authorization: `Operator ${token()}` } });
  // ten tries an account, then its limit answers in the place of the door
  const devices: Authenticator[] = [];
  while (devices.length < TRIES / 10) devices.push(await passkeyMade());
  return [
    ["a crew's code", () => post("/api/join", { digits: code.digits }), () => post("/api/join", { digits: digits() })],
    ["its picture", () => post("/api/join", { token: code.picture.slice(6) }), () => post("/api/join", { token: token() })],
    ["a one-time link", () => tried(link), () => tried(`/in/${token()}`)],
    [
      "recovery",
      () => recovery(company.company, people.owner),
      () => recovery(token().slice(0, 24).replaceAll(/[_-]/g, "x"), people.owner),
    ],
    ["a record's link", () => tried(released.link), () => tried(`/released/${token()}`)],
    ["a link for others", () => tried(`/api${others.link}`), () => tried(`/api/others/${token()}`)],
    ["a passkey", posing(devices), posing(Array.from(devices, () => new Authenticator()))],
  ];
}

async function passkeyMade(): Promise<Authenticator> {
  const device = new Authenticator();
  const { options, origin } = (await company.office.post("/api/passkeys/options")).body;
  const credential = device.make({ origin, party: options.rp.id, challenge: options.challenge });
  expect((await company.office.post("/api/passkeys", { name: "n", credential })).status).toBe(201);
  return device;
}

/** Signatures by other keys for these passkeys, one after the other. */
function posing(devices: readonly Authenticator[]): () => Promise<Trial> {
  let tries = 0;
  return () => {
    tries += 1;
    return signIn(Object.assign(new Authenticator(), { id: devices[tries % devices.length]?.id }));
  };
}

/** A signature by another key; only the answer to it is timed. */
async function signIn(of: Authenticator): Promise<Trial> {
  const asked = await fetch(`${edge}/api/sign-in/options`, { method: "POST", headers: from() });
  const { options, origin } = (await asked.json()) as Loose;
  const credential = of.get({ origin: origin ?? edge, party: options.rpId, challenge: options.challenge });
  const cookie = asked.headers.getSetCookie()[0]?.split(";")[0] ?? "";
  return tried("/api/sign-in", { method: "POST", json: { credential }, headers: { cookie } });
}

it("every door gives one answer, and takes one time, for what is known and dead and for what was never given", async () => {
  for (const [name, known, unknown] of await doors()) {
    const times = { known: [] as number[], unknown: [] as number[] };
    for (let i = 0; i < TRIES; i += 1) {
      // neither kind is always the first of a pair
      const pair = i % 2 === 0 ? ([known, unknown] as const) : ([unknown, known] as const);
      const [first, second] = [await pair[0](), await pair[1]()];
      expect(second.said, name).toEqual(first.said);
      times.known.push((i % 2 === 0 ? first : second).milliseconds);
      times.unknown.push((i % 2 === 0 ? second : first).milliseconds);
    }
    const found = compared(times.known, times.unknown);
    const milliseconds = median(times.unknown).toFixed(1);
    console.log(
      `${name}: known against unknown, ratio ${found.ratio.toFixed(3)} at ${milliseconds} ms; up to ${found.most.toFixed(3)} is chance`,
    );
    expect(isAlike(found), name).toBe(true);
  }
}, 120_000);

it("the measure finds a door that takes twice as long, and no other, in times that spread by a fifth", () => {
  const chance = seeded(7);
  const spread = (factor: number): number[] =>
    Array.from({ length: TRIES }, () => factor * 5 * Math.exp((chance.share(0, 1) + chance.share(0, 1) - 1) * 0.5));
  for (let i = 0; i < 200; i += 1) {
    expect(isAlike(compared(spread(1), spread(1)))).toBe(true);
    expect(isAlike(compared(spread(2), spread(1)))).toBe(false);
    expect(isAlike(compared(spread(1), spread(2)))).toBe(false);
  }
});
