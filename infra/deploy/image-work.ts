import { createHash, randomBytes } from "node:crypto";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import type { ReportModel } from "#core/quality/index.ts";
import {
  issueToken,
  makeStore,
  originalKey,
  type PrintAnswer,
  printRequest,
  renditionKey,
  reportKey,
  TOKEN_LIFE_MS,
} from "#functions/shared/index.ts";
import { startStore } from "../local/index.ts";
import type { MachineName } from "./platform.ts";

/** A store and secrets for as long as an image is tried. */
export interface Surroundings {
  readonly handed: Readonly<Record<string, string>>;
  readonly work: (name: MachineName, port: number) => Promise<string>;
  close(): Promise<void>;
}

const COMPANY = "kettle";
const sha = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");

/** The shortest report that print takes: one page with a title, a note and the page's number. */
const shortReport = (at: number): ReportModel => ({
  format: 1,
  language: "en",
  paper: "letter",
  words: { page: "Page", of: "of", decides: "Decides", standsOut: "Stands out", counted: "Counted", cut: "" },
  company: { name: "Stillwater Yard Works", lines: [] },
  title: { document: "Report", page: "A page of a container that was tried", month: "November 2026", at },
  notes: ["Printed to see that the container's browser, fonts and store work."],
  first: [],
  nothingFirst: "Nothing stands out.",
  answers: [],
});

/** A store on this machine, and one piece of each container's real work: a picture read and drawn anew, a page printed. */
export async function surroundings(project: string, directory: string): Promise<Surroundings> {
  const secret = (): string => randomBytes(24).toString("hex");
  const [accessKeyId, secretAccessKey, serviceSecret] = [secret(), secret(), secret()];
  const bucket = "asburied";
  const local = await startStore({ directory, port: 0, accessKeyId, secretAccessKey, bucket });
  const store = makeStore({ endpoint: local.endpoint, region: "auto", bucket, accessKeyId, secretAccessKey });

  async function read(port: number): Promise<string> {
    const picture = await readFile(join(project, "infra/pictures/clearance.png"));
    const hash = sha(picture);
    const put = await store.put(originalKey(COMPANY, hash), picture, { length: picture.length, type: "image/png", sha256: hash });
    if (!put.ok) throw new Error(`the picture was not stored: ${put.refusal.code}`);
    const expires = Date.now() + TOKEN_LIFE_MS;
    const token = await issueToken(serviceSecret, { audience: "media", subject: `${COMPANY}/${hash}`, expires });
    const answer = await fetch(`http://127.0.0.1:${port}/read`, {
      method: "POST",
      headers: { authorization: `Bearer ${token}`, "content-type": "application/json" },
      body: JSON.stringify({ company: COMPANY, sha: hash }),
    });
    if (!answer.ok) throw new Error(`media answered ${answer.status}: ${(await answer.text()).slice(0, 200)}`);
    const drawn = await store.head(renditionKey(COMPANY, hash, "screen"));
    if (!drawn.ok || drawn.value.length === 0) throw new Error("media answered, and no rendition is in the store");
    return `a picture read, ${drawn.value.length} bytes drawn`;
  }

  async function printed(port: number): Promise<string> {
    const model = shortReport(Date.now());
    const key = reportKey(COMPANY, sha(new TextEncoder().encode(JSON.stringify(model))));
    const { body, headers } = await printRequest(serviceSecret, { kind: "report", model, key }, Date.now());
    const answer = await fetch(`http://127.0.0.1:${port}/print`, { method: "POST", headers, body });
    if (!answer.ok) throw new Error(`print answered ${answer.status}: ${(await answer.text()).slice(0, 200)}`);
    const { pages, bytes } = (await answer.json()) as PrintAnswer;
    const pdf = await store.get(key);
    const held = pdf.ok ? await pdf.value.bytes() : pdf;
    if (!held.ok) throw new Error(`print answered, and no PDF is in the store: ${held.refusal.code}`);
    const text = new TextDecoder("latin1").decode(held.value);
    if (!text.startsWith("%PDF-") || !/OpenSans/.test(text)) throw new Error("what was printed is no PDF with the record's own font in it");
    return `${pages} page printed, ${bytes} bytes`;
  }

  return {
    handed: {
      STORE_ENDPOINT: local.endpoint,
      STORE_REGION: "auto",
      STORE_BUCKET: bucket,
      STORE_ACCESS_KEY: accessKeyId,
      STORE_SECRET_KEY: secretAccessKey,
      SERVICE_SECRET: serviceSecret,
      // any free one, and not to be reached from elsewhere
      MEDIA_PORT: "0",
      MEDIA_HOST: "127.0.0.1",
      PRINT_PORT: "0",
      PRINT_HOST: "127.0.0.1",
    },
    work: (name, port) => (name === "media" ? read(port) : printed(port)),
    close: () => local.close(),
  };
}
