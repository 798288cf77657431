import { randomBytes } from "node:crypto";
import { chmod, readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";

/** What the parts of one stack prove themselves with; made once and kept beside the data. */
export interface Secrets {
  readonly storeAccessKey: string;
  readonly storeSecretKey: string;
  readonly serviceSecret: string;
  readonly operatorKey: string;
  /** Wraps the keys that seal records. */
  readonly sealSecret: string;
}

const make = (): Secrets => ({
  storeAccessKey: randomBytes(10).toString("hex").toUpperCase(),
  storeSecretKey: randomBytes(30).toString("base64url"),
  serviceSecret: randomBytes(32).toString("base64url"),
  operatorKey: randomBytes(24).toString("base64url"),
  sealSecret: randomBytes(32).toString("base64url"),
});

/** Of a folder from before records were sealed: nothing is wrapped yet that a new secret could lock out. */
const withoutSeal = (value: unknown): value is Omit<Secrets, "sealSecret"> =>
  typeof value === "object" && value !== null && !("sealSecret" in value) && isSecrets({ ...value, sealSecret: "none" });

const isSecrets = (value: unknown): value is Secrets => {
  if (typeof value !== "object" || value === null) return false;
  const held = value as Record<string, unknown>;
  return Object.keys(make()).every((key) => typeof held[key] === "string" && held[key] !== "");
};

/**
 * The secrets kept in `<directory>/secrets.json` (readable by its owner only), made on the first call.
 * @throws when the file is there and does not hold them: new ones would lock out what is stored already.
 */
export const secretsIn = async (directory: string): Promise<Secrets> => {
  const file = join(directory, "secrets.json");
  let text: string;
  try {
    text = await readFile(file, "utf8");
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== "ENOENT") throw error;
    const made = make();
    await writeFile(file, `${JSON.stringify(made, undefined, 2)}\n`, { mode: 0o600, flag: "wx" });
    return made;
  }
  const read: unknown = JSON.parse(text);
  const held: unknown = withoutSeal(read) ? { ...read, sealSecret: make().sealSecret } : read;
  if (!isSecrets(held))
    throw new Error(`${file} does not hold the secrets of this stack. Put the file back, or move the whole folder away.`);
  if (held !== read) await writeFile(file, `${JSON.stringify(held, undefined, 2)}\n`, { mode: 0o600 });
  await chmod(file, 0o600);
  return held;
};
