import { refuse } from "#core/outcome/index.ts";
import { LARGEST_PHOTO, photoStored } from "#core/wire/index.ts";
import { isSha } from "#functions/shared/index.ts";
import { upload } from "../photos/upload.ts";
import { anyRole, json, route } from "./route.ts";

export const putPhoto = route({
  method: "PUT",
  path: "/api/photos/:sha256",
  says: "Stores a photo under the SHA-256 of its bytes",
  who: anyRole,
  takes: "bytes",
  largest: LARGEST_PHOTO,
  gives: { 200: photoStored, 201: photoStored },
  async run({ services, session, parameters, request, afterwards }) {
    const sha256 = parameters.sha256 ?? "";
    if (!isSha(sha256)) return refuse("request-shape", "sha256", { why: "hex64" });
    const { company } = session;
    const stored = await upload(services, { company, sha256, length: request.headers.get("content-length"), body: request.body });
    if (!stored.ok) return stored;
    const { before, ...photo } = stored.value;
    if (!before) afterwards(services.owed.hint([{ company, sha256 }]));
    return json(photo, before ? 200 : 201);
  },
});
