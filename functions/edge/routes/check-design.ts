import { designAnswer, plannedDesign } from "#core/wire/index.ts";
import { designPlanned } from "../jobs/design.ts";
import { json, officeUp, route } from "./route.ts";

export const checkDesign = route({
  method: "POST",
  path: "/api/design",
  says: "What a design that is no job yet leads to, and its check before the dig; nothing is stored",
  who: officeUp,
  takes: plannedDesign,
  gives: { 200: designAnswer },
  async run({ input }) {
    return json(designPlanned(input));
  },
});
