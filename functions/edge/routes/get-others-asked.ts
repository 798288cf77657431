import { refuse } from "#core/outcome/index.ts";
import { othersAsked } from "#core/wire/index.ts";
import { currentJob } from "../jobs/read.ts";
import { everyone, json, route } from "./route.ts";

export const getOthersAsked = route({
  method: "GET",
  path: "/api/others/:token",
  says: "What the holder of a link is asked for; the title of the job, its step, and nothing else of it",
  who: everyone,
  gives: { 200: othersAsked },
  async run({ services, parameters, now }) {
    const link = await services.othersLinks.open(parameters.token ?? "", now);
    const company = link && (await services.companies.get(link.company));
    if (link === undefined || company === undefined) return refuse("others-link-ended", "link", {});
    const { state } = await currentJob(services, link);
    const step = state.sheet?.steps.find(({ id }) => id === link.step)?.title ?? { en: "" };
    const { what, ends } = link;
    return json({ company: company.name, title: state.opened?.title ?? "", step, what, ends, language: company.language });
  },
});
