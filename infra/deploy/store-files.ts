import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { z } from "zod";
import type { Environment } from "./environments.ts";

/**
 * The bodies of the S3 API's calls that set a bucket up, as JSON (Amazon S3 API Reference, API version 2006-03-01). `<bucket>`,
 * `<functions>` and `<keeper>` stand for what `environments.json` says.
 */
export const storeFiles = ["policy", "lifecycle", "object-lock", "cors", "versioning", "public-access-block"] as const;
export type StoreFile = (typeof storeFiles)[number];

const oneOrMore = <Of extends z.ZodType>(of: Of) => z.union([of, z.array(of).min(1)]);
const action = z.string().regex(/^(s3:)?[A-Za-z*]+$/);
const statement = z.strictObject({
  Sid: z.string().regex(/^[A-Za-z0-9]+$/),
  Effect: z.enum(["Allow", "Deny"]),
  Principal: z.union([z.literal("*"), z.strictObject({ AWS: oneOrMore(z.string()) })]),
  Action: oneOrMore(action),
  Resource: oneOrMore(z.string().startsWith("arn:aws:s3:::")),
  Condition: z.optional(z.record(z.string(), z.record(z.string(), oneOrMore(z.string())))),
});
const days = z.int().min(1);
const rule = z.strictObject({
  ID: z.string().min(1).max(255),
  Status: z.enum(["Enabled", "Disabled"]),
  Filter: z.strictObject({ Prefix: z.string() }),
  AbortIncompleteMultipartUpload: z.optional(z.strictObject({ DaysAfterInitiation: days })),
  NoncurrentVersionExpiration: z.optional(z.strictObject({ NoncurrentDays: days, NewerNoncurrentVersions: z.optional(days) })),
  Expiration: z.optional(
    z.strictObject({ Days: z.optional(days), Date: z.optional(z.string()), ExpiredObjectDeleteMarker: z.optional(z.boolean()) }),
  ),
});
const corsRule = z.strictObject({
  AllowedOrigins: z.array(z.string()).min(1),
  AllowedMethods: z.array(z.enum(["GET", "PUT", "HEAD", "POST", "DELETE"])).min(1),
  AllowedHeaders: z.optional(z.array(z.string())),
  ExposeHeaders: z.optional(z.array(z.string())),
  MaxAgeSeconds: z.optional(z.int()),
});

export const storeShapes = {
  policy: z.strictObject({ Version: z.literal("2012-10-17"), Statement: z.array(statement).min(1) }),
  lifecycle: z.strictObject({ Rules: z.array(rule).min(1).max(1000) }),
  "object-lock": z.strictObject({
    ObjectLockEnabled: z.literal("Enabled"),
    Rule: z.strictObject({
      DefaultRetention: z.strictObject({ Mode: z.enum(["GOVERNANCE", "COMPLIANCE"]), Days: z.optional(days), Years: z.optional(days) }),
    }),
  }),
  cors: z.strictObject({ CORSRules: z.array(corsRule).max(100) }),
  versioning: z.strictObject({ Status: z.enum(["Enabled", "Suspended"]) }),
  "public-access-block": z.strictObject({
    BlockPublicAcls: z.boolean(),
    IgnorePublicAcls: z.boolean(),
    BlockPublicPolicy: z.boolean(),
    RestrictPublicBuckets: z.boolean(),
  }),
} as const satisfies Readonly<Record<StoreFile, z.ZodType>>;

export type StoreSet = { readonly [File in StoreFile]: z.infer<(typeof storeShapes)[File]> };

/** The texts of `infra/deploy/store`, by file. */
export async function readStoreTexts(folder: string): Promise<Readonly<Record<StoreFile, string>>> {
  const read = storeFiles.map(async (file) => [file, await readFile(join(folder, "store", `${file}.json`), "utf8")] as const);
  return Object.fromEntries(await Promise.all(read)) as Record<StoreFile, string>;
}

/** With what one environment is called put in. @throws where a file is none of its shape, place by place */
export function storeSetOf(texts: Readonly<Record<StoreFile, string>>, { store }: Environment): StoreSet {
  const named: Readonly<Record<string, string>> = { bucket: store.bucket, functions: store.functions, keeper: store.keeper };
  const read = storeFiles.map((file) => {
    const text = texts[file].replaceAll(/<(\w+)>/g, (whole, name: string) => named[name] ?? whole);
    const parsed = storeShapes[file].safeParse(JSON.parse(text));
    if (parsed.success) return [file, parsed.data];
    throw new Error(`${file}.json: ${parsed.error.issues.map(({ path, message }) => `${path.join(".")}: ${message}`).join("; ")}`);
  });
  return Object.fromEntries(read) as StoreSet;
}
