import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import { originalKey } from "#functions/shared/index.ts";
import type { PhotoRow } from "../adapters/photos.ts";
import type { Call } from "../routes/route.ts";
import { shownKey } from "./shown-key.ts";

/** Named by its hash, so it never changes; but only for the one who is signed in. */
const FOR_EVER = "private, max-age=31536000, immutable";

type Which = "original" | "screen" | "print";

/** Only the original is as it was sent. */
const keyOf = (company: string, photo: PhotoRow, which: Which): string =>
  which === "original" ? originalKey(company, photo.sha256) : shownKey(company, photo, which);

/** Whether the address names these very bytes: of a blurred rendition it must name the parts too, else an older one would stay. */
const isNamed = ({ request }: Call, { blurred }: PhotoRow, which: Which): boolean =>
  which === "original" || blurred === undefined || new URL(request.url).searchParams.get("parts") === blurred;

/** The bytes of a photo of the caller's company, as they lie in the store. */
export async function photoBytes(call: Call, which: Which): Promise<Outcome<Response>> {
  const { services, session, parameters } = call;
  const sha256 = parameters.sha256 ?? "";
  const photo = await services.photos.get(session.company, sha256);
  if (!photo) return refuse("photo-unknown", "photo", {});
  if (which !== "original" && photo.state === "unreadable") return refuse("photo-unreadable", "photo", {});
  if (which !== "original" && photo.state === "stored") return refuse("photo-not-read-yet", "photo", {});
  const key = keyOf(session.company, photo, which);
  const found = await services.store.get(key);
  if (!found.ok) return found;
  if (which === "original" && found.value.length !== photo.bytes) {
    await found.value.stream.cancel();
    return refuse("store-unavailable", `photos/${sha256}`, { why: "shorter than was stored", status: 200 });
  }
  const headers = {
    "content-type": which === "original" ? photo.type : "image/jpeg",
    "content-length": String(found.value.length),
    "cache-control": isNamed(call, photo, which) ? FOR_EVER : "private, no-store",
    "content-security-policy": "default-src 'none'; sandbox",
  };
  return ok(new Response(found.value.stream, { headers }));
}
