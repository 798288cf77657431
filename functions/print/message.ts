import MailComposer from "nodemailer/lib/mail-composer/index.js";
import type { Mailbox, Message } from "#functions/shared/index.ts";

/** One line: what would end a line could begin a header of its own. The library does the same; here it is seen. */
const oneLine = (text: string): string => text.replace(/[\p{Cc}\u2028\u2029]+/gu, " ").trim();
const mailbox = ({ name = "", address }: Mailbox) => ({ name: oneLine(name), address: oneLine(address) });

/** A message as it lies in a file or goes over the wire (RFC 5322, RFC 2045): words in UTF-8, nothing fetched, no file of this machine. */
export async function composed({ from, to, subject, text, language, at, id, calendar }: Message): Promise<string> {
  const attachments =
    calendar === undefined
      ? []
      : [
          {
            filename: "calendar.ics",
            content: calendar,
            contentType: "text/calendar; charset=utf-8",
            contentTransferEncoding: "base64" as const,
          },
        ];
  const node = new MailComposer({
    ...(from && { from: mailbox(from) }),
    to: mailbox(to),
    subject: oneLine(subject),
    text,
    date: new Date(at),
    messageId: `<${id}@asburied.invalid>`,
    // without a sender it is a draft for whoever opens it
    headers: { "Content-Language": language, ...(from ? {} : { "X-Unsent": "1" }) },
    attachments,
    baseBoundary: id,
    disableFileAccess: true,
    disableUrlAccess: true,
    newline: "windows",
  }).compile();
  return (await node.build()).toString("utf8");
}
