import type { DatabaseSync } from "node:sqlite";
import { blurredKey, isSha, markKeys, originalKey, paperKey, recordKey, renditionKey, renditionNames } from "#functions/shared/index.ts";

/** An object that the rows name. `sha256`: its digest where the rows say it. */
export interface NamedObject {
  readonly key: string;
  readonly sha256?: string;
  /** Whether the backup is none without it; renditions are drawn again from the original. */
  readonly must: boolean;
}

interface PhotoRow {
  readonly company: string;
  readonly sha256: string;
  readonly state: string;
}
interface RecordRow {
  readonly company: string;
  readonly job: string;
  readonly id: string;
  readonly version: number;
  readonly sha256: string;
}

/** A record's files beside its PDF; the findings came later than the first records. */
const besideRecord = [
  { ending: "model.json", must: true },
  { ending: "ledger.json", must: true },
  { ending: "findings.json", must: false },
] as const;

const drawn = (key: string): NamedObject => ({ key, must: false });

function ofPhotos(database: DatabaseSync): readonly NamedObject[] {
  const photos = database.prepare("SELECT company, sha256, state FROM photo ORDER BY company, sha256").all() as unknown as PhotoRow[];
  const blurred = database
    .prepare(
      "SELECT company, sha256, digest FROM blurred UNION SELECT company, sha256, digest FROM blurred_before ORDER BY company, sha256",
    )
    .all() as unknown as {
    company: string;
    sha256: string;
    digest: string;
  }[];
  return [
    ...photos.flatMap(({ company, sha256, state }): readonly NamedObject[] => [
      { key: originalKey(company, sha256), sha256, must: true },
      ...(state === "read" ? renditionNames.map((name) => drawn(renditionKey(company, sha256, name))) : []),
    ]),
    ...blurred.flatMap(({ company, sha256, digest }) => renditionNames.map((name) => drawn(blurredKey(company, sha256, name, digest)))),
  ];
}

function ofRecords(database: DatabaseSync): readonly NamedObject[] {
  const records = database
    .prepare("SELECT company, job, id, version, sha256 FROM record ORDER BY company, id")
    .all() as unknown as RecordRow[];
  return records.flatMap(({ company, job, id, version, sha256 }): readonly NamedObject[] => [
    { key: recordKey(company, job, version, `${id}.pdf`), sha256, must: true },
    ...besideRecord.map(({ ending, must }) => ({ key: recordKey(company, job, version, `${id}.${ending}`), must })),
  ]);
}

function ofSettings(database: DatabaseSync): readonly NamedObject[] {
  const marks = database
    .prepare(
      "SELECT DISTINCT company, content ->> '$.mark' AS mark FROM version WHERE kind = 'settings' AND content ->> '$.mark' IS NOT NULL",
    )
    .all() as unknown as { company: string; mark: unknown }[];
  return marks.flatMap(({ company, mark }) =>
    typeof mark === "string" && isSha(mark) ? Object.values(markKeys(company, mark)).map(drawn) : [],
  );
}

/** Everything in the store that the rows of a database name, each key once. Printed reports and design checks are printed again when asked for. */
export function namedObjects(database: DatabaseSync): readonly NamedObject[] {
  const papers = database.prepare("SELECT company, sha256 FROM paper ORDER BY company, sha256").all() as unknown as PhotoRow[];
  const all: readonly NamedObject[] = [
    ...ofPhotos(database),
    ...papers.map(({ company, sha256 }) => ({ key: paperKey(company, sha256), sha256, must: true })),
    ...ofRecords(database),
    ...ofSettings(database),
  ];
  return [...new Map(all.map((one) => [one.key, one])).values()];
}
