import { refuse } from "#core/outcome/index.ts";
import { LARGEST_PAPER, paperStored } from "#core/wire/index.ts";
import { isSha, paperKey } from "#functions/shared/index.ts";
import { uploadPaper } from "../photos/upload-paper.ts";
import { json, officeUp, route } from "./route.ts";

export const putPaper = route({
  method: "PUT",
  path: "/api/papers/:sha256",
  says: "Stores a PDF under the SHA-256 of its bytes, and says whether it can be bound into a record",
  who: officeUp,
  takes: "bytes",
  largest: LARGEST_PAPER,
  gives: { 201: paperStored },
  async run({ services, session, parameters, request }) {
    const sha256 = parameters.sha256 ?? "";
    if (!isSha(sha256)) return refuse("request-shape", "sha256", { why: "hex64" });
    const { company } = session;
    const stored = await uploadPaper(services, { company, sha256, length: request.headers.get("content-length"), body: request.body });
    if (!stored.ok) return stored;
    const read = await services.machines.print({ kind: "paper", key: paperKey(company, sha256) });
    return read.ok ? json({ ...stored.value, pages: read.value.pages }, 201) : read;
  },
});
