import * as z from "zod/mini";
import { afterWork, afterWorkKinds } from "../after-work.ts";
import { decision, decisionKinds } from "../decision.ts";
import { batch, sentEntry } from "../entry.ts";
import { problem } from "../problem.ts";
import { whats } from "../whats.ts";
import type { Shape } from "./operation.ts";

export type Schema = Record<string, unknown>;

const PLACE = "#/components/schemas/";
const refTo = (name: string): Schema => ({ $ref: `${PLACE}${name}` });
const whatName = (kind: string): string => `what-${kind}`;

/** `what` has the shape of its kind: one that is not known says what it likes, so each known one says 'either another kind or this shape'. */
const byKind = (kinds: readonly string[], kindAt: (kind: Schema) => Schema, whatAt: (what: Schema) => Schema): Schema[] =>
  kinds.map((kind) => ({ anyOf: [{ not: kindAt({ const: kind }) }, whatAt(refTo(whatName(kind)))] }));
const inside = (name: string, inner: Schema): Schema => ({ type: "object", properties: { [name]: inner }, required: [name] });
const within = (name: string, inner: Schema): Schema => ({ properties: { [name]: inner } });
const typedByKind = (kinds: readonly string[]): Schema[] =>
  byKind(
    kinds,
    (kind) => inside("kind", kind),
    (what) => within("what", what),
  );

/** Shapes as JSON Schema 2020-12: those that have a name once, under it, and everywhere else by reference. */
export class Schemas {
  readonly #shapes: ReadonlyMap<string, Shape>;
  readonly #names = z.registry<{ id: string }>();
  readonly #said: ReadonlyMap<Shape, Schema>;
  /** By name: what was asked for, and what that refers to. */
  readonly named: Record<string, Schema> = {};

  /** `names`: shapes by their names; what is no shape is passed over. `codes`: those of refusals. */
  constructor(names: Readonly<Record<string, unknown>>, codes: readonly string[]) {
    const kinds = Object.entries(whats).map(([kind, shape]) => [whatName(kind), shape] as const);
    const all: Readonly<Record<string, unknown>> = { problem, sentEntry, ...names };
    const shapes = Object.entries(all).filter((entry): entry is [string, Shape] => isShape(entry[1]));
    this.#shapes = new Map([...shapes, ...kinds]);
    for (const [id, shape] of this.#shapes) this.#names.add(shape, { id });
    const entryByKind = byKind(
      Object.keys(whats),
      (kind) => inside("sealed", inside("kind", kind)),
      (what) => within("body", within("what", within("content", what))),
    );
    this.#said = new Map<Shape, Schema>([
      [problem.shape.code, codes.length > 0 ? { enum: [...codes] } : {}],
      [sentEntry, { allOf: entryByKind }],
      [decision, { allOf: typedByKind(decisionKinds) }],
      [afterWork, { allOf: typedByKind(afterWorkKinds) }],
    ]);
  }

  /** What a body must be to be taken, or is when it is answered. */
  of(shape: Shape): Schema {
    const { properties, $defs = {} } = z.toJSONSchema(z.object({ it: shape }), {
      metadata: this.#names,
      unrepresentable: "any",
      io: "input",
      override: ({ zodSchema, jsonSchema }) => {
        Object.assign(jsonSchema, this.#said.get(zodSchema));
        // Judged one by one, so that a bad entry does not take the good ones with it.
        if (zodSchema === (batch as Shape)) Object.assign(jsonSchema.properties?.entries ?? {}, { items: refTo("sentEntry") });
      },
    }) as unknown as { properties: { it: Schema }; $defs?: Record<string, Schema> };
    for (const [name, schema] of Object.entries($defs)) this.#keep(name, schema);
    return this.#placed(properties.it);
  }

  #keep(name: string, schema: Schema): void {
    if (Object.hasOwn(this.named, name)) return;
    this.named[name] = {};
    this.named[name] = this.#placed(schema);
  }

  /** References within one schema become references within the document, and what they name comes into it. */
  #placed(schema: Schema): Schema {
    const text = JSON.stringify(schema).replaceAll('"#/$defs/', `"${PLACE}`);
    for (const [, name = ""] of text.matchAll(/"#\/components\/schemas\/([^"]+)"/g)) {
      const shape = this.#shapes.get(name);
      if (shape && !Object.hasOwn(this.named, name)) this.of(shape);
    }
    return JSON.parse(text) as Schema;
  }
}

const isShape = (value: unknown): value is Shape => typeof value === "object" && value !== null && "_zod" in value;
