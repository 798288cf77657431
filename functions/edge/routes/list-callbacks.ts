import { callbackList } from "#core/wire/index.ts";
import { callbackListOf } from "../warranties/callbacks.ts";
import { json, officeUp, route } from "./route.ts";

export const listCallbacks = route({
  method: "GET",
  path: "/api/callbacks",
  says: "Every callback of the company's jobs: those that are open first, the longest open on top",
  who: officeUp,
  gives: { 200: callbackList },
  async run({ services, session }) {
    return json(await callbackListOf(services, session.company));
  },
});
