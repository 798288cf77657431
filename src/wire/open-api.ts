import * as z from "zod/mini";
import { problem } from "./problem.ts";

export type Shape = z.core.$ZodType;
export type ShapeOutput<S extends Shape> = z.output<S>;

/** What a route says about itself; the router, the document and the test of doors are made from the same list. */
export interface Operation {
  readonly method: "GET" | "POST" | "PUT" | "DELETE";
  /** With `:name` for what varies. */
  readonly path: string;
  readonly says: string;
  readonly who: readonly string[];
  readonly takes?: Shape | "bytes";
  readonly gives: Readonly<Record<number, Shape | "bytes" | "pdf" | "page" | "text" | "nothing">>;
}

type Document = Readonly<Record<string, unknown>>;

const jsonSchema = (shape: Shape): unknown => {
  const { $schema: _, ...schema } = z.toJSONSchema(shape, { unrepresentable: "any", io: "input" }) as Record<string, unknown>;
  return schema;
};

const mediaTypes = { bytes: "application/octet-stream", pdf: "application/pdf", page: "text/html", text: "text/plain" } as const;
const binary = { schema: { type: "string", format: "binary" } };

const content = (shape: Shape | keyof typeof mediaTypes): Document =>
  typeof shape === "string" ? { [mediaTypes[shape]]: binary } : { "application/json": { schema: jsonSchema(shape) } };

function responses(operation: Operation): Document {
  const given = Object.entries(operation.gives).map(([status, shape]) => [
    status,
    shape === "nothing" ? { description: "done" } : { description: "done", content: content(shape) },
  ]);
  return { ...Object.fromEntries(given), default: { $ref: "#/components/responses/Refused" } };
}

function operationOf(operation: Operation): Document {
  const names = [...operation.path.matchAll(/:([a-z0-9]+)/g)].map((match) => match[1]);
  const open = operation.who.includes("nobody");
  return {
    summary: operation.says,
    operationId: `${operation.method.toLowerCase()}${operation.path.replaceAll(/[^a-z0-9]+/g, "-")}`,
    ...(open ? { security: [] } : { security: [operation.who.includes("operator") ? { operator: [] } : { session: [] }] }),
    "x-who": operation.who,
    ...(names.length > 0 ? { parameters: names.map((name) => ({ name, in: "path", required: true, schema: { type: "string" } })) } : {}),
    ...(operation.takes ? { requestBody: { required: true, content: content(operation.takes) } } : {}),
    responses: responses(operation),
  };
}

/** The OpenAPI 3.1 document of these operations. */
export function openApi(operations: readonly Operation[]): Document {
  const paths: Record<string, Record<string, Document>> = {};
  for (const operation of operations) {
    const path = operation.path.replaceAll(/:([a-z0-9]+)/g, "{$1}");
    paths[path] = { ...paths[path], [operation.method.toLowerCase()]: operationOf(operation) };
  }
  return {
    openapi: "3.1.0",
    info: { title: "Asburied", version: "1", description: "As-buried records: what was seen, measured and tried before it was covered." },
    paths,
    components: {
      securitySchemes: {
        session: { type: "apiKey", in: "cookie", name: "session" },
        operator: { type: "http", scheme: "Operator" },
      },
      responses: {
        Refused: { description: "Refused (RFC 9457)", content: { "application/problem+json": { schema: jsonSchema(problem) } } },
      },
    },
  };
}
