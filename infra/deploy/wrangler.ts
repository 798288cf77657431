import { join, relative } from "node:path";
import { type Environment, type EnvironmentName, type Environments, environmentNames } from "./environments.ts";
import { assets, asWritten, bindings, compatibility, cron, deployedEntry, queue, queueNames, secrets } from "./platform.ts";

/** The worker's variables: everything that it reads and that is no secret. */
export const variablesOf = ({ store, media, print, origin, optional }: Environment): Readonly<Record<string, string>> => ({
  STORE_ENDPOINT: store.endpoint,
  STORE_REGION: store.region,
  STORE_BUCKET: store.bucket,
  MEDIA_URL: media.url,
  PRINT_URL: print.url,
  ORIGIN: origin,
  ...Object.fromEntries(Object.entries(optional).filter((pair): pair is [string, string] => pair[1] !== undefined)),
});

/** Nothing but these environments can be deployed to: what stands outside of them has no database and no queue. */
const environmentConfiguration = (environment: Environment, to: (path: string) => string): object => {
  const { media, dead } = queueNames(`${environment.worker}-`);
  const consumed = { max_batch_size: queue.batch, max_batch_timeout: queue.waits.deployed };
  return {
    name: environment.worker,
    routes: [{ pattern: new URL(environment.origin).hostname, custom_domain: true }],
    vars: variablesOf(environment),
    secrets: { required: Object.keys(secrets) },
    d1_databases: environment.databases.map(({ binding, name, id }) => ({
      binding,
      database_name: name,
      database_id: id,
      migrations_dir: to("infra/migrations"),
    })),
    queues: {
      producers: [{ binding: bindings.queue, queue: media }],
      consumers: [
        // no more batches at once than there are media to read them
        { queue: media, ...consumed, max_retries: queue.retries, dead_letter_queue: dead, max_concurrency: environment.media.instances },
        { queue: dead, ...consumed },
      ],
    },
    triggers: { crons: [cron] },
    assets: {
      directory: to("out/app"),
      binding: bindings.assets,
      not_found_handling: assets.notFound,
      run_worker_first: [...assets.workerFirst],
    },
  };
};

/**
 * The platform's configuration as it is written into `folder`, its paths from there.
 * @param project the project's root
 */
export const wranglerConfiguration = (environments: Environments, project: string, folder: string): object => {
  const to = (path: string): string => relative(folder, join(project, path));
  return {
    name: "asburied-no-environment",
    main: to(deployedEntry),
    compatibility_date: compatibility.date,
    compatibility_flags: [...compatibility.flags],
    minify: asWritten.minify,
    keep_names: asWritten.keepNames,
    // one address alone: sign-in is bound to it, and an address that shows an older version would read a newer database
    workers_dev: false,
    preview_urls: false,
    send_metrics: false,
    observability: {
      enabled: true,
      // the platform's own line for each request holds the address, and with it the token of a link
      logs: { enabled: true, invocation_logs: false },
      traces: { enabled: false },
    },
    env: Object.fromEntries(environmentNames.map((name: EnvironmentName) => [name, environmentConfiguration(environments[name], to)])),
  };
};
