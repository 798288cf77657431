/** A sentence with its figures in place; a figure that is not there prints nothing, and leaves no gap. */
export function fill(sentence: string, figures: Readonly<Record<string, string>>): string {
  const present = sentence.replace(/\s*\{(\w+)\}/g, (place, name: string) => ((figures[name] ?? "") === "" ? "" : place));
  return present.replace(/\{(\w+)\}/g, (_, name: string) => figures[name] ?? "").trim();
}
