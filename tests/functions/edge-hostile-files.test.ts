import { zipSync } from "fflate";
import sharp from "sharp";
import { beforeAll, describe, expect, inject, it } from "vitest";
import { jsonBytes, packed } from "../helpers/archive.ts";
import { type Company, newCompany, newJob, sha256, until } from "../helpers/edge.ts";

let company: Company;
beforeAll(async () => {
  company = await newCompany(inject("edge"), inject("operatorKey"));
});

const MARK = "<script>alert('foreign')</script>";
const drawn = () => sharp({ create: { width: 320, height: 240, channels: 3, background: "#4a7a5a" } });
const joinedTo = (picture: Uint8Array, more: Uint8Array | string): Uint8Array<ArrayBuffer> =>
  Uint8Array.from(Buffer.concat([picture, Buffer.from(more)]));
const holds = (bytes: Uint8Array, words: string): boolean => Buffer.from(bytes).includes(words);

/** Pictures that are something else as well, and one with a script in every text that a camera writes. */
async function polyglots(): Promise<Readonly<Record<string, Uint8Array<ArrayBuffer>>>> {
  const texts = { ImageDescription: MARK, Artist: MARK, Copyright: MARK, Make: MARK, Model: MARK, Software: MARK };
  const spoken = await drawn()
    .withExif({ IFD0: texts, IFD2: { UserComment: MARK } })
    .jpeg()
    .toBuffer();
  const zip = zipSync({ "index.html": Buffer.from(MARK) }, { level: 0 });
  const gif = await drawn().gif().toBuffer();
  return {
    "script in the camera's texts": Uint8Array.from(spoken),
    "JPEG and ZIP": joinedTo(await drawn().jpeg().toBuffer(), zip),
    "PNG and HTML": joinedTo(await drawn().png().toBuffer(), `<!doctype html><html>${MARK}</html>`),
    "GIF and JavaScript": joinedTo(gif, `*/=1;${MARK}`),
    "WebP and PDF": joinedTo(await drawn().webp().toBuffer(), `%PDF-1.7\n1 0 obj<</JS(${MARK})>>endobj`),
  };
}

describe("a picture that is something else besides", () => {
  it("is handed out as a picture that nothing runs of, and what is shown of it holds nothing but pixels", async () => {
    const all = Object.entries(await polyglots());
    await Promise.all(
      all.map(async ([name, bytes]) => {
        expect(holds(bytes, "foreign"), name).toBe(true);
        const at = `/api/photos/${sha256(bytes)}`;
        expect((await company.crew.ask("PUT", at, { bytes })).status, name).toBe(201);
        await until(
          () => company.crew.get(at),
          ({ body }) => body.state !== "stored",
        );
        const original = await company.office.get(`${at}/original`);
        expect(sha256(original.bytes), name).toBe(sha256(bytes));
        expect(original.headers.get("content-type"), name).toMatch(/^image\/(jpeg|png|gif|webp)$/);
        expect(original.headers.get("x-content-type-options"), name).toBe("nosniff");
        expect(original.headers.get("content-security-policy"), name).toBe("default-src 'none'; sandbox");
        for (const which of ["screen", "print"]) {
          const shown = await company.office.get(`${at}/${which}`);
          expect([shown.status, shown.headers.get("content-type"), shown.headers.get("x-content-type-options")], name).toEqual([
            200,
            "image/jpeg",
            "nosniff",
          ]);
          expect(holds(shown.bytes, "foreign") || holds(shown.bytes, "script"), name).toBe(false);
          const { format, exif, width } = await sharp(shown.bytes).metadata();
          expect([format, exif, width], name).toEqual(["jpeg", undefined, 320]);
        }
        expect(JSON.stringify((await company.office.get(at)).body), name).not.toContain("script");
      }),
    );
  }, 90_000);

  it("is no picture where it begins as something else, whatever follows", async () => {
    const jpeg = await drawn().jpeg().toBuffer();
    for (const start of ["%PDF-1.7\n", "<!doctype html>", "PK\u0003\u0004", "<svg xmlns='http://www.w3.org/2000/svg'>"]) {
      const bytes = Uint8Array.from(Buffer.concat([Buffer.from(start), jpeg]));
      expect(await company.crew.ask("PUT", `/api/photos/${sha256(bytes)}`, { bytes })).toMatchObject({
        status: 415,
        body: { code: "photo-type" },
      });
    }
  });

  it("as a PDF it is handed out to be saved, never shown", async () => {
    const paper = joinedTo(Buffer.from("%PDF-1.7\n"), await drawn().jpeg().toBuffer());
    const at = `/api/papers/${sha256(paper)}`;
    // stored it is all the same: it can be filed, and nobody binds it in
    expect(await company.office.ask("PUT", at, { bytes: paper })).toMatchObject({ status: 422, body: { code: "paper-unreadable" } });
    const { headers } = await company.office.get(at);
    expect(headers.get("content-disposition")).toMatch(/^attachment; filename="[0-9a-f]{12}\.pdf"$/);
    expect([headers.get("x-content-type-options"), headers.get("content-security-policy")]).toEqual([
      "nosniff",
      "default-src 'none'; sandbox",
    ]);
  });
});

describe("an archive made to do harm", () => {
  const into = async (bytes: Uint8Array<ArrayBuffer>) => {
    const before = performance.now();
    const answer = await company.office.ask("POST", "/api/archives", { bytes });
    expect([answer.status, answer.body?.code?.startsWith("archive-")], JSON.stringify(answer.body)).toEqual([422, true]);
    expect(performance.now() - before).toBeLessThan(20_000);
    return answer.body;
  };

  it("whose parts are named like places elsewhere is refused by name", async () => {
    const { job } = await newJob(company);
    const list = jsonBytes({ kind: "Asburied job archive", format: 1 });
    for (const name of [
      "../../other/originals/x",
      "/etc/passwd",
      "photos\\..\\..\\x",
      "ledger.json\u0000.exe",
      "photos/%2e%2e/x",
      `${"../".repeat(90)}x`,
    ])
      for (const files of [
        [{ name, bytes: list }],
        [
          { name: "list", bytes: list },
          { name, bytes: list },
        ],
      ])
        await into(packed(files));
    expect((await company.office.get(`/api/jobs/${job}/ledger`)).body.head.number).toBe(2);
  });

  it("that says it holds more than it does, or packs zeros into nothing, ends soon", async () => {
    const bomb = zipSync({ [`list-${"0".repeat(64)}.json`]: new Uint8Array(60_000_000) }, { level: 9 });
    expect(bomb.length).toBeLessThan(100_000);
    expect(await into(Uint8Array.from(bomb))).toMatchObject({ code: "archive-unreadable" });
    const endless = packed([{ name: `list-${"0".repeat(64)}.json`, bytes: new Uint8Array(25_000_000).fill(0x20) }], { asNamed: true });
    expect(await into(endless)).toMatchObject({ code: "archive-unreadable" });
  }, 60_000);
});
