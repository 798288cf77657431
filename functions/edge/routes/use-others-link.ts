import { refuse } from "#core/outcome/index.ts";
import { entryMade, othersSaid } from "#core/wire/index.ts";
import { limits, notIn } from "../access/limits.ts";
import type { Session } from "../adapters/sessions.ts";
import { sha256Hex } from "../chance.ts";
import { sayInJob } from "../jobs/say-in-job.ts";
import { behind } from "../shards/index.ts";
import { everyone, json, route } from "./route.ts";

const LANE_MS = 10_000;

export const useOthersLink = route({
  method: "POST",
  path: "/api/others/:token",
  says: "Enters what the holder of a link did, with his paper and his name; the link ends with it",
  who: everyone,
  takes: othersSaid,
  gives: { 201: entryMade },
  async run({ services: edge, parameters, input, request, now }) {
    const token = parameters.token ?? "";
    const key = await sha256Hex(token);
    const services = await behind(edge, key);
    // two who use it at once: the second finds it ended
    return services.lanes.in(`others ${key}`, LANE_MS, async () => {
      const link = await services.othersLinks.open(token, now);
      if (link === undefined) return notIn(services, limits.othersLink, request, "others-link-ended", "link");
      const { company, job, step, hash, madeBy, what: askedFor } = link;
      const { name, did, photo, paper } = input;
      if (photo === undefined && paper === undefined) return refuse("others-paper-missing", "photo", {});
      if (photo !== undefined && !(await services.photos.get(company, photo))) return refuse("photo-unknown", "photo", {});
      if (paper !== undefined && (await services.papers.get(company, paper)) === undefined) return refuse("paper-unknown", "paper", {});
      const maker = (await services.companies.people(company)).find(({ id }) => id === madeBy);
      if (maker === undefined || maker.left !== undefined) return refuse("others-link-ended", "link", {});
      const what = {
        what: `${askedFor}: ${did}`,
        step,
        ...(photo === undefined ? {} : { photo }),
        ...(paper === undefined ? {} : { paper }),
        link: hash,
      };
      // whoever made the link answers for it; who used it stands in the entry, and is nobody that signs in
      const author = { company, person: madeBy, role: maker.role } as Session;
      const made = await sayInJob(
        services,
        author,
        { company, job },
        {
          // of the link: used twice it would still be one entry
          id: hash.slice(0, 32),
          kind: "done-by-others",
          contents: { what, who: { name } },
          at: now,
          also: () => [services.othersLinks.used(hash, now)],
        },
      );
      return made.ok ? json(made.value, 201) : made;
    });
  },
});
