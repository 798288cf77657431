import { refuse } from "#core/outcome/index.ts";
import { dayOrders } from "#core/reading/index.ts";
import { tableRead } from "#core/wire/index.ts";
import { bodyOf } from "../body.ts";
import { takeTable as take } from "../tables/take.ts";
import { json, officeUp, route } from "./route.ts";

const LARGEST_TABLE = 2_000_000;

export const takeTable = route({
  method: "POST",
  path: "/api/tables/jobs",
  says: "Opens and changes jobs from a CSV by the company's own numbers: all of it or nothing",
  who: officeUp,
  takes: "bytes",
  largest: LARGEST_TABLE,
  asks: {
    look: "1: only tells what comes of each line",
    days: "How a day such as 3/4 is read: `month first` or `day first`; without it as the person's units have it",
    sheet: "Name of the tolerance sheet of jobs that are opened",
  },
  gives: { 200: tableRead },
  async run({ services, session, request, now, afterwards }) {
    const asked = new URL(request.url).searchParams;
    const order = dayOrders.find((one) => one === asked.get("days")) ?? (session.units === "inch" ? "month first" : "day first");
    const bytes = await bodyOf(request, LARGEST_TABLE);
    if (bytes === undefined) return refuse("batch-size", "body", { most: LARGEST_TABLE });
    const table = { bytes, order, sheet: asked.get("sheet") ?? undefined, dry: asked.get("look") === "1" };
    const taken = await take(services, session, table, now, afterwards);
    return taken.ok ? json(taken.value) : taken;
  },
});
