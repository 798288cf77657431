/** What the platform hands the worker. */
export interface Environment {
  /** The first shard, and the directory of all. */
  readonly DB: D1Database;
  /** Further shards, as many as are bound. */
  readonly [shard: `DB_${number}`]: D1Database | undefined;
  /** The shard in which companies are founded; the first where absent. */
  readonly NEW_COMPANIES?: string;
  readonly MEDIA_QUEUE: Queue<PhotoHint>;
  /** The built app; absent while there is none. */
  readonly ASSETS?: { fetch(request: Request): Promise<Response> };
  readonly STORE_ENDPOINT: string;
  readonly STORE_REGION: string;
  readonly STORE_BUCKET: string;
  readonly STORE_ACCESS_KEY: string;
  readonly STORE_SECRET_KEY: string;
  readonly MEDIA_URL: string;
  readonly PRINT_URL: string;
  readonly SERVICE_SECRET: string;
  readonly OPERATOR_KEY: string;
  /** Where browsers find the program: scheme, host and port. Without it no passkey is made or taken. */
  readonly ORIGIN?: string;
  /** `yes`: one line of the log for every answer; else only for what broke. */
  readonly LOG_ANSWERS?: string;
  /** Wraps the private halves of the keys that seal records; without it none can be issued. */
  readonly SEAL_SECRET?: string;
}

/** A message of the queue: this photo is owed a reading. The table of what is owed is the truth. */
export interface PhotoHint {
  readonly company: string;
  readonly sha256: string;
}
