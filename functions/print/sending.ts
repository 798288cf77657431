import { createTransport } from "nodemailer";
import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import type { Message, MessageAnswer, MessageAsked } from "#functions/shared/index.ts";
import { composed } from "./message.ts";

/** The mail service as the environment names it: `smtp://`, `smtps://`, or `https://` that takes a whole message by POST. */
export interface MailService {
  readonly url: string;
  /** Goes as `Authorization: Bearer` with an HTTP service. */
  readonly token?: string;
}

const PATIENCE_MS = 20_000;

const isHere = (host: string): boolean => ["127.0.0.1", "localhost", "[::1]"].includes(host);

/** The service, or nothing where none is named. @throws where what is named is none: better at the start than at the first message. */
export function mailServiceFrom({
  MAIL_URL: url,
  MAIL_TOKEN: token,
}: Readonly<Record<string, string | undefined>>): MailService | undefined {
  if (url === undefined || url.trim() === "") return undefined;
  const { protocol, hostname } = new URL(url);
  const known = ["smtp:", "smtps:", "https:"].includes(protocol) || (protocol === "http:" && isHere(hostname));
  if (!known) throw new Error("MAIL_URL is neither smtp, smtps nor https");
  return { url, ...(token && { token }) };
}

const notSent = (why: string): Outcome<never> => refuse("mail-not-sent", "mail", { why });

async function bySmtp({ url }: MailService, { from, to }: Required<Pick<Message, "from">> & Message, raw: string): Promise<Outcome<null>> {
  const { username, hostname } = new URL(url);
  const transport = createTransport(url, {
    // a password never goes over an open line
    requireTLS: username !== "" && !isHere(hostname),
    connectionTimeout: PATIENCE_MS,
    greetingTimeout: PATIENCE_MS,
    socketTimeout: PATIENCE_MS,
  } as object);
  try {
    await transport.sendMail({ envelope: { from: from.address, to: to.address }, raw });
    return ok(null);
  } catch (thrown) {
    return notSent((thrown as { code?: string }).code ?? "smtp");
  } finally {
    transport.close();
  }
}

async function byHttp({ url, token }: MailService, raw: string): Promise<Outcome<null>> {
  try {
    const answer = await fetch(url, {
      method: "POST",
      headers: { "content-type": "message/rfc822", ...(token === undefined ? {} : { authorization: `Bearer ${token}` }) },
      body: raw,
      redirect: "error",
      signal: AbortSignal.timeout(PATIENCE_MS),
    });
    await answer.body?.cancel();
    return answer.ok ? ok(null) : notSent(`status ${answer.status}`);
  } catch (thrown) {
    return notSent((thrown as Error).name);
  }
}

/** Makes a message and sends it where that is asked. Refuses `mail-not-set`, `mail-sender-missing`, `mail-not-sent`. */
export async function message({ message: asked, send }: MessageAsked, service: MailService | undefined): Promise<Outcome<MessageAnswer>> {
  const eml = await composed(asked);
  if (!send) return ok({ eml, sent: false });
  if (service === undefined) return refuse("mail-not-set", "mail");
  const { from } = asked;
  if (from === undefined) return refuse("mail-sender-missing", "settings");
  const sent = /^smtps?:/.test(service.url) ? await bySmtp(service, { ...asked, from }, eml) : await byHttp(service, eml);
  return sent.ok ? ok({ eml, sent: true }) : sent;
}
