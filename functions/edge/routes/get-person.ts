import { personFound } from "#core/wire/index.ts";
import { foundFor, requestNamed } from "../persons/asked.ts";
import { foundView } from "../persons/view.ts";
import { json, officeUp, route } from "./route.ts";

export const getPerson = route({
  method: "GET",
  path: "/api/persons/:request",
  says: "What names the one who asks, what would go and what would stay",
  who: officeUp,
  asks: { whole: "Jobs, with commas between, that would not be kept" },
  gives: { 200: personFound },
  async run(call) {
    const request = await requestNamed(call);
    if (!request.ok) return request;
    const whole = (new URL(call.request.url).searchParams.get("whole") ?? "").split(",");
    const found = await foundFor(call, request.value, whole);
    return json(await foundView(call.services, call.session, request.value, found));
  },
});
