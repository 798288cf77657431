import * as z from "zod/mini";
import { later } from "./later.ts";
import { language, text } from "./primitives.ts";

/** For whom a message is. */
const mailbox = later(() => z.strictObject({ name: z.optional(text(120)), address: z.email().check(z.maxLength(200)) }));

/** A message to be made; `link`: the link that it is about, told once when it was made. `send`: by the mail service, where there is one. */
export const newMessage = later(() =>
  z.strictObject({
    kind: z.enum(["released", "others", "warranty"]),
    to: mailbox,
    language,
    link: z.optional(z.string().check(z.regex(/^\/(released|others)\/[A-Za-z0-9_-]{43}$/, "link"))),
    what: z.optional(text(200)),
    send: z.optional(z.boolean()),
  }),
);
export type NewMessage = z.infer<typeof newMessage>;

/** The message as a file (RFC 5322). */
export const messageMade = later(() => z.object({ subject: z.string(), eml: z.string(), sent: z.boolean() }));
export type MessageMade = z.infer<typeof messageMade>;

/** Whether a mail service is named in the environment, and the company's own address stands in its settings. */
export const mail = later(() => z.object({ sends: z.boolean() }));
export type MailView = z.infer<typeof mail>;
