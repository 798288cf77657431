import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import { originalKey, renditionKey } from "#functions/shared/index.ts";
import type { Call } from "../routes/route.ts";

/** The bytes of a photo of the caller's company, as they lie in the store. */
export async function photoBytes(call: Call, which: "original" | "screen" | "print"): Promise<Outcome<Response>> {
  const { services, session, parameters } = call;
  const sha256 = parameters.sha256 ?? "";
  const photo = await services.photos.get(session.company, sha256);
  if (!photo) return refuse("photo-unknown", "photo", {});
  if (which !== "original" && photo.state === "unreadable") return refuse("photo-unreadable", "photo", {});
  if (which !== "original" && photo.state === "stored") return refuse("photo-not-read-yet", "photo", {});
  const key = which === "original" ? originalKey(session.company, sha256) : renditionKey(session.company, sha256, which);
  const found = await services.store.get(key);
  if (!found.ok) return found;
  const headers = {
    "content-type": which === "original" ? photo.type : "image/jpeg",
    "content-length": String(found.value.length),
    // Named by its hash, so it never changes; but only for the one who is signed in.
    "cache-control": "private, max-age=31536000, immutable",
    "content-security-policy": "default-src 'none'; sandbox",
  };
  return ok(new Response(found.value.stream, { headers }));
}
