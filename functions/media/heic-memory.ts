import { Buffer } from "node:buffer";
import type { HeicModule } from "libheif-js/wasm-bundle.js";

/** Places of what the decoder's C interface fills in, in bytes: an error (code, detail, text), a pointer, a tiling. */
const ERROR = 0;
const POINTER = 16;
const TILING = 32;
const ROOM = 160;
/** Places of `ignore_transformations` and `strict_decoding` in `struct heif_decoding_options` (libheif); tests fail when they move. */
const UNTURNED = 1;
const STRICT = 21;

export interface HeicTiling {
  readonly columns: number;
  readonly rows: number;
  readonly tileHeight: number;
  readonly height: number;
}

/** Pixels in the decoder's memory, until the next call. */
export interface HeicPlane {
  readonly width: number;
  readonly height: number;
  /** Bytes from one row to the next. */
  readonly stride: number;
  readonly data: Uint8Array;
}

/**
 * One HEIC in the decoder's memory. By its C interface, because the package's own calls decode leniently alone: a tile
 * that is cut off comes out black, without a word. What is opened must be closed, else the memory grows photo by photo.
 */
export class HeicMemory {
  readonly #heif: HeicModule;
  readonly #place: number;
  readonly #context: number;
  readonly #options: number;
  #handle = 0;

  private constructor(heif: HeicModule) {
    this.#heif = heif;
    this.#place = heif._malloc(ROOM);
    this.#context = heif._heif_context_alloc();
    this.#options = heif._heif_decoding_options_alloc();
  }

  /** Text: why it cannot be opened. */
  static open(heif: HeicModule, bytes: Uint8Array): HeicMemory | string {
    const opened = new HeicMemory(heif);
    const failed = opened.#read(bytes);
    if (failed === undefined) return opened;
    opened.close();
    return failed;
  }

  close(): void {
    if (this.#handle !== 0) this.#heif._heif_image_handle_release(this.#handle);
    this.#heif._heif_decoding_options_free(this.#options);
    this.#heif._heif_context_free(this.#context);
    this.#heif._free(this.#place);
  }

  /** Upright, by the container's own turn. */
  get size(): { readonly width: number; readonly height: number } {
    return { width: this.#heif._heif_image_handle_get_width(this.#handle), height: this.#heif._heif_image_handle_get_height(this.#handle) };
  }

  get hasAlpha(): boolean {
    return this.#heif._heif_image_handle_has_alpha_channel(this.#handle) !== 0;
  }

  /** Hands the pixels, red, green, blue and with `samples` 4 opacity, to `use`. Text: why there are none. */
  decode(samples: 3 | 4, strict: boolean, use: (plane: HeicPlane) => void): string | undefined {
    const { heif_chroma: layouts, heif_channel: channels } = this.#heif;
    const layout = samples === 4 ? layouts.heif_chroma_interleaved_RGBA.value : layouts.heif_chroma_interleaved_RGB.value;
    this.#choose(false, strict);
    this.#heif._heif_decode_image(this.#place + ERROR, this.#handle, this.#place + POINTER, this.#rgb, layout, this.#options);
    const failed = this.#failure();
    if (failed !== undefined) return failed;
    const image = this.#integer(POINTER);
    const channel = channels.heif_channel_interleaved.value;
    const data = this.#heif._heif_image_get_plane_readonly(image, channel, this.#place + POINTER);
    const [width, height] = [this.#heif._heif_image_get_width(image, channel), this.#heif._heif_image_get_height(image, channel)];
    const stride = this.#integer(POINTER);
    use({ width, height, stride, data: this.#heif.HEAPU8.subarray(data, data + stride * height) });
    this.#heif._heif_image_release(image);
    return undefined;
  }

  /** How the stored picture, before any turn, is divided. */
  tiling(): HeicTiling | undefined {
    this.#heif._heif_image_handle_get_image_tiling(this.#place + ERROR, this.#handle, 0, this.#place + TILING);
    if (this.#failure() !== undefined) return undefined;
    // struct heif_image_tiling: version, columns, rows, tile's width and height, image's width and height.
    const [columns, rows, tileHeight, height] = [4, 8, 16, 24].map((at) => this.#integer(TILING + at)) as [number, number, number, number];
    return { columns, rows, tileHeight, height };
  }

  /** Of the stored picture, as `tiling` is. */
  tileDecodes(column: number, row: number): boolean {
    const layout = this.#heif.heif_chroma.heif_chroma_interleaved_RGB.value;
    this.#choose(true, true);
    const [error, out] = [this.#place + ERROR, this.#place + POINTER];
    this.#heif._heif_image_handle_decode_image_tile(error, this.#handle, out, this.#rgb, layout, this.#options, column, row);
    if (this.#failure() !== undefined) return false;
    this.#heif._heif_image_release(this.#integer(POINTER));
    return true;
  }

  #read(bytes: Uint8Array): string | undefined {
    const file = this.#heif._malloc(bytes.length);
    this.#heif.HEAPU8.set(bytes, file);
    this.#heif._heif_context_read_from_memory(this.#place + ERROR, this.#context, file, bytes.length, 0);
    this.#heif._free(file);
    const failed = this.#failure();
    if (failed !== undefined) return failed;
    this.#heif._heif_context_get_primary_image_handle(this.#place + ERROR, this.#context, this.#place + POINTER);
    const none = this.#failure();
    if (none === undefined) this.#handle = this.#integer(POINTER);
    return none;
  }

  #choose(unturned: boolean, strict: boolean): void {
    this.#heif.HEAPU8[this.#options + UNTURNED] = unturned ? 1 : 0;
    this.#heif.HEAPU8[this.#options + STRICT] = strict ? 1 : 0;
  }

  get #rgb(): number {
    return this.#heif.heif_colorspace.heif_colorspace_RGB.value;
  }

  /** The memory is looked at anew each time: it moves when it grows. */
  #integer(at: number): number {
    return new DataView(this.#heif.HEAPU8.buffer).getUint32(this.#place + at, true);
  }

  #failure(): string | undefined {
    if (this.#integer(ERROR) === 0) return undefined;
    const from = this.#integer(ERROR + 8);
    const memory = this.#heif.HEAPU8;
    return from === 0 ? "the decoder gives no reason" : Buffer.from(memory.subarray(from, memory.indexOf(0, from))).toString("utf8");
  }
}
