import { othersAsked } from "#core/wire/index.ts";
import { counted, limits, notIn } from "../access/limits.ts";
import { sha256Hex } from "../chance.ts";
import { currentJob } from "../jobs/read.ts";
import { behind } from "../shards/index.ts";
import { everyone, json, route } from "./route.ts";

export const getOthersAsked = route({
  method: "GET",
  path: "/api/others/:token",
  says: "What the holder of a link is asked for; the title of the job, its step, and nothing else of it",
  who: everyone,
  gives: { 200: othersAsked },
  async run({ services: edge, parameters, request, now }) {
    const token = parameters.token ?? "";
    const services = await behind(edge, await sha256Hex(token));
    const link = await services.othersLinks.open(token, now);
    const company = link && (await services.companies.get(link.company));
    if (link === undefined || company === undefined) return notIn(services, limits.othersLink, request, "others-link-ended", "link");
    const may = await counted(services, limits.opened, link.hash);
    if (!may.ok) return may;
    const { state } = await currentJob(services, link);
    const step = state.sheet?.steps.find(({ id }) => id === link.step)?.title ?? { en: "" };
    const { what, ends } = link;
    return json({ company: company.name, title: state.opened?.title ?? "", step, what, ends, language: company.language });
  },
});
