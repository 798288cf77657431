import { refuse } from "#core/outcome/index.ts";
import { personRemoving, personRequest } from "#core/wire/index.ts";
import { sha256Hex } from "../chance.ts";
import { change } from "../company/change.ts";
import { foundFor, requestNamed } from "../persons/asked.ts";
import { removeFound } from "../persons/remove.ts";
import { coveredNow } from "../persons/view.ts";
import { json, officeUp, route } from "./route.ts";

const reasons = { en: "removed at the request of the person named", es: "retirado a petición de la persona nombrada" } as const;

export const answerPerson = route({
  method: "POST",
  path: "/api/persons/:request/answer",
  says: "Answers a request: its data has been handed over, or what names the one who asks is removed now. Nothing brings it back",
  who: officeUp,
  takes: personRemoving,
  gives: { 201: personRequest },
  async run(call) {
    const { services, session, input, now } = call;
    const request = await requestNamed(call);
    if (!request.ok) return request;
    const { request: id, asks, state, held } = request.value;
    if (state === "answered") return refuse("person-request-answered", "request", {});
    const entry = (await sha256Hex(`person-answered ${id}`)).slice(0, 32);
    const told = (counts: object) => ({ id: entry, kind: "person-answered", what: { request: id, ...counts } });
    if (asks === "data") {
      const said = await change(services, session, told({ bodies: 0, files: 0, stays: 0 }), () => []);
      if (!said.ok) return said;
    } else {
      if (held) return refuse("person-request-held", "request", { until: held.until });
      const found = await foundFor(call, request.value, input.whole ?? []);
      if (found.person !== undefined && found.person.left === undefined) return refuse("person-still-here", "person", {});
      const covered = await coveredNow(services, session.company, found);
      if (covered !== undefined) return refuse("person-covered", "request", { until: covered });
      const removed = await removeFound(services, session, found, { request: id, reason: reasons[session.language], now, told });
      if (!removed.ok) return removed;
    }
    const after = await requestNamed(call);
    return after.ok ? json(after.value, 201) : after;
  },
});
