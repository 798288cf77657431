import { problem } from "../problem.ts";
import { mediaTypes, type Operation } from "./operation.ts";
import { type Schema, Schemas } from "./shapes.ts";

/** What the document knows besides its operations. */
export interface Known {
  /** Shapes by the names that they have in the document; a shape without one is written out where it stands. */
  readonly names?: Readonly<Record<string, unknown>>;
  /** HTTP status of every refusal, by its code. */
  readonly statuses?: Readonly<Record<string, number>>;
}

const binary = { schema: { type: "string", format: "binary" } };
const refused = { $ref: "#/components/responses/Refused" };
const problemOf = (schema: Schema): Schema => ({ "application/problem+json": { schema } });
const text = { type: "string" };

function contentOf(body: Operation["gives"][number], schemas: Schemas, status = 200): Schema {
  if (body === "nothing") return {};
  if (typeof body === "string") return { content: { [mediaTypes[body]]: binary } };
  const schema = schemas.of(body);
  // A refusal that says more than others do is a problem document all the same.
  return { content: status >= 400 && status < 500 ? problemOf(schema) : { "application/json": { schema } } };
}

const descriptionOf = (status: number): string => {
  if (status === 303) return "Led on to the address in Location";
  if (status === 503) return "Not all of it answers";
  return status < 400 ? "Done" : "Not taken";
};

function responses({ gives, who }: Operation, schemas: Schemas): Schema {
  const given = Object.entries(gives).map(([status, body]) => [
    status,
    { description: descriptionOf(Number(status)), ...contentOf(body, schemas, Number(status)) },
  ]);
  const open = who.includes("nobody");
  return {
    ...Object.fromEntries(given),
    ...(open ? {} : { 401: refused, 403: refused }),
    "4XX": refused,
    500: { $ref: "#/components/responses/Broken" },
    "5XX": refused,
  };
}

const parametersIn = (place: "query" | "header", all: Readonly<Record<string, string>> = {}): Schema[] =>
  Object.entries(all).map(([name, description]) => ({ name, in: place, required: false, description, schema: text }));

function parametersOf({ method, path, who, asks, heads }: Operation): Schema[] {
  const names = [...path.matchAll(/:([a-z0-9]+)/g)].map((match) => match[1]);
  const guarded = method !== "GET" && !who.includes("operator");
  return [
    ...names.map((name) => ({ name, in: "path", required: true, schema: text })),
    ...parametersIn("query", asks),
    ...parametersIn("header", heads),
    ...(guarded ? [{ $ref: "#/components/parameters/FromTheApp" }] : []),
  ];
}

function securityOf({ who }: Operation): Schema[] {
  if (who.includes("nobody")) return [];
  return who.includes("operator") ? [{ operator: [] }] : [{ session: [] }, { hostSession: [] }];
}

function operationOf(operation: Operation, schemas: Schemas): Schema {
  const parameters = parametersOf(operation);
  const { method, path, says, who, takes } = operation;
  return {
    summary: says,
    operationId: `${method.toLowerCase()}${path.replaceAll(/[^a-z0-9]+/g, "-")}`,
    security: securityOf(operation),
    "x-who": who,
    ...(parameters.length > 0 ? { parameters } : {}),
    ...(takes ? { requestBody: { required: true, ...contentOf(takes, schemas) } } : {}),
    responses: responses(operation, schemas),
  };
}

const byStatus = (statuses: Readonly<Record<string, number>>): Readonly<Record<string, string[]>> => {
  const sorted: Record<string, string[]> = {};
  for (const [code, status] of Object.entries(statuses)) sorted[status] = [...(sorted[status] ?? []), code];
  return sorted;
};

/** The OpenAPI 3.1 document of these operations. */
export function openApi(operations: readonly Operation[], { names = {}, statuses = {} }: Known = {}): Schema {
  const schemas = new Schemas(names, Object.keys(statuses));
  const paths: Record<string, Record<string, Schema>> = {};
  for (const operation of operations) {
    const path = operation.path.replaceAll(/:([a-z0-9]+)/g, "{$1}");
    paths[path] = { ...paths[path], [operation.method.toLowerCase()]: operationOf(operation, schemas) };
  }
  const refusal = schemas.of(problem);
  return {
    openapi: "3.1.0",
    info: { title: "Asburied", version: "1", description: "As-buried records: what was seen, measured and tried before it was covered." },
    servers: [{ url: "/", description: "The installation that serves this document" }],
    paths,
    components: {
      schemas: schemas.named,
      parameters: {
        FromTheApp: {
          name: "x-asburied",
          in: "header",
          required: true,
          description: "A page of another origin cannot set it",
          schema: { type: "string", const: "1" },
        },
      },
      securitySchemes: {
        session: {
          type: "apiKey",
          in: "cookie",
          name: "session",
          description: "Over http. Set by signing in or by joining with a crew's code",
        },
        hostSession: { type: "apiKey", in: "cookie", name: "__Host-session", description: "The same over https" },
        operator: { type: "http", scheme: "Operator", description: "`Authorization: Operator KEY`, for who runs the installation" },
      },
      responses: {
        Refused: {
          description: "Refused (RFC 9457): what is wrong, where, and how to fix it. A code has one status",
          content: problemOf(refusal),
          "x-codes": byStatus(statuses),
        },
        Broken: {
          description: "The edge made a mistake (RFC 9457)",
          content: problemOf({
            type: "object",
            properties: { type: text, title: text, status: { const: 500 }, detail: text, requestId: text },
            required: ["type", "title", "status", "detail", "requestId"],
          }),
        },
      },
    },
  };
}
