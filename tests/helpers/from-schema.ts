import fc from "fast-check";
import * as z from "zod/mini";

/** Values of a shape on the wire, made from its own JSON Schema: what a fuzz begins with, whatever shapes come to be. */

interface Schema {
  readonly type?: string;
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
  readonly allOf?: readonly Schema[];
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: Schema | boolean;
  readonly propertyNames?: Schema;
  readonly items?: Schema;
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly minLength?: number;
  readonly maxLength?: number;
  readonly pattern?: string;
  readonly format?: string;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly exclusiveMinimum?: number;
}

/** Texts that stand for something where the value is read: ids, names, typed quantities. */
export interface Pools {
  readonly texts: readonly string[];
  /** Values of a member by its name, wherever the shape lets it be a text; said to begin with. */
  readonly named?: Readonly<Record<string, readonly unknown[]>>;
  /** Anything, where the shape says nothing. */
  readonly anything?: fc.Arbitrary<unknown>;
}

const days = fc.date({ min: new Date("1999-01-01T00:00:00Z"), max: new Date("2100-01-01T00:00:00Z"), noInvalidDate: true });

function textOf({ minLength = 0, maxLength = 60, pattern, format }: Schema, { texts }: Pools): fc.Arbitrary<unknown> {
  if (format === "date") return days.map((day) => day.toISOString().slice(0, 10));
  if (format === "email") return fc.emailAddress();
  const fits = texts.filter(
    (text) => text.length >= minLength && text.length <= maxLength && (pattern === undefined || new RegExp(pattern).test(text)),
  );
  const made =
    pattern === undefined
      ? fc.string({ minLength, maxLength: Math.min(maxLength, minLength + 30) })
      : fc.stringMatching(new RegExp(pattern));
  if (fits.length === 0) return made;
  return fc.oneof({ weight: 4, arbitrary: fc.constantFrom<unknown>(...fits) }, { weight: 1, arbitrary: made });
}

function objectOf(schema: Schema, pools: Pools): fc.Arbitrary<unknown> {
  const { properties = {}, required = [], additionalProperties, propertyNames } = schema;
  const model = Object.fromEntries(
    Object.entries(properties).map(([name, inner]) => {
      const named = pools.named?.[name];
      const made = madeOf(inner, pools);
      const arbitrary =
        named === undefined ? made : fc.oneof({ weight: 5, arbitrary: fc.constantFrom<unknown>(...named) }, { weight: 1, arbitrary: made });
      return [name, arbitrary] as const;
    }),
  );
  const known = fc.record(model, { requiredKeys: [...required].filter((name) => Object.hasOwn(model, name)) as never[] });
  if (typeof additionalProperties !== "object") return known;
  const keys = textOf(propertyNames ?? {}, pools).map(String);
  const more = fc.dictionary(keys, madeOf(additionalProperties, pools), { maxKeys: 3 });
  return fc.tuple(known, more).map(([one, other]) => ({ ...other, ...(one as object) }));
}

function madeOf(schema: Schema, pools: Pools): fc.Arbitrary<unknown> {
  if (schema.const !== undefined) return fc.constant(schema.const);
  if (schema.enum !== undefined) return fc.constantFrom(...schema.enum);
  const either = schema.anyOf ?? schema.oneOf;
  if (either !== undefined) return fc.oneof(...either.map((one) => madeOf(one, pools)));
  if (schema.allOf !== undefined) return madeOf(Object.assign({}, ...schema.allOf) as Schema, pools);
  const { type, minimum, maximum, exclusiveMinimum, items, minItems = 0, maxItems = 4 } = schema;
  if (type === "string") return textOf(schema, pools);
  if (type === "boolean") return fc.boolean();
  if (type === "null") return fc.constant(null);
  if (type === "integer") return whole(minimum, maximum);
  if (type === "number") return fc.double({ min: minimum ?? exclusiveMinimum ?? -1e9, max: maximum ?? 1e9, noNaN: true });
  if (type === "array") return fc.array(madeOf(items ?? {}, pools), { minLength: minItems, maxLength: Math.min(maxItems, minItems + 3) });
  if (type === "object") return objectOf(schema, pools);
  return pools.anything ?? fc.jsonValue({ maxDepth: 2 });
}

const whole = (min = 0, max = Number.MAX_SAFE_INTEGER): fc.Arbitrary<number> => {
  const [least, most] = [Math.max(min, Number.MIN_SAFE_INTEGER), Math.min(max, Number.MAX_SAFE_INTEGER)];
  return fc.oneof(fc.integer({ min: least, max: Math.min(most, least + 20) }), fc.integer({ min: least, max: most }));
};

/** Values of this shape, most of them taken by it; texts from the pool wherever one fits. */
export function valuesOf(shape: z.core.$ZodType, pools: Pools): fc.Arbitrary<unknown> {
  return madeOf(z.toJSONSchema(shape, { unrepresentable: "any", io: "input" }) as unknown as Schema, pools);
}
