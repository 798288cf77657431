import { ok } from "#core/outcome/index.ts";
import { personData } from "#core/wire/index.ts";
import { foundFor, requestNamed } from "../persons/asked.ts";
import { dataOf } from "../persons/data.ts";
import { officeUp, route } from "./route.ts";

export const getPersonsData = route({
  method: "GET",
  path: "/api/persons/:request/data",
  says: "Everything that names the one who asks, as JSON, to be handed over",
  who: officeUp,
  gives: { 200: personData },
  async run(call) {
    const request = await requestNamed(call);
    if (!request.ok) return request;
    const found = await foundFor(call, request.value, []);
    const own = await call.services.companies.get(call.session.company);
    const text = JSON.stringify(dataOf(request.value, found, own?.name ?? "", call.now), undefined, 2);
    const headers = {
      "content-type": "application/json",
      "content-disposition": `attachment; filename="data-${request.value.request}.json"`,
      "cache-control": "no-store",
    };
    return ok(new Response(text, { headers }));
  },
});
