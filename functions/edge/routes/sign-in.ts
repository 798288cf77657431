import { ok } from "#core/outcome/index.ts";
import { entered } from "../access/enter.ts";
import { limits, notIn } from "../access/limits.ts";
import { personOf } from "../company/person.ts";
import { page } from "../page.ts";
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
  async run({ services, parameters, request, now }) {
    const link = isOpened(request) ? await services.links.use(parameters.token ?? "", now) : undefined;
    const person = link && (await personOf(services, link.company, link.person));
    if (!link || !person || person.left !== undefined) {
      const { refusal } = await notIn(services, limits.link, request, "link-unknown", "link");
      if (refusal.code !== "link-unknown") return { ok: false, refusal };
      return ok(
        page(
          404,
          "This link does not work",
          "It was used before, it is older than a week, or it was withdrawn. Ask the office for a new one.",
        ),
      );
    }
    const cookie = await entered(services, request, { company: link.company, person, way: "link" }, now);
    const makes = person.role !== "crew" && (await services.passkeys.of(link.company, person.id)).length === 0;
    return ok(new Response(null, { status: 303, headers: { location: makes ? "/first-passkey" : "/", "set-cookie": cookie } }));
  },
});
