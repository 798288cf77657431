import { checkRecord, fileNames, type Judging, type Means, type RecordCheck } from "#core/proof/index.ts";
import { means, type SealedSample } from "./sealed-record.ts";

/** Numbers from 0 to 1 that are the same on every run (mulberry32, public domain). */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

export interface ByteChange {
  readonly file: string;
  readonly at: number;
  readonly to: number;
  readonly check: RecordCheck;
}

/** Findings as they were sealed: that a change is noticed must not hang on a finding coming out otherwise. */
const asSealed = (sample: SealedSample): Judging => {
  const sealed = JSON.parse(new TextDecoder().decode(sample.file.files.get(fileNames.findings))) as ReturnType<Judging["judge"]>;
  return { rules: 1, judge: () => sealed };
};

/** Changes one byte after another of the attached files, each alone, to any other value, and checks the record each time. */
export async function* changedBytes(sample: SealedSample, count: number, seed: number): AsyncGenerator<ByteChange> {
  const chance = seeded(seed);
  const using: Means = means([sample.keys], asSealed(sample));
  const names = [fileNames.ledger, fileNames.seal, fileNames.ledger, fileNames.seal, fileNames.findings, fileNames.model, fileNames.pages];
  for (let i = 0; i < count; i += 1) {
    const file = names[i % names.length] as string;
    const bytes = Uint8Array.from(sample.file.files.get(file) ?? []);
    const at = Math.floor(chance() * bytes.length);
    const to = ((bytes[at] as number) + 1 + Math.floor(chance() * 255)) % 256;
    bytes[at] = to;
    const check = await checkRecord({ ...sample.file, files: new Map([...sample.file.files, [file, bytes]]) }, using);
    yield { file, at, to, check };
  }
}
