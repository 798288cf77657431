import encodeQR from "qr";

/** Light cells around it, as the standard asks. */
const QUIET = 4;

/** One path over all dark cells, each a unit square. */
const dark = (rows: readonly (readonly boolean[])[]): string =>
  rows.flatMap((row, y) => row.flatMap((cell, x) => (cell ? [`M${x} ${y}h1v1h-1z`] : []))).join("");

/** A text as a square of black and white (QR code, ISO/IEC 18004), for another device's camera. */
export function SquarePicture({ text, title }: { readonly text: string; readonly title: string }) {
  const rows = encodeQR(text, "raw", { ecc: "medium", border: QUIET });
  return (
    <svg class="square-picture" viewBox={`0 0 ${rows.length} ${rows.length}`} role="img" aria-label={title} data-holds={text}>
      <path d={dark(rows)} />
    </svg>
  );
}
