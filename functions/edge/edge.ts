import type { Environment, PhotoHint } from "./environment.ts";
import { lookAtPeriods } from "./keeping/look.ts";
import { log, thrownOf } from "./log.ts";
import { letGo } from "./persons/keys.ts";
import { readOwed, sweep } from "./photos/owed-work.ts";
import { routerOf } from "./router.ts";
import type { Route } from "./routes/index.ts";
import { type Clock, servicesOf } from "./services.ts";
import { at, onShard, openLate } from "./shards/index.ts";

const DEAD_LETTERS = "media-dead";

/** The edge function: the router, the queue's consumer, the dead letters' consumer and the sweep. */
export function edgeOf(routes: readonly Route[], clock: Clock): ExportedHandler<Environment, PhotoHint> {
  const router = routerOf(routes, clock);
  return {
    fetch: (request, environment, context) => router.fetch(request, environment, context),

    async queue(batch, environment) {
      const edge = servicesOf(environment, clock);
      const dead = batch.queue.endsWith(DEAD_LETTERS);
      // Each message is answered for itself: one that fails does not bring the others again.
      await Promise.all(
        batch.messages.map(async (message) => {
          try {
            const services = await at(edge, message.body.company);
            if (dead) await services.photos.giveUp(message.body.company, message.body.sha256);
            else if (!(await readOwed(services, message.body))) return message.retry();
            message.ack();
          } catch (thrown) {
            log({ event: "queue-broke", queue: batch.queue, thrown: thrownOf(thrown) });
            message.retry();
          }
        }),
      );
    },

    async scheduled(_, environment) {
      const services = servicesOf(environment, clock);
      await Promise.all([services.tries.clear(clock()), services.challenges.clear(clock())]);
      await openLate(services);
      for (const shard of services.directory.shards) {
        const there = onShard(services, shard);
        await sweep(there);
        await letGo(there);
        await lookAtPeriods(there);
      }
    },
  };
}
