import PostalMime from "postal-mime";
import { beforeAll, describe, expect, inject, it } from "vitest";
import { type Company, newCompany, newJob } from "../helpers/edge.ts";

let company: Company;
let job: string;
const settings = {
  name: "Stillwater Yard Works",
  zone: "America/New_York",
  units: "inch",
  language: "en",
  lines: ["4 Example Lane", "Telephone 555-0142"],
  officeMail: "office@example.org",
  warranty: {
    text: ["Terms."],
    terms: [{ part: "Pump", months: 24, starts: "handover" }],
    services: [{ kind: "winter", month: 10, day: 31 }],
  },
};
const to = { name: "Dana Ashford", address: "dana@example.net" };
const make = (body: object) => company.office.post(`/api/jobs/${job}/messages`, body);

beforeAll(async () => {
  company = await newCompany(inject("edge"), inject("operatorKey"));
  await company.owner.ask("PUT", "/api/company/settings", { json: settings });
  ({ job } = await newJob(company));
});

describe("messages of mail", () => {
  it("are made for a released record, a link for others and a warranty, in the language of the one who reads them", async () => {
    const { record } = (await company.office.post(`/api/jobs/${job}/records`, { edition: "customer" })).body;
    const { link } = (await company.office.post(`/api/records/${record}/releases`, { to: "Dana" })).body;
    const made = await make({ kind: "released", to, language: "es", link });
    expect(made).toMatchObject({ status: 200, body: { sent: false } });
    const read = await PostalMime.parse(made.body.eml);
    expect(read.subject).toBe("Elm Street 4: el registro de lo construido y enterrado");
    expect(read).toMatchObject({ from: { name: "Stillwater Yard Works", address: "office@example.org" }, to: [to] });
    for (const words of ["Hola Dana Ashford:", new URL(link, inject("edge")).href, "Telephone 555-0142"])
      expect(read.text).toContain(words);

    const [step] = (await company.office.get(`/api/jobs/${job}`)).body.sheet?.content?.steps ?? [];
    const asked = await company.office.post(`/api/jobs/${job}/others-links`, { step: step?.id ?? "top-of-footing", what: "the outlet" });
    const others = await PostalMime.parse(
      (await make({ kind: "others", to: { address: to.address }, language: "en", link: asked.body.link, what: "the outlet" })).body.eml,
    );
    expect(others.subject).toBe("Elm Street 4: your paper for the outlet");
    expect(others.text).toMatch(/^Hello,/);
    expect(others.text).toContain(new URL(asked.body.link, inject("edge")).href);

    const warranty = await PostalMime.parse((await make({ kind: "warranty", to, language: "en" })).body.eml);
    expect(warranty.subject).toBe("Elm Street 4: days of service and of cover");
    expect(warranty.attachments).toMatchObject([{ filename: "calendar.ics", mimeType: "text/calendar" }]);
    expect(new TextDecoder().decode(warranty.attachments[0]?.content as ArrayBuffer)).toContain("BEGIN:VCALENDAR");
  });

  it("name no address but a link of their own kind, and are sent only where a service is named", async () => {
    for (const wrong of [
      { kind: "released", to, language: "en" },
      { kind: "released", to, language: "en", link: `/others/${"a".repeat(43)}` },
      { kind: "released", to, language: "en", link: "https://example.com/released/x" },
      { kind: "others", to, language: "en", link: `/others/${"a".repeat(43)}` },
      { kind: "warranty", to: { address: "dana@example.net\r\nBcc: thief@example.com" }, language: "en" },
      { kind: "warranty", to: { address: "nobody" }, language: "en" },
    ])
      expect(await make(wrong)).toMatchObject({ status: 400, body: { code: "request-shape" } });
    expect((await company.office.get("/api/mail")).body).toEqual({ sends: false });
    expect(await make({ kind: "warranty", to, language: "en", send: true })).toMatchObject({ status: 409, body: { code: "mail-not-set" } });
    expect((await company.crew.post(`/api/jobs/${job}/messages`, { kind: "warranty", to, language: "en" })).status).toBe(403);
  });
});
