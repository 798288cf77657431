import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { z } from "zod";
import { shards } from "../shards/index.ts";
import { optionalVariables } from "./platform.ts";

const name = z.string().regex(/^[a-z][a-z0-9-]{1,50}$/);
/** A web address over TLS without a path: what a passkey, a cookie or another function is bound to. */
const address = z.string().regex(/^https:\/\/[a-z0-9.-]+(:\d{1,5})?$/, "https, host and port, no slash at the end");
const principal = z.string().regex(/^arn:[a-z-]+:iam::\d{12}:(user|role)\/[\w+=,.@/-]{1,200}$/);
const machine = z.strictObject({
  url: address,
  /** How many run at most; each media reads two photos at a time. */
  instances: z.int().min(1).max(50),
});

const database = z.strictObject({
  binding: z.string(),
  name,
  id: z.guid(),
});

export const environmentShape = z.strictObject({
  worker: name,
  /** Where browsers find the program. Passkeys are bound to it: never change it where people sign in already. */
  origin: address,
  /** The first holds the directory; further ones are shards. */
  databases: z
    .array(database)
    .min(1)
    .refine((list) => list.every(({ binding }, i) => binding === shards[i]?.binding), "bound as infra/shards lists them, from the first")
    .refine((list) => new Set(list.flatMap(({ binding, name: own }) => [binding, own])).size === 2 * list.length, "each once"),
  store: z.strictObject({
    endpoint: address,
    region: z.string().min(1),
    bucket: z.string().regex(/^[a-z0-9][a-z0-9-]{1,61}[a-z0-9]$/),
    /** Who edge, media and print are to the store. */
    functions: principal,
    /** Who sets the bucket up, and may end a lock before its time. Nobody's everyday key. */
    keeper: principal,
  }),
  media: machine,
  print: machine,
  optional: z.strictObject(Object.fromEntries(optionalVariables.map((one) => [one, z.optional(z.string().min(1))]))),
});

export type Environment = z.infer<typeof environmentShape>;

/** Two installations that share nothing: a name that stands in both would let one write into the other. */
const apart = ({ staging, production }: { staging: Environment; production: Environment }): boolean => {
  const own = ({ worker, origin, databases, store, media, print }: Environment): string[] => [
    worker,
    origin,
    ...databases.map((one) => one.name),
    store.bucket,
    store.functions,
    media.url,
    print.url,
  ];
  const held = new Set(own(staging));
  return own(production).every((one) => !held.has(one));
};

export const environmentsShape = z
  .strictObject({ staging: environmentShape, production: environmentShape })
  .refine(apart, "staging and production share a name");

export type Environments = z.infer<typeof environmentsShape>;
export type EnvironmentName = keyof Environments;
export const environmentNames = ["staging", "production"] as const satisfies readonly EnvironmentName[];

/** `infra/deploy/environments.json`. @throws what is wrong with it, place by place */
export async function readEnvironments(folder: string): Promise<Environments> {
  const read = environmentsShape.safeParse(JSON.parse(await readFile(join(folder, "environments.json"), "utf8")));
  if (read.success) return read.data;
  throw new Error(`environments.json: ${read.error.issues.map(({ path, message }) => `${path.join(".")}: ${message}`).join("; ")}`);
}

/** What of an environment still stands as it came: ids of zeros, and hosts that no one can own (RFC 2606). */
export const toBeEntered = (environment: Environment): readonly string[] => {
  const found: string[] = [];
  const walk = (value: unknown, place: string): void => {
    if (typeof value === "string") {
      if (/\.example$|^0{8}-|::0{12}:/.test(value)) found.push(place);
    } else if (typeof value === "object" && value !== null) {
      for (const [key, inner] of Object.entries(value)) walk(inner, place === "" ? key : `${place}.${key}`);
    }
  };
  walk(environment, "");
  return found;
};
