import { degrees, PDFDict, PDFDocument, PDFName, PDFStream, StandardFonts } from "@cantoo/pdf-lib";
import sharp from "sharp";
import { beforeAll, describe, expect, inject, it } from "vitest";
import { checkRecord } from "#core/proof/index.ts";
import { meansWith } from "#infra/verify/means.ts";
import { readPdf } from "#infra/verify/read-pdf.ts";
import { type Client, type Company, newCompany, newJob, sha256 } from "../helpers/edge.ts";
import { readPdf as opened } from "../helpers/pdf.ts";

let company: Company;
beforeAll(async () => {
  company = await newCompany(inject("edge"), inject("operatorKey"));
});

/** A paper with words, a scan, a page that lies on its side, a script, a file and a page that goes somewhere. */
async function paper(title: string, pages = 2): Promise<Uint8Array> {
  const document = await PDFDocument.create();
  const font = await document.embedFont(StandardFonts.Courier);
  const scan = await sharp({ create: { width: 60, height: 40, channels: 3, background: "#7a8a9a" } })
    .jpeg()
    .toBuffer();
  for (let number = 1; number <= pages; number += 1) {
    const page = document.addPage([400, 600]);
    page.drawText(`${title} sheet ${number}`, { x: 40, y: 500, size: 20, font });
    if (number === 1) page.drawImage(await document.embedJpg(scan), { x: 40, y: 300 });
    if (number === 2) page.setRotation(degrees(90));
  }
  document.addJavaScript("first", "app.alert('run')");
  await document.attach(new Uint8Array([1, 2, 3]), "hidden.bin");
  const [first] = document.getPages();
  first?.node.set(PDFName.of("AA"), document.context.obj({ O: { S: "Launch", F: "calc.exe" } }));
  return document.save({ useObjectStreams: false });
}
const put = (client: Client, bytes: Uint8Array) => client.ask("PUT", `/api/papers/${sha256(bytes)}`, { bytes });
const add = (job: string, title: string, bytes: Uint8Array) =>
  company.office.post(`/api/jobs/${job}/decisions`, { kind: "paper-added", what: { title, paper: "permit", pdf: sha256(bytes) } });
const read = async (pdf: string) => {
  const bytes = Uint8Array.from((await company.office.get(pdf)).bytes);
  const means = meansWith([]);
  const file = await readPdf(bytes, means);
  if (!file.ok) throw new Error(file.refusal.code);
  return { bytes, file: file.value, means, shown: await opened(bytes) };
};

