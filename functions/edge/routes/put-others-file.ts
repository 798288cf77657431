import { refuse } from "#core/outcome/index.ts";
import { LARGEST_PHOTO, othersFile } from "#core/wire/index.ts";
import { isSha } from "#functions/shared/index.ts";
import { limits, notIn } from "../access/limits.ts";
import { sha256Hex } from "../chance.ts";
import { upload } from "../photos/upload.ts";
import { uploadPaper } from "../photos/upload-paper.ts";
import { behind } from "../shards/index.ts";
import { everyone, json, route } from "./route.ts";

export const putOthersFile = route({
  method: "PUT",
  path: "/api/others/:token/files/:sha256",
  says: "Stores a picture or a PDF that the holder of a link sends, under the SHA-256 of its bytes",
  who: everyone,
  takes: "bytes",
  largest: LARGEST_PHOTO,
  gives: { 201: othersFile },
  async run({ services: edge, parameters, request, afterwards, now }) {
    const sha256 = parameters.sha256 ?? "";
    if (!isSha(sha256)) return refuse("others-link-ended", "link", {});
    const token = parameters.token ?? "";
    const services = await behind(edge, await sha256Hex(token));
    const link = await services.othersLinks.takeFile(token, now);
    if (link === undefined) return notIn(services, limits.othersLink, request, "others-link-ended", "link");
    const { company } = link;
    const asked = { company, sha256, length: request.headers.get("content-length"), body: request.body };
    if (/^application\/pdf\b/i.test(request.headers.get("content-type") ?? "")) {
      const paper = await uploadPaper(services, asked);
      return paper.ok ? json({ sha256, is: "paper" }, 201) : paper;
    }
    const photo = await upload(services, asked);
    if (!photo.ok) return photo;
    if (!photo.value.before) afterwards(services.owed.hint([{ company, sha256 }]));
    return json({ sha256, is: "photo" }, 201);
  },
});
