import { randomBytes } from "node:crypto";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { bundleEntry } from "../build/index.ts";
import { Client } from "../demo/index.ts";
import { type Stack, startStack } from "../local/index.ts";
import { defaultSheetJson } from "../sheets/index.ts";

/** A statement of the database with what is bound to it. */
export type Asked = readonly [sql: string, ...values: readonly (string | number | null)[]];

/** Beside the routes: `/api/bare` gives a list of statements to the database as one batch, and answers their rows. Nothing else is done. */
const worker = (edge: string, routes: string): string => `import { edgeOf } from ${JSON.stringify(edge)};
import { routes } from ${JSON.stringify(routes)};
const edge = edgeOf(routes, () => Date.now());
const bare = async (request, { DB }) => {
  const asked = await request.json();
  const answered = await DB.batch(asked.map(([sql, ...values]) => DB.prepare(sql).bind(...values)));
  return Response.json(answered.map(({ results }) => results));
};
export default {
  ...edge,
  fetch: (request, environment, context) =>
    new URL(request.url).pathname === "/api/bare" ? bare(request, environment) : edge.fetch(request, environment, context),
};
`;

const project = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));
export const newId = (): string => randomBytes(12).toString("hex");

/** A company of the bench with the default tolerance sheet, one person of each role signed in. */
export interface Company {
  readonly id: string;
  readonly owner: Client;
  readonly office: Client;
  readonly crew: Client;
  readonly person: string;
  readonly sheet: string;
}

export interface Benched {
  readonly stack: Stack;
  bare(asked: readonly Asked[]): Promise<readonly (readonly Readonly<Record<string, string | number>>[])[]>;
  company(): Promise<Company>;
}

async function companyIn({ edge, secrets }: Stack): Promise<Company> {
  const id = newId();
  const founding = { id, name: "Bench Works", zone: "UTC", units: "inch", language: "en", owner: { name: "Bench Owner" } };
  const operator = { authorization: `Operator ${secrets.operatorKey}` };
  const { ownerLink } = await new Client(edge).send<{ ownerLink: string }>("POST", "/api/companies", founding, operator);
  const owner = await new Client(edge).signIn(ownerLink);
  const joined = async (role: string) => {
    const { person } = await owner.send<{ person: string }>("POST", "/api/people", { name: `Bench ${role}`, role });
    const { link } = await owner.send<{ link: string }>("POST", `/api/people/${person}/links`);
    return { person, client: await new Client(edge).signIn(link) };
  };
  const [office, crew] = [await joined("office"), await joined("crew")];
  const { name } = await office.client.send<{ name: string }>("POST", "/api/company/sheets", defaultSheetJson);
  return { id, owner, office: office.client, crew: crew.client, person: crew.person, sheet: name };
}

/** The whole stack in a folder of its own, which goes afterwards, with a way past the routes to the database. */
export async function withStack<T>(work: (benched: Benched) => Promise<T>): Promise<T> {
  const directory = await mkdtemp(join(tmpdir(), "asburied-bench-"));
  try {
    const source = join(directory, "bench.ts");
    await writeFile(source, worker(project("functions/edge/edge.ts"), project("functions/edge/routes/index.ts")));
    const bundled = await bundleEntry(source, join(directory, "bundled.js"));
    const stack = await startStack({ directory: join(directory, "stack"), demoLinks: false, instead: { worker: bundled } });
    try {
      return await work({
        stack,
        company: () => companyIn(stack),
        async bare(asked) {
          const answer = await fetch(`${stack.edge}/api/bare`, {
            method: "POST",
            body: JSON.stringify(asked),
            headers: { connection: "close" },
          });
          if (!answer.ok) throw new Error(`the bare batch answered ${answer.status}: ${await answer.text()}`);
          return (await answer.json()) as Awaited<ReturnType<Benched["bare"]>>;
        },
      });
    } finally {
      await stack.stop();
    }
  } finally {
    await rm(directory, { recursive: true, force: true });
  }
}
