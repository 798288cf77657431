// What the bench measures from inside; the process itself is started by its entry file.

export { CardReader } from "./cards.ts";
export { decode, open } from "./decode.ts";
export { HeicDecoder } from "./heic.ts";
export { type Looked, lookAt, type Threads } from "./look.ts";
export { readMetadata } from "./metadata.ts";
export { makeRenditions } from "./pictures.ts";
