import { Ajv2020 } from "ajv/dist/2020.js";
import type { Ask, Client, Loose, Reply } from "./edge.ts";

/** Compares what really went over the wire with the OpenAPI document that the edge serves. */

const ID = "http://served.invalid/openapi.json";
const pointer = (...parts: readonly string[]): string =>
  parts.map((part) => `/${encodeURIComponent(part.replaceAll("~", "~0").replaceAll("/", "~1"))}`).join("");

export class Described {
  readonly document: Loose;
  readonly #ajv: Ajv2020;
  readonly #paths: readonly { readonly path: string; readonly form: RegExp }[];
  /** `METHOD path status` of every answer that was compared. */
  readonly seen = new Set<string>();
  readonly faults: string[] = [];

  constructor(document: Loose) {
    this.document = document;
    // Formats stand beside patterns that say the same; members of our own (`x-`) are no keywords.
    this.#ajv = new Ajv2020({ strict: false, validateFormats: false, allErrors: false });
    this.#ajv.addSchema(document, ID);
    this.#paths = Object.keys(document.paths).map((path) => ({
      path,
      form: new RegExp(`^${path.replaceAll(/\{[a-z0-9]+\}/g, "[^/]+")}$`),
    }));
  }

  /** Every `METHOD path status` whose answer is JSON of a shape, and has a status of success. */
  shaped(): string[] {
    return Object.entries<Loose>(this.document.paths).flatMap(([path, methods]) =>
      Object.entries<Loose>(methods).flatMap(([method, { responses }]) =>
        Object.entries<Loose>(responses)
          .filter(([status, one]) => /^2\d\d$/.test(status) && one.content?.["application/json"])
          .map(([status]) => `${method.toUpperCase()} ${path} ${status}`),
      ),
    );
  }

  /** The pattern of an address. One that is written out goes before one with something that varies. */
  #pathOf(address: string): string | undefined {
    const { pathname } = new URL(address, "http://edge.invalid");
    const fits = this.#paths.filter(({ form }) => form.test(pathname)).map(({ path }) => path);
    return fits.find((path) => !path.includes("{")) ?? fits[0];
  }

  #check(what: string, at: string, value: unknown): void {
    const validate = this.#ajv.getSchema(`${ID}#${at}`);
    if (validate === undefined) throw new Error(`the document has nothing at ${at}`);
    if (!validate(value))
      this.faults.push(`${what}: ${this.#ajv.errorsText(validate.errors?.slice(0, 2))} ${JSON.stringify(value)?.slice(0, 300)}`);
  }

  compare(method: string, address: string, sent: Ask, reply: Reply): void {
    const path = this.#pathOf(address);
    if (path === undefined) return;
    const operation = this.document.paths[path][method.toLowerCase()];
    const name = `${method} ${path} ${reply.status}`;
    const base = pointer("paths", path, method.toLowerCase());
    const status = String(reply.status);
    const kept = [status, `${status.slice(0, 1)}XX`].find((one) => operation.responses[one]);
    if (kept === undefined) {
      this.faults.push(`${name}: not described`);
      return;
    }
    const shared = operation.responses[kept].$ref?.slice("#/components/responses/".length);
    const [response, at] = shared
      ? [this.document.components.responses[shared], pointer("components", "responses", shared)]
      : [operation.responses[kept], `${base}${pointer("responses", kept)}`];
    this.seen.add(name);
    const type = (reply.headers.get("content-type") ?? "").split(";")[0] ?? "";
    const types = Object.keys(response.content ?? {});
    const said = types.find((one) => one === type || (one.endsWith("/*") && type.startsWith(one.slice(0, -1))));
    if (types.length === 0 ? reply.bytes.length > 0 : said === undefined) this.faults.push(`${name}: ${type} where ${types} is said`);
    if (said?.endsWith("json")) this.#check(name, `${at}${pointer("content", said, "schema")}`, reply.body);
    if (sent.json !== undefined && reply.status < 300)
      this.#check(`${name}, what was sent`, `${base}${pointer("requestBody", "content", "application/json", "schema")}`, sent.json);
  }

  /** Has everything that a client asks from now on compared. */
  watch<C extends Client>(client: C): C {
    const ask = client.ask.bind(client);
    client.ask = async (method, path, sent = {}) => {
      const reply = await ask(method, path, sent);
      this.compare(method, path, sent, reply);
      return reply;
    };
    return client;
  }
}
