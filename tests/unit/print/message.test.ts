import { createServer } from "node:http";
import { createServer as createTcpServer, type Socket } from "node:net";
import PostalMime from "postal-mime";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { composed } from "#functions/print/message.ts";
import { mailServiceFrom, message } from "#functions/print/sending.ts";
import type { Message } from "#functions/shared/index.ts";

const at = Date.UTC(2026, 4, 12, 14, 3, 20);
const plain: Message = {
  from: { name: "Ottermere Gardens (demonstration)", address: "office@example.org" },
  to: { name: "Dana Ashford", address: "dana@example.net" },
  subject: "Courtyard: the record",
  text: "Hello Dana,\n\nhttps://example.org/released/abc\n",
  language: "en",
  at,
  id: "f00d",
};
const parsed = async (one: Message) => PostalMime.parse(await composed(one));

describe("a message of mail", () => {
  it("is read by a second parser as it was said, long lines, signs and all", async () => {
    const text = `Año, ñ, ⅜ in, 24″ and a line that goes on ${"and on ".repeat(60)}\n\nhttps://example.org/${"a".repeat(200)}\n.\nfrom me\n`;
    const read = await parsed({ ...plain, subject: `El registro de «Patio» ${"largo ".repeat(30)}fin`, text });
    expect(read.from).toMatchObject(plain.from ?? {});
    expect(read.to).toMatchObject([plain.to]);
    expect(read.subject).toBe(`El registro de «Patio» ${"largo ".repeat(30)}fin`);
    expect(read.text?.replaceAll("\r\n", "\n").trimEnd()).toBe(text.trimEnd());
    expect(new Date(read.date ?? "").getTime()).toBe(at);
    expect(read.messageId).toBe("<f00d@asburied.invalid>");
    const eml = await composed({ ...plain, text });
    // RFC 5322, 2.1.1: no line of more than 998 signs
    expect(Math.max(...eml.split("\r\n").map((line) => Buffer.byteLength(line)))).toBeLessThanOrEqual(998);
    expect(eml.replaceAll("\r\n", "")).not.toMatch(/[\r\n]/);
  });

  it("is a draft without a sender, and carries a calendar file", async () => {
    const { from: _, ...unsent } = plain;
    const calendar = "BEGIN:VCALENDAR\r\nEND:VCALENDAR\r\n";
    const read = await parsed({ ...unsent, calendar });
    expect(read.from).toBeUndefined();
    expect(read.headers.find(({ key }) => key === "x-unsent")?.value).toBe("1");
    expect(read.attachments).toMatchObject([{ filename: "calendar.ics", mimeType: "text/calendar" }]);
    // the parser writes line ends its own way; RFC 5545 wants these, so they lie in the message bit for bit
    expect(new TextDecoder().decode(read.attachments[0]?.content as ArrayBuffer)).toBe(calendar.replaceAll("\r\n", "\n"));
    expect(await composed({ ...unsent, calendar })).toContain(Buffer.from(calendar).toString("base64"));
  });

  const hostile = [
    "x\r\nBcc: thief@example.com",
    "x\nBcc: thief@example.com\n\nbody",
    "x\r\n\r\n<script>",
    "x\u2028Bcc: thief@example.com",
    "x\u0000\u000bBcc: a",
  ];
  it.each(hostile)("lets nothing that was typed become a header: %j", async (typed) => {
    const usual = (await parsed(plain)).headers.map(({ key }) => key).sort();
    for (const change of [
      { subject: typed },
      { to: { name: typed, address: "dana@example.net" } },
      { from: { name: typed, address: "office@example.org" } },
    ]) {
      const read = await parsed({ ...plain, ...change });
      expect(read.headers.map(({ key }) => key).sort()).toEqual(usual);
      expect([read.bcc, read.text?.trimEnd()]).toEqual([undefined, plain.text.replaceAll("\n", "\n").trimEnd()]);
      expect(read.to).toHaveLength(1);
    }
  });
});

