import { mail } from "#core/wire/index.ts";
import { json, officeUp, route } from "./route.ts";

export const getMail = route({
  method: "GET",
  path: "/api/mail",
  says: "Whether messages can be sent from here: a mail service is named in the environment",
  who: officeUp,
  gives: { 200: mail },
  async run({ services }) {
    const service = await services.machines.mail();
    return service.ok ? json({ sends: service.value.sends }) : service;
  },
});
