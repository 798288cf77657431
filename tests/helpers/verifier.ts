// A second reader of ledger.json, written from RFC 8785 (canonical form), FIPS 180-4 (SHA-256, by node:crypto) and the words of
// the format alone. It imports nothing of src: where the two agree, they agree by the standards and not by shared code.
import { createHash } from "node:crypto";

// biome-ignore lint/suspicious/noExplicitAny: a file from anywhere; a wrong turn throws and is caught as a fault
type Unread = any;

interface SecondOpinion {
  ok: boolean;
  faults: string[];
  withheld: { number: number; part: string; reason: string }[];
}

const envelopeKeys = "author before format id job kind made number parts received run sent";
const isHex = (value: Unread): boolean => typeof value === "string" && value.length === 64 && !/[^0-9a-f]/.test(value);
const keysOf = (value: Unread): string => Object.keys(value).sort().join(" ");

function canonicalBytes(value: Unread): Buffer {
  const write = (v: Unread): string => {
    if (v === null || v === true || v === false) return String(v);
    if (typeof v === "number" && Number.isFinite(v)) return Object.is(v, -0) ? "0" : String(v);
    if (typeof v === "string" && v.isWellFormed()) return JSON.stringify(v);
    if (Array.isArray(v)) return `[${v.map(write).join()}]`;
    if (typeof v !== "object") throw new Error(`no canonical form: ${typeof v}`);
    const keys = Object.keys(v).sort((a, b) => (a < b ? -1 : 1));
    return `{${keys.map((k) => `${write(k)}:${write(v[k])}`).join()}}`;
  };
  return Buffer.from(write(value), "utf8");
}

const sha256 = (...pieces: Buffer[]): string => createHash("sha256").update(Buffer.concat(pieces)).digest("hex");

function readEntry(entry: Unread, index: number, job: string, before: string, opinion: SecondOpinion): string {
  const { envelope, body } = entry;
  const must = (good: boolean, what: string): unknown => good || opinion.faults.push(`entry ${index + 1}: ${what}`);
  must(keysOf(entry) === "body envelope" && keysOf(envelope) === envelopeKeys && keysOf(envelope.author) === "person phone", "fields");
  must(envelope.format === 1 && envelope.job === job && envelope.number === index + 1 && envelope.before === before, "place");
  must([envelope.run, envelope.made, envelope.sent, envelope.received].every(Number.isSafeInteger), "integers");
  must(keysOf(envelope.parts) === keysOf(body), "parts");
  for (const [part, kept] of Object.entries<Unread>(body)) {
    must(["what", "who", "where"].includes(part), "unknown part");
    if (keysOf(kept) === "withheld") {
      must(["edition", "erasure", "wrong-job"].includes(kept.withheld), "reason");
      opinion.withheld.push({ number: envelope.number, part, reason: kept.withheld });
    } else {
      must(keysOf(kept) === "content salt" && isHex(kept.salt), `${part}: fields`);
      must(sha256(Buffer.from(kept.salt, "hex"), canonicalBytes(kept.content)) === envelope.parts[part], `${part}: digest`);
    }
  }
  return sha256(canonicalBytes(envelope));
}

export function verifyLedger(json: string): SecondOpinion {
  const opinion: SecondOpinion = { ok: false, faults: [], withheld: [] };
  const must = (good: boolean, what: string): unknown => good || opinion.faults.push(`ledger: ${what}`);
  try {
    const ledger: Unread = JSON.parse(json);
    must(keysOf(ledger) === "entries format head job versions" && ledger.format === 1, "format");
    let hash = "0".repeat(64);
    for (const [index, entry] of ledger.entries.entries()) hash = readEntry(entry, index, ledger.job, hash, opinion);
    const ids = new Set(ledger.entries.map((entry: Unread) => entry.envelope.id));
    must(ids.size === ledger.entries.length, "an id twice");
    must(keysOf(ledger.head) === "hash number" && ledger.head.number === ledger.entries.length && ledger.head.hash === hash, "head");
    for (const version of ledger.versions) {
      must(keysOf(version) === "content digest kind" && sha256(canonicalBytes(version.content)) === version.digest, "version");
    }
  } catch (error) {
    opinion.faults.push(`not a ledger: ${String(error)}`);
  }
  return { ...opinion, ok: opinion.faults.length === 0 };
}
