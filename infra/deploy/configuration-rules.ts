import { cron, queueNames } from "./platform.ts";

interface Configured {
  readonly workers_dev?: boolean;
  readonly preview_urls?: boolean;
  readonly observability?: { readonly logs?: { readonly invocation_logs?: boolean } };
  readonly env?: Readonly<
    Record<
      string,
      {
        readonly name?: string;
        readonly vars?: Readonly<Record<string, string>>;
        readonly secrets?: { readonly required?: readonly string[] };
        readonly triggers?: { readonly crons?: readonly string[] };
        readonly queues?: { readonly consumers?: readonly { readonly queue: string; readonly dead_letter_queue?: string }[] };
      }
    >
  >;
}

/**
 * What the platform itself would not find: a second address, addresses in its log, a queue without a consumer, a secret among the variables.
 * @param edge text of the worker's `edge.ts`, which knows dead letters by an ending
 */
export function configurationFaults(configuration: object, edge: string, secretNames: readonly string[]): readonly string[] {
  const { workers_dev, preview_urls, observability, env = {} } = configuration as Configured;
  const ending = /DEAD_LETTERS = "([^"]+)"/.exec(edge)?.[1];
  const found: string[] = [];
  if (workers_dev !== false || preview_urls !== false) found.push("it answers at a second address");
  if (observability?.logs?.invocation_logs !== false)
    found.push("the platform writes addresses down, and a link's token stands in its address");
  if (ending === undefined) found.push("the worker names no ending of dead letters");
  for (const [name, { name: worker = "", vars = {}, secrets, triggers, queues }] of Object.entries(env)) {
    const { media, dead } = queueNames(`${worker}-`);
    const consumers = queues?.consumers ?? [];
    if (!consumers.some((one) => one.queue === media && one.dead_letter_queue === dead))
      found.push(`${name}: ${media} has no dead letters`);
    if (!consumers.some((one) => one.queue === dead)) found.push(`${name}: ${dead} has no consumer, and what comes to it is dropped`);
    if (ending !== undefined && !dead.endsWith(ending)) found.push(`${name}: the worker does not know ${dead} as dead letters`);
    if (!triggers?.crons?.includes(cron)) found.push(`${name}: nothing calls the sweep`);
    for (const one of secretNames) {
      if (one in vars) found.push(`${name}: ${one} stands among the variables`);
      if (!secrets?.required?.includes(one)) found.push(`${name}: ${one} is not asked for`);
    }
  }
  return found;
}
