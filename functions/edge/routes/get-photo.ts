import { refuse } from "#core/outcome/index.ts";
import { photoState } from "#core/wire/index.ts";
import { photoView } from "../jobs/view.ts";
import { anyRole, json, route } from "./route.ts";

export const getPhoto = route({
  method: "GET",
  path: "/api/photos/:sha256",
  says: "What is known of a photo",
  who: anyRole,
  gives: { 200: photoState },
  async run({ services, session, parameters }) {
    const photo = await services.photos.get(session.company, parameters.sha256 ?? "");
    return photo ? json(photoView(photo)) : refuse("photo-unknown", "photo", {});
  },
});
