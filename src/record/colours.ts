/** Least contrast of words against what is under them: WCAG 2.2, success criterion 1.4.3 (AA). */
export const WORDS_CONTRAST = 4.5;
/** Least contrast of lines and marks: WCAG 2.2, success criterion 1.4.11 (AA). */
export const LINES_CONTRAST = 3;

/** WCAG 2.2, relative luminance of `#rrggbb`: 0 black, 1 white. */
function luminance(colour: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
    const part = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** WCAG 2.2, contrast ratio of `#rrggbb` against white: 1 white itself, 21 black. */
export const contrastOnWhite = (colour: string): number => 1.05 / (luminance(colour) + 0.05);

/** The company's colours as far as they print: words that could not be read stay in ink. */
export const coloursPrinted = ({ lines, words }: { readonly lines: string; readonly words: string }) => ({
  lines,
  ...(contrastOnWhite(words) >= WORDS_CONTRAST && { words }),
});
