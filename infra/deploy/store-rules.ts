import type { Environment } from "./environments.ts";
import type { StoreSet } from "./store-files.ts";

/** Within so many days what was erased is gone from everywhere; the same as backups have (`infra/backup/list.ts`). */
export const GONE_WITHIN_DAYS = 35;
/** A lifecycle rule runs once a day, from the midnight (UTC) after its time, and takes until the next. */
const LATE_DAYS = 2;

type Statement = StoreSet["policy"]["Statement"][number];

const list = (value: string | readonly string[]): readonly string[] => (typeof value === "string" ? [value] : value);
const principals = ({ Principal }: Statement): readonly string[] => (Principal === "*" ? ["*"] : list(Principal.AWS));

/** Everything that edge, media and print ask of the store, and that a missing object is told from a closed door. */
const ofFunctions = ["s3:GetObject", "s3:PutObject", "s3:DeleteObject", "s3:ListBucket"];
/** What would undo a lock or a version, or take the rest of this list off. */
const ofKeeperAlone = [
  "s3:BypassGovernanceRetention",
  "s3:DeleteObjectVersion",
  "s3:PutBucketObjectLockConfiguration",
  "s3:PutBucketPolicy",
  "s3:PutBucketVersioning",
  "s3:PutLifecycleConfiguration",
];

/** What is wrong with who may do what; empty where nothing is. */
export function policyFaults({ policy }: Pick<StoreSet, "policy">, { store }: Pick<Environment, "store">): readonly string[] {
  const allowed = policy.Statement.filter(({ Effect }) => Effect === "Allow");
  const denied = policy.Statement.filter(({ Effect }) => Effect === "Deny");
  const found: string[] = [];
  for (const one of allowed) {
    for (const who of principals(one)) {
      if (who.includes("*")) found.push(`${one.Sid} allows everybody`);
      else if (who !== store.functions && who !== store.keeper)
        found.push(`${one.Sid} allows ${who}, whom environments.json does not know`);
    }
    if (list(one.Action).some((what) => what.includes("*"))) found.push(`${one.Sid} allows a whole family of actions`);
  }
  for (const { Sid, Resource } of policy.Statement) {
    const own = [`arn:aws:s3:::${store.bucket}`, `arn:aws:s3:::${store.bucket}/*`];
    if (list(Resource).some((resource) => !own.includes(resource))) found.push(`${Sid} names another bucket`);
  }
  const granted = new Set(allowed.filter((one) => principals(one).includes(store.functions)).flatMap(({ Action }) => list(Action)));
  for (const what of ofFunctions) if (!granted.has(what)) found.push(`the functions may not ${what}`);
  for (const what of granted) if (!ofFunctions.includes(what)) found.push(`the functions may ${what}`);
  const closed = denied.filter(
    ({ Principal, Condition }) => Principal === "*" && Condition?.StringNotEquals?.["aws:PrincipalArn"] === store.keeper,
  );
  const kept = new Set(closed.flatMap(({ Action }) => list(Action)));
  for (const what of ofKeeperAlone) if (!kept.has(what)) found.push(`${what} is not the keeper's alone`);
  const tls = denied.some(({ Principal, Condition }) => Principal === "*" && Condition?.Bool?.["aws:SecureTransport"] === "false");
  if (!tls) found.push("it can be reached without TLS");
  return found;
}

/** Days for which a lock holds. */
export const lockDays = ({ "object-lock": lock }: Pick<StoreSet, "object-lock">): number => {
  const { Days = 0, Years = 0 } = lock.Rule.DefaultRetention;
  return Days + 366 * Years;
};

/** Days between an erasure and the end of the bytes. */
const erasedAfter = ({ lifecycle }: Pick<StoreSet, "lifecycle">): number =>
  Math.min(
    ...lifecycle.Rules.flatMap(({ Status, Filter, NoncurrentVersionExpiration: one }) =>
      Status === "Enabled" && Filter.Prefix === "" && one !== undefined && one.NewerNoncurrentVersions === undefined
        ? [one.NoncurrentDays]
        : [],
    ),
  );

/**
 * What is wrong with how long things stay; empty where nothing is.
 * @param shortest days of the shortest period that a company can set
 */
export function keepingFaults(set: StoreSet, shortest: number): readonly string[] {
  const found: string[] = [];
  const [locked, erased] = [lockDays(set), erasedAfter(set)];
  const mode = set["object-lock"].Rule.DefaultRetention.Mode;
  if (mode !== "GOVERNANCE") found.push(`a lock in the mode ${mode} can be ended by nobody, whoever has a right to it`);
  if (locked < 1) found.push("the lock has no time");
  if (locked > shortest) found.push(`locked for ${locked} days, and a company may keep for ${shortest}`);
  if (!Number.isFinite(erased)) found.push("no rule ends what was erased");
  else if (erased + LATE_DAYS > GONE_WITHIN_DAYS)
    found.push(`erased bytes end after ${erased} days and late by ${LATE_DAYS}: more than ${GONE_WITHIN_DAYS}`);
  // put at 0, erased at 0: the lock must have ended when the rule comes
  if (locked > erased) found.push(`a lock of ${locked} days outlasts the ${erased} days of what was erased`);
  for (const { ID, Expiration } of set.lifecycle.Rules) {
    if (Expiration?.Days !== undefined || Expiration?.Date !== undefined) found.push(`${ID} ends what nobody erased`);
  }
  const aborts = set.lifecycle.Rules.some(
    ({ Status, Filter, AbortIncompleteMultipartUpload: one }) => Status === "Enabled" && Filter.Prefix === "" && one !== undefined,
  );
  if (!aborts) found.push("half uploads stay for good");
  if (set.versioning.Status !== "Enabled") found.push("without versions there is no lock");
  return found;
}

/** What is wrong with who may come from where; empty where nothing is. A browser reaches the edge alone, so the store is closed to all. */
export function doorFaults(set: StoreSet): readonly string[] {
  const open = Object.entries(set["public-access-block"]).filter(([, closed]) => !closed);
  return [
    ...open.map(([name]) => `${name} is off`),
    ...set.cors.CORSRules.map(({ AllowedOrigins }) => `pages of ${AllowedOrigins.join(", ")} may ask the store, and none needs to`),
  ];
}
