import { createHash, randomBytes } from "node:crypto";
import { readFile } from "node:fs/promises";

const [link, file] = process.argv.slice(2); // a sign-in link of the office, a JPEG
const signedIn = await fetch(link, { redirect: "manual" });
const cookie = signedIn.headers.getSetCookie()[0].split(";")[0];
const random = (bytes) => randomBytes(bytes).toString("hex");
const sha256 = (...parts) => parts.reduce((hash, part) => hash.update(part), createHash("sha256")).digest("hex");

async function ask(method, path, body) {
  const isJson = body !== undefined && !(body instanceof Uint8Array);
  const headers = { cookie, "x-asburied": "1", ...(isJson ? { "content-type": "application/json" } : {}) };
  const answer = await fetch(new URL(path, link), { method, headers, body: isJson ? JSON.stringify(body) : body });
  const said = await answer.json();
  if (!answer.ok) throw new Error(`${said.code} at ${said.place}: ${said.detail}`);
  return said;
}

const { person } = await ask("GET", "/api/session");
const { job } = await ask("POST", "/api/openings", { title: "Front yard fall", sheet: "buried-basin" });

const author = { person, phone: random(16) };
let run = 0;
function entry(kind, content) {
  const salt = random(32); // hashed with the content as canonical JSON (RFC 8785): here, keys in alphabetical order
  const parts = { what: sha256(Buffer.from(salt, "hex"), JSON.stringify(content)) };
  const sealed = { format: 1, job, id: random(16), kind, author, run: run++, made: Date.now(), parts };
  return { sealed, body: { what: { salt, content } } };
}

const photo = await readFile(file);
await ask("PUT", `/api/photos/${sha256(photo)}`, photo);
const reading = entry("reading-taken", { item: "gap-along", typed: "1/16", unit: "in" });
const picture = { bytes: photo.length, item: "bubble-and-lid", photo: sha256(photo), type: "image/jpeg" };
const sent = { sent: Date.now(), entries: [reading, entry("picture-taken", picture)] };
const { answers } = await ask("POST", `/api/jobs/${job}/entries`, sent);
for (const { id, outcome, refusal } of answers) console.log(id, outcome ?? refusal.detail);
const { clearances } = await ask("GET", `/api/jobs/${job}`);
for (const { covering, state, lines } of clearances) console.log(`${covering}: ${state}, ${lines.length} missing`);
