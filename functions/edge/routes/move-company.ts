import { moveAsked, moveStand } from "#core/wire/index.ts";
import { moveOn } from "../shards/index.ts";
import { json, operator, route } from "./route.ts";

export const moveCompany = route({
  method: "POST",
  path: "/api/companies/:company/move",
  says: "One step of moving a company to another shard while it works; asked again until it is over",
  who: operator,
  takes: moveAsked,
  gives: { 200: moveStand },
  async run({ services, parameters, input, afterwards }) {
    const step = moveOn(services, { company: parameters.company ?? "", to: input.to as "DB", remove: input.remove });
    // whoever asked may be gone meanwhile; a step that has closed the company goes on to open it again
    afterwards(step);
    const stand = await step;
    if (!stand.ok || stand.value.stage === "there") return stand.ok ? json(stand.value) : stand;
    const { stage, rows, closed, switched } = stand.value;
    return json({ stage, rows, ...(closed === null ? {} : { closed }), ...(switched === null ? {} : { switched }) });
  },
});
