/** What the worker asks of its platform. The local stack and the deployed configuration are both made from this, so that they cannot drift. */

export const compatibility = { date: "2026-07-01", flags: ["nodejs_compat"] } as const;

/** What is deployed: the worker without the demo's sign-in links. */
export const deployedEntry = "functions/edge/worker.ts";

/**
 * The worker is bundled as it is written: the log says where something broke by the functions' own names. Made small it would need them
 * put back as it runs, at each making of a function, which took a sixth of judging a job.
 */
export const asWritten = { minify: false, keepNames: false } as const;

export const bindings = { database: "DB", queue: "MEDIA_QUEUE", assets: "ASSETS" } as const;

/** The app's own paths are answered from its files, whatever else is asked goes to its first page; the worker is asked first under these. */
export const assets = { notFound: "single-page-application", workerFirst: ["/api/*", "/in/*", "/released/*"] } as const;

/** Messages at a time and tries after the first. A batch waits so many seconds to fill; the platform takes whole ones. */
export const queue = { batch: 5, retries: 2, waits: { local: 0.2, deployed: 1 } } as const;

/** The queue of what photos are owed, and where its dead letters go, which the worker knows by this ending. */
export const queueNames = (before: string): { readonly media: string; readonly dead: string } => ({
  media: `${before}media`,
  dead: `${before}media-dead`,
});

/** The one trigger: every minute the worker sweeps what is owed, lets go of what was erased and looks, once a day, at each company's periods. */
export const cron = "* * * * *";

/** Everything that must stay unknown. Entered by hand, once for each environment; never in a file of the repository. */
export const secrets = {
  STORE_ACCESS_KEY: "the key with which edge, media and print reach the object store",
  STORE_SECRET_KEY: "its other half",
  SERVICE_SECRET: "what edge, media and print prove themselves to one another with; the same in all three",
  OPERATOR_KEY: "opens companies and recovers an owner who lost everything",
  SEAL_SECRET: "wraps the keys that seal records; lost, no record can be sealed with the old keys again",
} as const;

/** What the worker reads besides; no secrets, they stand in the configuration. */
export const variables = ["STORE_ENDPOINT", "STORE_REGION", "STORE_BUCKET", "MEDIA_URL", "PRINT_URL", "ORIGIN"] as const;

/** Read where they are there: `LOG_ANSWERS=yes` adds a line of the log for every answer; the shard of new companies is the first where none is named. */
export const optionalVariables = ["LOG_ANSWERS", "NEW_COMPANIES"] as const;

const ofEveryMachine = {
  secrets: ["STORE_ACCESS_KEY", "STORE_SECRET_KEY", "SERVICE_SECRET"],
  variables: ["STORE_ENDPOINT", "STORE_REGION", "STORE_BUCKET"],
} as const;

/** What each container is handed besides what its image sets. */
export const machines = {
  media: { ...ofEveryMachine, optional: [], port: 8080 },
  // without a mail service the office downloads its messages and sends them itself
  print: { ...ofEveryMachine, optional: ["MAIL_URL", "MAIL_TOKEN"], port: 8080 },
} as const;

export type MachineName = keyof typeof machines;
export const machineNames = Object.keys(machines) as readonly MachineName[];
