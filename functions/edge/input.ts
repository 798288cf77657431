import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import { read } from "#core/wire/index.ts";
import { Blocks } from "./photos/blocks.ts";
import type { Route } from "./routes/route.ts";

/** Bytes of a body that holds no batch. */
const LARGEST_JSON = 1_000_000;

/** Reads what the route takes. `undefined` where it takes nothing, or reads the bytes itself. */
export async function inputOf(route: Route, request: Request): Promise<Outcome<unknown>> {
  if (route.takes === undefined || route.takes === "bytes") return ok(undefined);
  const type = request.headers.get("content-type") ?? "";
  if (!/^application\/json\s*(;|$)/i.test(type)) return refuse("request-type", "content-type", { type });
  const most = route.largest ?? LARGEST_JSON;
  const text = await textOf(request, most);
  if (!text.ok) return text;
  let value: unknown;
  try {
    value = JSON.parse(text.value);
  } catch {
    return refuse("request-shape", "body", { why: "no JSON" });
  }
  const batch = (value as { entries?: unknown } | null)?.entries;
  if (route.largest !== undefined && Array.isArray(batch) && batch.length > 200)
    return refuse("batch-size", "entries", { entries: batch.length, most: 200 });
  return read(route.takes, value, "request-shape", "");
}

async function textOf(request: Request, most: number): Promise<Outcome<string>> {
  const blocks = new Blocks(request.body);
  const decoder = new TextDecoder("utf-8", { fatal: true, ignoreBOM: false });
  let text = "";
  let bytes = 0;
  try {
    for (;;) {
      const block = await blocks.next();
      if (block === undefined) break;
      bytes += block.length;
      if (bytes > most) {
        await blocks.discard(4 * most);
        return refuse("batch-size", "body", { bytes, most });
      }
      text += decoder.decode(block, { stream: true });
    }
    return ok(text + decoder.decode());
  } catch {
    return refuse("request-shape", "body", { why: blocks.broken ? "broken off" : "no UTF-8" });
  }
}
