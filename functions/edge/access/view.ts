import type { Access } from "#core/wire/index.ts";
import type { PersonRow } from "../adapters/companies.ts";
import type { Services } from "../services.ts";

/** By which passkeys and on which devices a person of this company is let in. `here`: the session that asks. */
export async function accessOf(
  services: Services,
  company: string,
  person: Pick<PersonRow, "id" | "role">,
  here: string,
  now: number,
): Promise<Access> {
  const [passkeys, sessions] = await Promise.all([
    services.passkeys.of(company, person.id),
    services.sessions.openOf(company, person.id, now),
  ]);
  return {
    person: person.id,
    role: person.role,
    passkeys: passkeys.map(({ id, name, made, last, synced }) => ({
      passkey: id,
      name,
      made,
      synced,
      ...(last === undefined ? {} : { last }),
    })),
    sessions: sessions.map(({ phone, passkey, ...rest }) => ({
      session: phone,
      ...rest,
      ...(passkey === null ? {} : { passkey }),
      here: phone === here,
    })),
  };
}
