/** One table of a company's rows. */
export interface Part {
  readonly table: string;
  /** Which rows are those of company `?1`. */
  readonly mine: string;
  /** The company of a row that is called so. */
  readonly companyOf: (row: "NEW" | "OLD") => string;
  /** The rest of a unique key, in its order: by it rows are told apart and copied one stretch after another. */
  readonly key: readonly string[];
  /** Rows that are read in one go: fewer where one may be large. */
  readonly most: number;
  /** Columns by which somebody comes in: the directory knows to which company they lead. */
  readonly doors?: readonly string[];
}

const part = (table: string, key: readonly string[], more: Partial<Part> = {}): Part => ({
  table,
  mine: "company = ?1",
  companyOf: (row) => `${row}.company`,
  key,
  most: 500,
  ...more,
});
/** Content of some hundred kilobytes. */
const large = { most: 10 };

/**
 * Every table of a company's rows, which is all that goes with it when it is moved: one place for all of them, and a test that finds a
 * table of the migrations that is neither here nor below. Sessions stand before their tokens, whose company they say.
 */
export const parts: readonly Part[] = [
  part("company", [], { mine: "id = ?1", companyOf: (row) => `${row}.id` }),
  part("person", ["id"]),
  part("session", ["hash"]),
  part("session_token", ["hash"], {
    mine: "session IN (SELECT hash FROM session WHERE company = ?1)",
    companyOf: (row) => `(SELECT company FROM session WHERE hash = ${row}.session)`,
    doors: ["hash"],
  }),
  part("link", ["hash"], { doors: ["hash"] }),
  part("passkey", ["id"], { doors: ["credential"] }),
  part("join_code", ["id"], { doors: ["code", "token"] }),
  part("others_link", ["hash"], { doors: ["hash"] }),
  part("released_record", ["hash"], { doors: ["hash"] }),
  part("job", ["id"]),
  part("entry", ["job", "number"], { most: 200 }),
  part("version", ["number"], large),
  part("finding", ["job"], large),
  part("after_work", ["job"], { most: 100 }),
  part("listed", ["job"], { most: 100 }),
  part("observed", ["part", "job"], { most: 100 }),
  part("observed_late", ["job"]),
  part("photo", ["sha256"]),
  part("photo_use", ["sha256", "job"]),
  part("photo_look", ["sha256", "place"]),
  part("seen_before", ["sha256", "before"]),
  part("blurred", ["sha256"]),
  part("blurred_before", ["sha256", "digest"]),
  part("paper", ["sha256"]),
  part("owed", ["kind", "ref"]),
  part("record", ["id"]),
  part("seal_key", ["kid"]),
  part("site", ["id"], { most: 100 }),
  part("job_site", ["site", "job"]),
  part("own_number", ["number"]),
  part("old_warranty", ["number", "part"]),
  part("erased", ["kind", "ref"], { most: 100 }),
  part("period_day", []),
];

/** Tables that stay where they are: the directory's, and a shard's own about itself. */
export const staying = ["tries", "challenge", "placed", "door", "moving", "closed", "changed", "migration"] as const;