describe("papers as PDF", () => {
  it("are bound in behind a sheet that names each, with page numbers, in the outline, and sealed", async () => {
    const { job } = await newJob(company);
    const [permit, manual] = [await paper("Permit 12"), await paper("Manual of the pump", 3)];
    for (const [title, bytes, pages] of [
      ["Permit of the town", permit, 2],
      ["Manual of Łódź pumps", manual, 3],
    ] as const) {
      expect(await put(company.office, bytes)).toMatchObject({ status: 201, body: { bytes: bytes.length, pages } });
      expect((await add(job, title, bytes)).status).toBe(201);
    }
    const { record, pdf, pages } = (await company.office.post(`/api/jobs/${job}/records`, { edition: "customer" })).body;
    const { bytes, file, means, shown } = await read(pdf);
    expect(shown.pages).toHaveLength(pages);
    const own = pages - 5;
    // the sheet that names them is the last page of the record's own
    const sheet = shown.pages[own - 1] ?? "";
    for (const words of ["Enclosures", "Permit of the town", "Manual of Łódź pumps", `${own + 1}–${own + 2}`, `${own + 3}–${own + 5}`])
      expect(sheet).toContain(words);
    expect(shown.pages.slice(own)).toEqual([
      expect.stringMatching(/Enclosure 1: Permit of the town.*Permit 12 sheet 1/),
      expect.stringMatching(/Enclosure 1, Page 2 of 2.*Permit 12 sheet 2/),
      expect.stringMatching(/Enclosure 2: Manual of Łódź pumps.*Manual of the pump sheet 1/),
      expect.stringMatching(/Enclosure 2, Page 2 of 3.*sheet 2/),
      expect.stringMatching(/Enclosure 2, Page 3 of 3.*sheet 3/),
    ]);
    for (const [at, words] of shown.pages.entries()) expect(words).toMatch(new RegExp(`Page ${at + 1} of ${pages}`));
    const last = shown.outline.map(({ title }, at) => [title, shown.begins[at]]).slice(-3);
    expect(last).toEqual([
      ["Enclosures", own],
      ["Enclosure 1: Permit of the town", own + 1],
      ["Enclosure 2: Manual of Łódź pumps", own + 3],
    ]);
    // in the contents too: a link that leads there
    expect(shown.links.some(({ to }) => to === own)).toBe(true);
    expect(new Set(shown.sizes.map(String)).size).toBe(1);

    // every key and every name in the file: what runs, opens or hides something came with none
    const objects = (await PDFDocument.load(bytes)).context.enumerateIndirectObjects().map(([, object]) => object);
    const dicts = objects.flatMap((object) => (object instanceof PDFDict ? [object] : object instanceof PDFStream ? [object.dict] : []));
    const names = new Set(dicts.flatMap((dict) => dict.entries().flatMap(([key, value]) => [String(key), String(value)])));
    for (const active of ["/AA", "/OpenAction", "/JS", "/JavaScript", "/Launch", "/URI", "/RichMedia"])
      expect([...names]).not.toContain(active);
    expect([...shown.attachments.keys()].sort()).toEqual(["findings.json", "ledger.json", "record.json", "seal.jws", "text.json"]);

    const check = await checkRecord(file, means);
    expect(check).toMatchObject({ standing: "unchanged", faults: [] });
    expect(Object.keys(check.seal?.papers ?? {})).toEqual([sha256(permit), sha256(manual)]);
    // another scan on a bound page, other words on one
    const scan = check.seal?.papers?.[sha256(permit)]?.[0] ?? "";
    const swapped = { ...file, pictures: file.pictures.map((one) => (one === scan ? "0".repeat(64) : one)) };
    expect((await checkRecord(swapped, means)).faults.map(({ code }) => code)).toContain("seal-picture-missing");
    const words = { ...file, pages: file.pages.map((text) => text.replace("Permit 12 sheet 2", "Permit 13 sheet 2")) };
    expect((await checkRecord(words, means)).faults.map(({ code }) => code)).toEqual(["seal-page-words"]);
    const model = (await company.office.get(`/api/records/${record}/model`)).body;
    expect(model.enclosures.map(({ title }: { title: string }) => title)).toEqual(["Permit of the town", "Manual of Łódź pumps"]);
  });

  it("are only listed where the record would grow too large", async () => {
    const { job } = await newJob(company);
    const document = await PDFDocument.load(await paper("Large"));
    const noise = await sharp({
      create: { width: 2600, height: 2600, channels: 3, background: "#888", noise: { type: "gaussian", mean: 128, sigma: 80 } },
    })
      .jpeg({ quality: 95 })
      .toBuffer();
    for (let at = 0; at < 2; at += 1)
      document.getPage(0).drawImage(await document.embedJpg(noise.subarray()), { x: 0, y: 0, width: 9, height: 9 });
    const large = await document.save();
    const small = await paper("Small", 1);
    expect(large.length).toBeGreaterThan(9_750_000);
    for (const [title, bytes] of [
      ["Large paper", large],
      ["Small paper", small],
    ] as const) {
      expect((await put(company.office, bytes)).status).toBe(201);
      await add(job, title, bytes);
    }
    const { pdf, pages, bytes } = (await company.office.post(`/api/jobs/${job}/records`, { edition: "customer" })).body;
    expect(bytes).toBeLessThan(10_000_000);
    const { shown } = await read(pdf);
    expect(shown.pages[pages - 2]).toContain("Listed only: with it the record would grow beyond ten million bytes");
    expect(shown.pages[pages - 1]).toContain("Small sheet 1");
  });

  it("are refused where they are none, locked, broken or too long, and from whoever may not file them", async () => {
    const code = async (bytes: Uint8Array) => (await put(company.office, bytes)).body.code;
    const plain = await paper("Plain");
    expect(await code(new TextEncoder().encode("<html></html>"))).toBe("paper-type");
    expect(await code(new TextEncoder().encode("%PDF-1.7\nnothing of the kind"))).toBe("paper-unreadable");
    expect(await code(await paper("Long", 61))).toBe("paper-too-long");
    const locked = await PDFDocument.load(plain);
    locked.encrypt({ userPassword: "u", ownerPassword: "o" });
    expect(await code(await locked.save())).toBe("paper-locked");
    expect((await put(company.crew, plain)).status).toBe(403);
    const { job } = await newJob(company);
    expect(await add(job, "Not sent", new Uint8Array([9]))).toMatchObject({ status: 404, body: { code: "paper-unknown" } });
  });
});
