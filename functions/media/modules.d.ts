declare module "exifr/dist/lite.esm.mjs" {
  export * from "exifr";
  export { default } from "exifr";
}

/** The part of the HEIC decoder that is used. `display` calls back null for a picture that it cannot decode. */
declare module "libheif-js/wasm-bundle.js" {
  export interface HeicImage {
    get_width(): number;
    get_height(): number;
    is_primary(): boolean;
    display(target: { data: Uint8ClampedArray; width: number; height: number }, done: (result: object | null) => void): void;
    free(): void;
  }
  export class HeifDecoder {
    decoder: number;
    decode(bytes: Uint8Array): HeicImage[];
  }
  const libheif: { HeifDecoder: typeof HeifDecoder; heif_context_free(context: number): void };
  export default libheif;
}
