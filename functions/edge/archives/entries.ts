import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import { joined } from "../joined.ts";
import { Blocks } from "../photos/blocks.ts";

const LOCAL = 0x04034b50;
const AFTER = 0x08074b50;
const CENTRAL = 0x02014b50;
const HEADER = 30;
const DESCRIPTOR = 16;
/** Bit 3 of the flags: sizes stand behind the bytes. */
const SIZES_BEHIND = 8;

/**
 * The files of an archive in their order, read as they come: nothing is held but one block. Sizes come from the archive's own list, so
 * that no byte of a photo is ever taken for the end of it.
 */
export class ArchiveEntries {
  readonly #blocks: Blocks;
  #held: Uint8Array = new Uint8Array(0);
  #behind = false;

  constructor(body: ReadableStream<Uint8Array> | null) {
    this.#blocks = new Blocks(body);
  }

  get broken(): boolean {
    return this.#blocks.broken;
  }

  /** Reads what is left, so that the sender hears the answer. */
  discard = (most: number): Promise<void> => this.#blocks.discard(most);

  async #have(length: number): Promise<boolean> {
    const parts = [this.#held];
    let size = this.#held.length;
    while (size < length) {
      const block = await this.#blocks.next().catch(() => undefined);
      if (block === undefined) break;
      parts.push(block);
      size += block.length;
    }
    if (parts.length > 1) this.#held = joined(parts);
    return size >= length;
  }

  async #taken(length: number): Promise<Uint8Array | undefined> {
    if (!(await this.#have(length))) return undefined;
    const taken = this.#held.slice(0, length);
    this.#held = this.#held.subarray(length);
    return taken;
  }

  /** The name of the next file; undefined behind the last. Refuses `archive-unreadable`. */
  async next(): Promise<Outcome<string | undefined>> {
    if (this.#behind) {
      const descriptor = await this.#taken(DESCRIPTOR);
      if (descriptor === undefined || numberAt(descriptor, 0) !== AFTER) return unreadable("sizes");
      this.#behind = false;
    }
    const mark = (await this.#have(4)) ? numberAt(this.#held, 0) : 0;
    if (mark === CENTRAL) return ok(undefined);
    const header = mark === LOCAL ? await this.#taken(HEADER) : undefined;
    if (header === undefined) return unreadable("no file where one should be");
    const view = new DataView(header.buffer, header.byteOffset);
    const [flags, method, named, extra] = [6, 8, 26, 28].map((at) => view.getUint16(at, true)) as [number, number, number, number];
    if (method !== 0 || (flags & SIZES_BEHIND) === 0 || named === 0 || named > 300) return unreadable("packed by another program");
    const name = await this.#taken(named);
    if (name === undefined || (extra > 0 && (await this.#taken(extra)) === undefined)) return unreadable("cut off");
    this.#behind = true;
    return ok(new TextDecoder().decode(name));
  }

  /** Of a file of text whose size nothing tells: up to the mark behind it, which no JSON can hold. */
  async text(most: number): Promise<Outcome<string>> {
    for (let from = 0; ; ) {
      const at = indexOfMark(this.#held, from);
      if (at >= 0) {
        const bytes = await this.#taken(at);
        return ok(new TextDecoder().decode(bytes));
      }
      from = Math.max(0, this.#held.length - 3);
      if (this.#held.length > most || !(await this.#have(this.#held.length + 1))) return unreadable("cut off");
    }
  }

  /** The bytes of a file, block by block; fewer than told when the sender breaks off. */
  async *bytes(length: number): AsyncGenerator<Uint8Array> {
    let left = length;
    while (left > 0) {
      if (this.#held.length === 0 && !(await this.#have(1))) return;
      const block = this.#held.slice(0, Math.min(left, this.#held.length));
      this.#held = this.#held.subarray(block.length);
      left -= block.length;
      yield block;
    }
  }
}

const unreadable = (why: string) => refuse("archive-unreadable", "archive", { why });

const numberAt = (bytes: Uint8Array, at: number): number => new DataView(bytes.buffer, bytes.byteOffset).getUint32(at, true);

function indexOfMark(bytes: Uint8Array, from: number): number {
  for (let at = bytes.indexOf(0x50, from); at >= 0 && at + 4 <= bytes.length; at = bytes.indexOf(0x50, at + 1))
    if (numberAt(bytes, at) === AFTER) return at;
  return -1;
}
