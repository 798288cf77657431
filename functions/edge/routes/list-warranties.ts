import { warrantyRegister } from "#core/wire/index.ts";
import { registerOf } from "../warranties/register.ts";
import { json, officeUp, route } from "./route.ts";

export const listWarranties = route({
  method: "GET",
  path: "/api/warranties",
  says: "Every cover of the company, of its jobs and of old papers: soonest to run out first, and what is to be registered by when",
  who: officeUp,
  gives: { 200: warrantyRegister },
  async run({ services, session }) {
    return json(await registerOf(services, session));
  },
});
