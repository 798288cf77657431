import { blurMade, blur as shape } from "#core/wire/index.ts";
import { blur } from "../photos/blur.ts";
import { json, officeUp, route } from "./route.ts";

export const blurPhoto = route({
  method: "POST",
  path: "/api/photos/:sha256/blurred",
  says: "Has parts of a photo blurred wherever it is shown or printed; the original is kept, and the ledgers of its jobs say so",
  who: officeUp,
  takes: shape,
  gives: { 201: blurMade },
  async run({ services, session, parameters, input, now }) {
    const made = await blur(services, session, { sha256: parameters.sha256 ?? "", ...input }, now);
    return made.ok ? json(made.value, 201) : made;
  },
});
