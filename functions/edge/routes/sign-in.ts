import { ok } from "#core/outcome/index.ts";
import { sessionCookie } from "../cookie.ts";
import { page } from "../page.ts";
import { everyone, route } from "./route.ts";

export const signIn = route({
  method: "GET",
  path: "/in/:token",
  says: "Signs in by a one-time link",
  who: everyone,
  gives: { 303: "nothing", 404: "page" },
  async run({ services, parameters, request, now }) {
    // A look ahead (HEAD) must not use the link up.
    const link = request.method === "GET" ? await services.sessions.useLink(parameters.token ?? "", now) : undefined;
    if (!link)
      return ok(
        page(
          404,
          "This link does not work",
          "It was used before, it is older than a week, or it was withdrawn. Ask the office for a new one.",
        ),
      );
    const token = await services.sessions.begin(link.company, link.person, now);
    return ok(new Response(null, { status: 303, headers: { location: "/", "set-cookie": sessionCookie(token, request) } }));
  },
});
