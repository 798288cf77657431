import { execFile } from "node:child_process";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import sharp from "sharp";
import { expect, it } from "vitest";
import { exifBlock, jpegWith, TAG } from "../../helpers/photo-bytes.ts";

const run = promisify(execFile);
const ROOT = fileURLToPath(new URL("../../..", import.meta.url));
const REAL = ["across-midnight.jpg", "satellite-time.jpg", "park-cut-off.heic"].map((name) => join(ROOT, "tests/samples/photos", name));

/** What a process of its own reads, with how many minutes its machine is behind UTC in June. */
const SCRIPT = `
  import { readFile } from "node:fs/promises";
  import { readMetadata } from "#functions/media/metadata.ts";
  const read = [];
  for (const path of process.argv.slice(1)) read.push(await readMetadata(await readFile(path), path.endsWith("heic") ? "image/heic" : "image/jpeg", undefined));
  console.log(JSON.stringify({ behind: new Date(2025, 5, 1, 12).getTimezoneOffset(), read }));
`;

it("E01, T11 reads the same in processes of three zones", async () => {
  const folder = await mkdtemp(join(tmpdir(), "zones-"));
  try {
    const bare = join(folder, "bare.jpg");
    const skipped = join(folder, "skipped.jpg");
    const plain = await sharp({ create: { width: 8, height: 8, channels: 3, background: "#777" } })
      .jpeg()
      .toBuffer();
    await writeFile(bare, jpegWith(plain, exifBlock({ exif: { [TAG.dateTimeOriginal]: "2025:06:01 10:00:00" } })));
    // 2:30 did not happen on this day in Denver; a clock set to another zone shows it all the same.
    await writeFile(skipped, jpegWith(plain, exifBlock({ exif: { [TAG.dateTimeOriginal]: "2025:03:09 02:30:00" } })));
    const answers = await Promise.all(
      ["UTC", "America/Denver", "Pacific/Auckland"].map(async (zone) => {
        const paths = [bare, skipped, ...REAL];
        const { stdout, stderr } = await run(process.execPath, ["--input-type=module", "-e", SCRIPT, ...paths], {
          cwd: ROOT,
          env: { ...process.env, TZ: zone },
        });
        expect(stderr).toBe("");
        return JSON.parse(stdout) as { behind: number; read: readonly unknown[] };
      }),
    );
    expect(answers.map(({ behind }) => behind)).toEqual([0, 360, -720]);
    const [utc, denver, auckland] = answers;
    expect(denver?.read).toEqual(utc?.read);
    expect(auckland?.read).toEqual(utc?.read);
    expect(utc?.read[0]).toMatchObject({ taken: { text: "2025-06-01T10:00:00", source: "original" }, satelliteTime: null });
    expect(utc?.read[0]).not.toHaveProperty("taken.offset");
    expect(utc?.read[1]).toMatchObject({ taken: { text: "2025-03-09T02:30:00" } });
  } finally {
    await rm(folder, { recursive: true });
  }
}, 60_000);
