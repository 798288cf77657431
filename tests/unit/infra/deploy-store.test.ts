import { describe, expect, test } from "vitest";
import { KEPT_DAYS } from "#infra/backup/list.ts";
import { shortestPeriod, store } from "#infra/deploy/checks.ts";
import { readEnvironments } from "#infra/deploy/environments.ts";
import { readStoreTexts, type StoreFile, type StoreSet, storeSetOf } from "#infra/deploy/store-files.ts";
import { doorFaults, GONE_WITHIN_DAYS, keepingFaults, policyFaults } from "#infra/deploy/store-rules.ts";
import { project } from "../../architecture/project.ts";

const folder = `${project}/infra/deploy`;
const { production } = await readEnvironments(folder);
const texts = await readStoreTexts(folder);
const SHORTEST = 28;

const changed = (file: StoreFile, whole: string, instead: string): StoreSet => {
  const text = texts[file].replace(whole, instead);
  expect(text).not.toBe(texts[file]);
  return storeSetOf({ ...texts, [file]: text }, production);
};

test("a company's shortest period is a month, and the shortest month has 28 days", () => expect(shortestPeriod()).toBe(SHORTEST));

test("backups and the store end what was erased within the same days", () => expect(GONE_WITHIN_DAYS).toBe(KEPT_DAYS));

test("the files are without fault for both environments", async () => {
  const found = await store(folder, await readEnvironments(folder));
  expect(found.filter(({ good }) => !good)).toEqual([]);
  expect(found).toHaveLength(6);
});

describe("the bucket policy", () => {
  test("names the environment's own bucket and principals, and nothing is left to fill in", () => {
    const text = JSON.stringify(storeSetOf(texts, production));
    expect(text).toContain("arn:aws:s3:::asburied-production/*");
    expect(text).not.toMatch(/[<>]/);
  });

  const planted: readonly (readonly [string, string, string, string])[] = [
    ["open to everybody", '"Principal": { "AWS": "<functions>" }', '"Principal": "*"', "allows everybody"],
    ["open to every account", '{ "AWS": "<functions>" }', '{ "AWS": "arn:aws:iam::*:root" }', "allows everybody"],
    ["open to a stranger", '{ "AWS": "<functions>" }', '{ "AWS": "arn:aws:iam::999999999999:user/somebody" }', "does not know"],
    ["that allows everything", '["s3:GetObject", "s3:PutObject", "s3:DeleteObject"]', '"s3:*"', "a whole family"],
    [
      "that lets the functions end versions",
      '"s3:DeleteObject"]',
      '"s3:DeleteObject", "s3:DeleteObjectVersion"]',
      "the functions may s3:DeleteObjectVersion",
    ],
    ["that does not let the functions write", '"s3:PutObject", ', "", "may not s3:PutObject"],
    [
      "under which a missing photo reads as a closed door",
      '"Action": "s3:ListBucket"',
      '"Action": "s3:GetBucketLocation"',
      "may not s3:ListBucket",
    ],
    [
      "under which anybody ends a lock",
      '        "s3:BypassGovernanceRetention",\n',
      "",
      "BypassGovernanceRetention is not the keeper's alone",
    ],
    ["under which the rules can be taken off", '        "s3:PutLifecycleConfiguration",\n', "", "PutLifecycleConfiguration is not"],
    ["without TLS", '"aws:SecureTransport": "false"', '"aws:SecureTransport": "true"', "without TLS"],
    ["of another bucket", '"Resource": "arn:aws:s3:::<bucket>/*"', '"Resource": "arn:aws:s3:::asburied-staging/*"', "another bucket"],
  ];
  test.each(planted)("%s is found", (_, whole, instead, says) => {
    expect(policyFaults(changed("policy", whole, instead), production).join("; ")).toContain(says);
  });
});

describe("lock and lifecycle", () => {
  const planted: readonly (readonly [string, StoreFile, string, string, string])[] = [
    [
      "a lock longer than a company may keep",
      "object-lock",
      '"Days": 28',
      '"Days": 29',
      "locked for 29 days, and a company may keep for 28",
    ],
    ["a lock of years", "object-lock", '"Days": 28', '"Years": 1', "locked for 366 days"],
    ["a lock that nobody can end", "object-lock", "GOVERNANCE", "COMPLIANCE", "can be ended by nobody"],
    ["a lock without a time", "object-lock", ', "Days": 28', "", "has no time"],
    ["erased bytes that stay too long", "lifecycle", '"NoncurrentDays": 33', '"NoncurrentDays": 34', "more than 35"],
    ["erased bytes whose lock outlasts them", "lifecycle", '"NoncurrentDays": 33', '"NoncurrentDays": 20', "outlasts the 20 days"],
    [
      "erased bytes that stay for good",
      "lifecycle",
      '{ "NoncurrentDays": 33 }',
      '{ "NoncurrentDays": 33, "NewerNoncurrentVersions": 2 }',
      "no rule ends what was erased",
    ],
    [
      "a rule that ends what nobody erased",
      "lifecycle",
      '{ "ExpiredObjectDeleteMarker": true }',
      '{ "Days": 365 }',
      "ends what nobody erased",
    ],
    [
      "half uploads that stay",
      "lifecycle",
      '"AbortIncompleteMultipartUpload": { "DaysAfterInitiation": 1 }',
      '"Expiration": { "ExpiredObjectDeleteMarker": true }',
      "half uploads stay",
    ],
    ["no versions", "versioning", "Enabled", "Suspended", "without versions there is no lock"],
  ];
  test.each(planted)("%s is found", (_, file, whole, instead, says) => {
    expect(keepingFaults(changed(file, whole, instead), SHORTEST).join("; ")).toContain(says);
  });
  test("a shorter period of the companies' would forbid the lock as it stands", () => {
    expect(keepingFaults(storeSetOf(texts, production), 14)).toEqual(["locked for 28 days, and a company may keep for 14"]);
  });
});

describe("the bucket's doors", () => {
  test("pages that may ask the store are found", () => {
    const open = '{ "CORSRules": [{ "AllowedOrigins": ["*"], "AllowedMethods": ["GET"] }] }';
    expect(doorFaults(storeSetOf({ ...texts, cors: open }, production))).toEqual(["pages of * may ask the store, and none needs to"]);
  });
  test("a public bucket is found", () => {
    expect(doorFaults(changed("public-access-block", '"BlockPublicPolicy": true', '"BlockPublicPolicy": false'))).toEqual([
      "BlockPublicPolicy is off",
    ]);
  });
});

describe("what a call would not take", () => {
  const wrong: readonly (readonly [string, StoreFile, string, string])[] = [
    ["a misspelt member", "lifecycle", "NoncurrentDays", "NonCurrentDays"],
    ["a statement without effect", "policy", '"Effect": "Allow",', ""],
    ["a status that there is not", "versioning", "Enabled", "On"],
  ];
  test.each(wrong)("%s is refused with its file", (_, file, whole, instead) => {
    expect(() => changed(file, whole, instead)).toThrow(`${file}.json:`);
  });
});
