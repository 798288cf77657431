import { refuse } from "#core/outcome/index.ts";
import { messageMade, newMessage } from "#core/wire/index.ts";
import { messageAbout } from "../messages/about.ts";
import { jobOf, json, officeUp, route } from "./route.ts";

export const makeMessage = route({
  method: "POST",
  path: "/api/jobs/:job/messages",
  says: "Makes a message of mail about a released record, a link for others or a warranty, in its reader's language; sends it if asked",
  who: officeUp,
  takes: newMessage,
  gives: { 200: messageMade },
  async run(call) {
    const { services, session, input, request, now } = call;
    const place = await jobOf(call);
    if (!place.ok) return place;
    const { kind, link, what } = input;
    const linked = link?.startsWith(`/${kind}/`) === true;
    if (kind !== "warranty" && !linked) return refuse("request-shape", "link", { why: "link" });
    if (kind === "others" && what === undefined) return refuse("request-shape", "what", { why: "missing" });
    const message = await messageAbout(services, session, place.value, input, { origin: new URL(request.url).origin, now });
    const made = await services.machines.message({ message, send: input.send === true });
    return made.ok ? json({ subject: message.subject, ...made.value }) : made;
  },
});
