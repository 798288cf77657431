const isNumber = (name: string): boolean => /^\d{1,6}$/.test(name);
const isLetter = (name: string): boolean => /^[A-Ya-y]$/.test(name);

/** The next name of its kind: the number after the highest, else the letter after the last, else how many there are with it. Never one that is taken. */
export function nextName(known: readonly string[]): string {
  const taken = new Set(known.map((name) => name.toUpperCase()));
  const last = known.at(-1) ?? "";
  if (!known.some(isNumber) && isLetter(last)) {
    for (let code = last.toUpperCase().charCodeAt(0) + 1; code <= 90; code += 1)
      if (!taken.has(String.fromCharCode(code))) return String.fromCharCode(code);
  }
  const numbers = known.filter(isNumber).map(Number);
  return String((numbers.length > 0 ? Math.max(...numbers) : known.length) + 1);
}
