import type { Role } from "#core/job/index.ts";
import { ok, refuse } from "#core/outcome/index.ts";
import { demoLinks as shape } from "#core/wire/index.ts";
import { entered } from "../access/enter.ts";
import { statement } from "../adapters/statement.ts";
import { newId, newToken, sha256Hex } from "../chance.ts";
import { addPerson } from "../company/found.ts";
import { personOf } from "../company/person.ts";
import { json, operator, type Route, route } from "../routes/route.ts";
import { signIn } from "../routes/sign-in.ts";
import type { Services } from "../services.ts";
import { at } from "../shards/index.ts";

// Only the local entry imports this file: the bundle that is deployed has no such path.

const DEMO = "demo";
const MARK = "demo-";
const YEAR_9999_MS = 253_402_300_799_999;

async function personWith(services: Services, role: Role): Promise<string> {
  const people = await services.companies.people(DEMO);
  const there = people.find((person) => person.role === role && person.left === undefined);
  if (there) return there.id;
  const owner = people.find((person) => person.role === "company owner");
  const id = newId();
  const author = { company: DEMO, person: owner?.id ?? id, role: "company owner" as const };
  const added = await addPerson(services, author, { id, name: `Demo ${role}`, role });
  if (!added.ok) throw new Error(`the demo's person was refused: ${added.refusal.code}`);
  return id;
}

async function linkFor({ database }: Services, person: string): Promise<string> {
  const token = `${MARK}${newToken()}`;
  const sql = "INSERT INTO link (hash, company, person, ends) VALUES (?1, ?2, ?3, ?4)";
  await statement(database, sql, await sha256Hex(token), DEMO, person, YEAR_9999_MS).run();
  return `/in/${token}`;
}

/** Sign-in links of the demo company, usable again until they are withdrawn. */
export const makeDemoLinks = route({
  method: "POST",
  path: "/api/demo/links",
  says: "Sign-in links of the demo company",
  who: operator,
  gives: { 200: shape },
  async run({ services: edge }) {
    const services = await at(edge, DEMO);
    if (!(await services.companies.get(DEMO))) return refuse("company-unknown", "demo", {});
    const [crew, office, owner] = [
      await personWith(services, "crew"),
      await personWith(services, "office"),
      await personWith(services, "company owner"),
    ];
    return json({ crew: await linkFor(services, crew), office: await linkFor(services, office), owner: await linkFor(services, owner) });
  },
});

const FIND = "SELECT company, person FROM link WHERE hash = ?1 AND company = ?2 AND used IS NULL";

/** Signing in, where a link of the demo company is not used up. */
export const demoSignIn: Route = {
  ...signIn,
  async run(call) {
    const { parameters, request, now } = call;
    const token = parameters.token ?? "";
    if (!token.startsWith(MARK)) return signIn.run(call);
    const services = await at(call.services, DEMO);
    const row = await statement(services.database, FIND, await sha256Hex(token), DEMO).first<{ company: string; person: string }>();
    const person = row && (await personOf(services, row.company, row.person));
    if (!row || !person) return signIn.run(call);
    const cookie = await entered(services, request, { company: row.company, person, way: "link" }, now);
    return ok(new Response(null, { status: 303, headers: { location: "/", "set-cookie": cookie } }));
  },
};
