import { ok, refuse } from "#core/outcome/index.ts";
import { filesOf } from "#core/record/index.ts";
import { releasedHeaders, releasedRecord } from "../released/opened.ts";
import { everyone, route } from "./route.ts";

export const getReleasedPicture = route({
  method: "GET",
  path: "/released/:token/pictures/:photo",
  says: "A picture of a released record, as it is printed there",
  who: everyone,
  gives: { 200: "jpeg" },
  async run(call) {
    const opened = await releasedRecord(call);
    if (!opened.ok) return opened;
    const { row, model } = opened.value;
    const rendition = filesOf(model).find(({ photo }) => photo === call.parameters.photo)?.rendition;
    // only what this record prints, and only of its own company
    if (rendition === undefined || !rendition.startsWith(`${row.company}/renditions/`)) return refuse("photo-unknown", "photo", {});
    const found = await call.services.store.get(rendition);
    if (!found.ok) return found;
    return ok(
      new Response(found.value.stream, {
        headers: { ...releasedHeaders, "content-type": "image/jpeg", "content-length": String(found.value.length) },
      }),
    );
  },
});
