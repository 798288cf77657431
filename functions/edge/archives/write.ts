import type { ArchiveList } from "#core/wire/index.ts";
import { sha256Hex } from "../chance.ts";
import type { Services } from "../services.ts";
import { listName, storedFiles } from "./files.ts";
import type { Zip, ZipPassThrough } from "./zip.ts";

/** As much of one file is handed on at a time. */
const BLOCK = 1 << 16;

async function* blocksOf(
  services: Services,
  company: string,
  list: ArchiveList,
  ledger: string,
): AsyncGenerator<{ name: string; block: Uint8Array; last: boolean }> {
  const encoder = new TextEncoder();
  const listed = JSON.stringify(list);
  yield { name: listName(await sha256Hex(listed)), block: encoder.encode(listed), last: true };
  yield { name: list.ledger.name, block: encoder.encode(ledger), last: true };
  for (const { file, key } of storedFiles(company, list)) {
    const found = await services.store.get(key);
    if (!found.ok) throw new Error(`${file.name} of an archive: ${found.refusal.code}`);
    const reader = found.value.stream.getReader();
    for (;;) {
      const { value, done } = await reader.read();
      if (done) break;
      yield { name: file.name, block: value, last: false };
    }
    yield { name: file.name, block: new Uint8Array(0), last: true };
  }
}

/**
 * An archive as a stream: a plain ZIP in which nothing is compressed, since photos and PDFs are already. One block of one file is held
 * at a time; a store that breaks off breaks the stream off, so that half an archive never looks like a whole one.
 */
export function archiveStream(services: Services, company: string, list: ArchiveList, ledger: string): ReadableStream<Uint8Array> {
  const blocks = blocksOf(services, company, list, ledger);
  let zip: Zip | undefined;
  const library = import("./zip.ts");
  let current: { readonly name: string; readonly entry: ZipPassThrough } | undefined;
  return new ReadableStream<Uint8Array>(
    {
      async start(controller) {
        const { Zip } = await library;
        zip = new Zip((error, data, final) => {
          if (error) controller.error(error);
          else controller.enqueue(data);
          if (final) controller.close();
        });
      },
      async pull(controller) {
        const { ZipPassThrough } = await library;
        const before = controller.desiredSize ?? 0;
        // some blocks make no bytes of their own, and a stream that is pulled without an answer is not pulled again
        while ((controller.desiredSize ?? 0) >= before) {
          const next = await blocks.next();
          if (next.done) return zip?.end();
          const { name, block, last } = next.value;
          if (current?.name !== name) {
            const entry = new ZipPassThrough(name);
            entry.mtime = list.taken;
            zip?.add(entry);
            current = { name, entry };
          }
          current.entry.push(block, last);
          if (last) current = undefined;
        }
      },
      async cancel() {
        zip?.terminate();
        await blocks.return(undefined);
      },
    },
    { highWaterMark: 4 * BLOCK, size: (chunk) => chunk?.length ?? 1 },
  );
}
