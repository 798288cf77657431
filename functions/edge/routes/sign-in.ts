import { ok } from "#core/outcome/index.ts";
import { entered } from "../access/enter.ts";
import { limits, notIn } from "../access/limits.ts";
import { sha256Hex } from "../chance.ts";
import { personOf } from "../company/person.ts";
import { page } from "../page.ts";
import { behind } from "../shards/index.ts";
import { everyone, route } from "./route.ts";

/** A look ahead (HEAD) or a picture of another page must not use a link up: only an address that somebody opens. */
const isOpened = (request: Request): boolean =>
  request.method === "GET" && (request.headers.get("sec-fetch-dest") ?? "document") === "document";

export const signIn = route({
  method: "GET",
  path: "/in/:token",
  says: "Signs in by a one-time link; whoever is to make a passkey is led there",
  who: everyone,
  gives: { 303: "nothing", 404: "page" },
  async run({ services: edge, parameters, request, now }) {
    const token = parameters.token ?? "";
    const services = await behind(edge, await sha256Hex(token));
    const link = isOpened(request) ? await services.links.use(token, now) : undefined;
    const person = link && (await personOf(services, link.company, link.person));
    if (!link || !person || person.left !== undefined) {
      const { refusal } = await notIn(services, limits.link, request, "link-unknown", "link");
      if (refusal.code !== "link-unknown") return { ok: false, refusal };
      return ok(page(request, "link-unknown"));
    }
    const cookie = await entered(services, request, { company: link.company, person, way: "link" }, now);
    const makes = person.role !== "crew" && (await services.passkeys.of(link.company, person.id)).length === 0;
    return ok(new Response(null, { status: 303, headers: { location: makes ? "/first-passkey" : "/", "set-cookie": cookie } }));
  },
});
