import { joined } from "./joined.ts";
import { Blocks } from "./photos/blocks.ts";

/** The whole body of a request, up to so many bytes; undefined where it is longer or breaks off. */
export async function bodyOf(request: Request, most: number): Promise<Uint8Array | undefined> {
  const blocks = new Blocks(request.body);
  const parts: Uint8Array[] = [];
  let length = 0;
  try {
    for (;;) {
      const block = await blocks.next();
      if (block === undefined) break;
      length += block.length;
      if (length > most) {
        await blocks.discard(4 * most);
        return undefined;
      }
      parts.push(block);
    }
  } catch {
    return undefined;
  }
  return joined(parts);
}
