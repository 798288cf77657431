import { ok, refuse } from "#core/outcome/index.ts";
import { found } from "#functions/shared/found.ts";
import type { Store } from "#functions/shared/store.ts";

/** The store's port in memory, for tests that need no process; held to the same contract as the real one. */
export function memoryStore(): Store & { readonly objects: Map<string, { bytes: Uint8Array; type: string }> } {
  const objects = new Map<string, { bytes: Uint8Array; type: string }>();
  const missing = (key: string) => refuse(key.split("/")[1] === "records" ? "record-unknown" : "photo-unknown", `store/${key}`);
  return {
    objects,
    put: async (key, body, { length, type }) => {
      const bytes = new Uint8Array(await new Response(body as BodyInit).arrayBuffer());
      if (bytes.length !== length) return refuse("store-unavailable", `store/${key}`, { why: "length", status: 0 });
      objects.set(key, { bytes, type });
      return ok({ length, type });
    },
    get: async (key) => {
      const object = objects.get(key);
      if (!object) return missing(key);
      const stream = new Response(object.bytes as BodyInit).body ?? new ReadableStream({ start: (controller) => controller.close() });
      return ok(found(key, stream as ReadableStream<Uint8Array>, object.bytes.length, object.type));
    },
    head: async (key) => {
      const object = objects.get(key);
      return object ? ok({ length: object.bytes.length, type: object.type }) : missing(key);
    },
    remove: async (key) => {
      objects.delete(key);
      return ok(null);
    },
  };
}