/** A mail server that takes whatever comes and keeps it: as much of RFC 5321 as a sender needs. */
function sink() {
  const got: { from: string; to: string[]; data: string }[] = [];
  const sockets = new Set<Socket>();
  const server = createTcpServer((socket) => {
    sockets.add(socket);
    let held = "";
    let isData = false;
    let now = { from: "", to: [] as string[], data: "" };
    socket.write("220 sink\r\n");
    socket.on("data", (bytes) => {
      held += bytes.toString("utf8");
      for (;;) {
        if (isData) {
          const end = held.indexOf("\r\n.\r\n");
          if (end < 0) return;
          got.push({ ...now, data: held.slice(0, end).replaceAll("\r\n..", "\r\n.") });
          held = held.slice(end + 5);
          isData = false;
          now = { from: "", to: [], data: "" };
          socket.write("250 kept\r\n");
          continue;
        }
        const end = held.indexOf("\r\n");
        if (end < 0) return;
        const line = held.slice(0, end);
        held = held.slice(end + 2);
        if (/^MAIL FROM:/i.test(line)) now.from = /<(.*?)>/.exec(line)?.[1] ?? "";
        if (/^RCPT TO:/i.test(line)) now.to.push(/<(.*?)>/.exec(line)?.[1] ?? "");
        if (/^RCPT TO:<refused/i.test(line)) socket.write("550 nobody\r\n");
        else if (/^DATA/i.test(line)) {
          isData = true;
          socket.write("354 go on\r\n");
        } else if (/^QUIT/i.test(line)) socket.end("221 bye\r\n");
        else socket.write("250 ok\r\n");
      }
    });
  });
  return { got, server, sockets };
}

describe("a mail service that is named in the environment", () => {
  const { got, server, sockets } = sink();
  const posted: { authorization: string | undefined; type: string | undefined; body: string }[] = [];
  const http = createServer((request, response) => {
    let body = "";
    request.on("data", (bytes) => (body += String(bytes)));
    request.on("end", () => {
      posted.push({ authorization: request.headers.authorization, type: request.headers["content-type"], body });
      response.writeHead(posted.length > 1 ? 500 : 202).end();
    });
  });
  const port = (of: typeof server | typeof http): number => (of.address() as { port: number }).port;
  beforeAll(async () => {
    await new Promise<void>((then) => server.listen(0, "127.0.0.1", then));
    await new Promise<void>((then) => http.listen(0, "127.0.0.1", then));
  });
  afterAll(() => {
    for (const socket of sockets) socket.destroy();
    server.close();
    http.close();
  });

  it("takes the very message by SMTP, for its one receiver; a refusal of the server is told", async () => {
    const service = mailServiceFrom({ MAIL_URL: `smtp://127.0.0.1:${port(server)}` });
    const sent = await message({ message: { ...plain, text: ".begins with a dot\n" }, send: true }, service);
    expect(sent).toMatchObject({ ok: true, value: { sent: true } });
    expect(got).toMatchObject([{ from: "office@example.org", to: ["dana@example.net"] }]);
    const read = await PostalMime.parse(got[0]?.data ?? "");
    expect([read.subject, read.text?.trimEnd()]).toEqual([plain.subject, ".begins with a dot"]);
    const no = await message({ message: { ...plain, to: { address: "refused@example.net" } }, send: true }, service);
    expect(no).toMatchObject({ ok: false, refusal: { code: "mail-not-sent" } });
    expect(got).toHaveLength(1);
  });

  it("takes it by HTTP with its token; anything but a yes is told", async () => {
    const service = mailServiceFrom({ MAIL_URL: `http://127.0.0.1:${port(http)}/mail`, MAIL_TOKEN: "t0ken" });
    expect(await message({ message: plain, send: true }, service)).toMatchObject({ ok: true, value: { sent: true } });
    expect(posted).toMatchObject([{ authorization: "Bearer t0ken", type: "message/rfc822" }]);
    expect((await PostalMime.parse(posted[0]?.body ?? "")).subject).toBe(plain.subject);
    expect(await message({ message: plain, send: true }, service)).toMatchObject({
      refusal: { code: "mail-not-sent", figures: { why: "status 500" } },
    });
  });

  it("is none by default: then the message is made and not sent; and none that is unsafe is taken", async () => {
    expect(mailServiceFrom({})).toBeUndefined();
    expect(await message({ message: plain, send: false }, undefined)).toMatchObject({ ok: true, value: { sent: false } });
    expect(await message({ message: plain, send: true }, undefined)).toMatchObject({ refusal: { code: "mail-not-set" } });
    const { from: _, ...unsent } = plain;
    expect(await message({ message: unsent, send: true }, { url: "smtp://127.0.0.1:1" })).toMatchObject({
      refusal: { code: "mail-sender-missing" },
    });
    for (const MAIL_URL of ["http://mail.example.org", "file:///etc/passwd", "no address"])
      expect(() => mailServiceFrom({ MAIL_URL })).toThrow();
  });
});
