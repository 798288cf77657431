import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import { LARGEST_PAPER } from "#core/wire/index.ts";
import { paperKey } from "#functions/shared/index.ts";
import type { Services } from "../services.ts";
import { Blocks } from "./blocks.ts";
import { stillKept } from "./still-kept.ts";
import { lengthOf, streamed, type Upload } from "./upload.ts";

const MAGIC = "%PDF-";
const isPdf = (first: Uint8Array): boolean => String.fromCharCode(...first.subarray(0, MAGIC.length)) === MAGIC;

/**
 * Streams a PDF into the store under its hash; nothing of it is read, and it is only ever handed out to be saved. Refuses
 * as `upload` does, and `paper-type` for what is no PDF.
 */
export async function uploadPaper(
  services: Services,
  asked: Upload,
): Promise<Outcome<{ readonly sha256: string; readonly bytes: number }>> {
  const blocks = new Blocks(asked.body);
  const outcome = await taken(services, asked, blocks);
  await blocks.discard(2 * LARGEST_PAPER);
  return outcome;
}

async function taken(services: Services, { company, sha256, length }: Upload, blocks: Blocks) {
  const place = `files/${sha256}`;
  const key = paperKey(company, sha256);
  const [there, first] = await Promise.all([services.papers.get(company, sha256), blocks.next().catch(() => undefined)]);
  const kept = there === undefined ? ok(false) : await stillKept(services, key, there);
  if (!kept.ok) return kept;
  if (there !== undefined && kept.value) return ok({ sha256, bytes: there });
  const bytes = lengthOf(length, place, LARGEST_PAPER);
  if (!bytes.ok) return bytes;
  if (first === undefined) return refuse("photo-length-differs", place, { bytes: 0, announced: bytes.value });
  if (!isPdf(first)) return refuse("paper-type", place, {});
  const target = { key, sha256, bytes: bytes.value, type: "application/pdf", place };
  const stored = await streamed(services, target, first, blocks);
  if (!stored.ok) return stored;
  await services.papers.add(company, { sha256, bytes: bytes.value }, services.clock());
  return ok({ sha256, bytes: bytes.value });
}
