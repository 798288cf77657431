import sharp from "sharp";
import { beforeAll, describe, expect, inject, it } from "vitest";
import { checkRecord } from "#core/proof/index.ts";
import { markSvg } from "#infra/demo/mark.ts";
import { meansWith } from "#infra/verify/means.ts";
import { readPdf } from "#infra/verify/read-pdf.ts";
import { Client, type Company, newCompany, newJob, sha256 } from "../helpers/edge.ts";

let company: Company;
beforeAll(async () => {
  company = await newCompany(inject("edge"), inject("operatorKey"));
});
const svg = new TextEncoder().encode(markSvg);
const send = (client: Client, bytes: Uint8Array) => client.ask("PUT", "/api/company/mark", { bytes });
const settings = { name: "Stillwater Yard Works", zone: "America/New_York", units: "inch", language: "en" };
const colours = { lines: "#1f4d3a", words: "#0b6572" };

describe("the company's mark", () => {
  it("is drawn anew, named by the settings, printed in the record and sealed with it; shown on the released page", async () => {
    const made = await send(company.office, svg);
    // 200 by 100 in its own units, drawn as finely as it is kept: in 900 by 360
    expect(made).toMatchObject({ status: 201, body: { mark: sha256(svg), width: 720, height: 360 } });
    const { mark } = made.body;
    const shown = await company.crew.get(`/api/company/mark/${mark}`);
    expect([shown.status, shown.headers.get("content-type")]).toEqual([200, "image/png"]);
    expect(await sharp(shown.bytes).metadata()).toMatchObject({ format: "png", width: 720, hasAlpha: true });
    const set = await company.owner.ask("PUT", "/api/company/settings", { json: { ...settings, mark, colours } });
    expect(set.status).toBe(200);
    expect((await company.crew.get("/api/session")).body).toMatchObject({ mark, line: colours.lines });

    const { job } = await newJob(company);
    const { record, pdf } = (await company.office.post(`/api/jobs/${job}/records`, { edition: "customer" })).body;
    const model = (await company.office.get(`/api/records/${record}/model`)).body;
    expect(model.company).toMatchObject({ mark: { photo: mark }, colours });
    const means = meansWith([]);
    const read = await readPdf(Uint8Array.from((await company.office.get(pdf)).bytes), means);
    if (!read.ok) throw new Error(read.refusal.code);
    const check = await checkRecord(read.value, means);
    expect(check).toMatchObject({ standing: "unchanged", faults: [] });
    // one picture lies in the file: the mark, which the seal names
    expect(check.seal?.photos).toEqual({ [mark]: read.value.pictures[0] });
    expect(read.value.pictures).toHaveLength(1);
    const another = { ...read.value, pictures: ["0".repeat(64)] };
    expect((await checkRecord(another, means)).faults.map(({ code }) => code)).toEqual(["seal-picture-missing", "seal-picture-unknown"]);

    const { link } = (await company.office.post(`/api/records/${record}/releases`, { to: "D" })).body;
    const nobody = new Client(inject("edge"));
    expect(new TextDecoder().decode((await nobody.get(link)).bytes)).toContain(`${link}/pictures/${mark}`);
    expect((await sharp((await nobody.get(`${link}/pictures/${mark}`)).bytes).metadata()).format).toBe("jpeg");
  });

  it("is refused where it is no picture, more than one, or none that arrived; and is no other company's", async () => {
    const code = async (bytes: Uint8Array) => (await send(company.office, bytes)).body.code;
    expect(await code(new TextEncoder().encode("%PDF-1.7"))).toBe("mark-type");
    expect(await code(new Uint8Array([...svg, ...new TextEncoder().encode("<script>1</script>")]))).toBe("mark-more-than-picture");
    expect(await code(new Uint8Array(2_000_001))).toBe("mark-too-large");
    const huge = markSvg.replace('width="200" height="100"', 'width="90000" height="90000"');
    expect(await code(new TextEncoder().encode(huge))).toMatch(/^mark-(too-large|unreadable)$/);
    expect((await send(company.crew, svg)).status).toBe(403);
    const put = (extra: object) => company.owner.ask("PUT", "/api/company/settings", { json: { ...settings, ...extra } });
    expect(await put({ mark: "0".repeat(64) })).toMatchObject({ status: 404, body: { code: "mark-unknown" } });
    expect(await put({ colours: { lines: "red", words: "#000000" } })).toMatchObject({ status: 400, body: { code: "request-shape" } });
    const other = await newCompany(inject("edge"), inject("operatorKey"));
    expect((await other.office.get(`/api/company/mark/${sha256(svg)}`)).body.code).toBe("mark-unknown");
  });
});
