/** The parts of the metadata reader that are used: a bare TIFF block in, its tags by number out. */
declare module "exifr/src/core.mjs" {
  type Tags = Readonly<Record<number, unknown>>;
  export class Exifr {
    constructor(options: object);
    readonly parsers: { readonly tiff?: unknown };
    read(bytes: Uint8Array): Promise<void>;
    parse(): Promise<{ ifd0?: Tags; exif?: Tags; gps?: Tags; errors?: readonly Error[] } | undefined>;
  }
}
declare module "exifr/src/file-parsers/tiff.mjs" {}
declare module "exifr/src/plugins.mjs" {
  export const segmentParsers: Map<string, unknown>;
}
declare module "exifr/src/segment-parsers/tiff-exif.mjs" {
  export class TiffExif {
    readonly chunk: { getUint32(offset: number): number };
    /** `offset` is the place of the tag's entry of 12 bytes. */
    parseTag(offset: number, tag: number, block: string): unknown;
  }
}

/** The part of the HEIC decoder that is used: its C interface, in which numbers are places in its memory; the bench uses the rest. */
declare module "libheif-js/wasm-bundle.js" {
  type Numbered<Name extends string> = Readonly<Record<Name, { readonly value: number }>>;
  export interface HeicImage {
    get_width(): number;
    get_height(): number;
    /** Calls back null for a picture that cannot be decoded. */
    display(target: { data: Uint8ClampedArray; width: number; height: number }, done: (result: object | null) => void): void;
    free(): void;
  }
  export interface HeicModule {
    readonly HeifDecoder: new () => { decoder: object | null; decode(bytes: Uint8Array): HeicImage[] };
    heif_context_free(context: object): void;

    readonly heif_colorspace: Numbered<"heif_colorspace_RGB">;
    readonly heif_chroma: Numbered<"heif_chroma_interleaved_RGB" | "heif_chroma_interleaved_RGBA">;
    readonly heif_channel: Numbered<"heif_channel_interleaved">;
    readonly HEAPU8: Uint8Array<ArrayBuffer>;
    _malloc(bytes: number): number;
    _free(place: number): void;
    _heif_context_alloc(): number;
    _heif_context_free(context: number): void;
    _heif_context_read_from_memory(error: number, context: number, file: number, length: number, options: number): void;
    _heif_context_get_primary_image_handle(error: number, context: number, out: number): void;
    _heif_image_handle_release(handle: number): void;
    _heif_image_handle_get_width(handle: number): number;
    _heif_image_handle_get_height(handle: number): number;
    _heif_image_handle_has_alpha_channel(handle: number): number;
    _heif_image_handle_get_image_tiling(error: number, handle: number, turned: number, out: number): void;
    _heif_image_handle_decode_image_tile(
      error: number,
      handle: number,
      out: number,
      space: number,
      layout: number,
      options: number,
      column: number,
      row: number,
    ): void;
    _heif_decoding_options_alloc(): number;
    _heif_decoding_options_free(options: number): void;
    _heif_decode_image(error: number, handle: number, out: number, space: number, layout: number, options: number): void;
    _heif_image_get_width(image: number, channel: number): number;
    _heif_image_get_height(image: number, channel: number): number;
    _heif_image_get_plane_readonly(image: number, channel: number, strideOut: number): number;
    _heif_image_release(image: number): void;
  }
  const libheif: HeicModule;
  export default libheif;
}
