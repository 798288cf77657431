/**
 * Splits an SQL file into its statements, without comments. Semicolons inside quotes and inside the BEGIN ... END of a
 * trigger do not end a statement.
 */
export const statements = (sql: string): string[] => {
  const found: string[] = [];
  let held = "";
  const keep = (): void => {
    const text = held.trim();
    if (text !== "") found.push(text);
    held = "";
  };
  // a comment, a quoted text or name, a word, one other character
  for (const [piece] of sql.matchAll(/--[^\n]*|\/\*[\s\S]*?\*\/|'(?:[^']|'')*'|"(?:[^"]|"")*"|\w+|[\s\S]/g)) {
    if (piece.startsWith("--") || piece.startsWith("/*")) held += " ";
    else if (piece === ";" && !insideTrigger(held)) keep();
    else held += piece;
  }
  keep();
  return found;
};

const insideTrigger = (text: string): boolean => /^\s*create\s+(temp\s+|temporary\s+)?trigger\b/i.test(text) && !/\bend\s*$/i.test(text);
