import { createHash, type Hash } from "node:crypto";

/** What workerd's streams have and Node's have not, as far as the edge uses it, so that its readers run in a fuzz by the ten thousand. */

interface AtLeast {
  readAtLeast?: (least: number, into: Uint8Array<ArrayBuffer>) => Promise<{ value: Uint8Array | undefined; done: boolean }>;
}

class Digesting extends WritableStream<Uint8Array> {
  readonly digest: Promise<ArrayBuffer>;
  constructor() {
    let hash: Hash = createHash("sha256");
    let [given, broken]: [(bytes: ArrayBuffer) => void, (why: unknown) => void] = [() => {}, () => {}];
    const digest = new Promise<ArrayBuffer>((resolve, reject) => {
      [given, broken] = [resolve, reject];
    });
    digest.catch(() => undefined);
    super({
      write: (block) => {
        hash = hash.update(block);
      },
      close: () => given(new Uint8Array(hash.digest()).buffer),
      abort: (why) => broken(why),
    });
    this.digest = digest;
  }
}

/** As workerd's: as many bytes as were said go through, no more, and no fewer before it closes. */
class FixedLength extends TransformStream<Uint8Array, Uint8Array> {
  constructor(length: number) {
    let left = length;
    super({
      transform(block, controller) {
        left -= block.length;
        if (left < 0) throw new TypeError("more than was said");
        controller.enqueue(block);
      },
      flush() {
        if (left > 0) throw new TypeError("less than was said");
      },
    });
  }
}

/** Puts them in their places, once. */
export function workersStreams(): void {
  const prototype = ReadableStreamBYOBReader.prototype as ReadableStreamBYOBReader & AtLeast;
  prototype.readAtLeast ??= async function readAtLeast(this: ReadableStreamBYOBReader, least, into) {
    // what is read into is given away with every read
    const { length } = into;
    let buffer = into.buffer;
    let at = 0;
    for (;;) {
      const { value, done } = await this.read(new Uint8Array(buffer, at, length - at));
      if (value !== undefined) buffer = value.buffer;
      if (done) return { value: at > 0 ? new Uint8Array(buffer, 0, at) : undefined, done: at === 0 };
      at += value.length;
      if (at >= least) return { value: new Uint8Array(buffer, 0, at), done: false };
    }
  };
  Object.assign(globalThis, { FixedLengthStream: FixedLength });
  if (!("DigestStream" in crypto)) Object.defineProperty(crypto, "DigestStream", { value: Digesting });
}
