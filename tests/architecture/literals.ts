/** The texts of all string literals without placeholders, comments left out. */
export const literalsOf = (source: string): string[] => {
  const found: string[] = [];
  for (const [piece] of source.matchAll(/\/\/[^\n]*|\/\*[\s\S]*?\*\/|"(?:[^"\\\n]|\\.)*"|'(?:[^'\\\n]|\\.)*'|`(?:[^`\\]|\\.)*`/g)) {
    if (!piece.startsWith("/")) found.push(piece.slice(1, -1));
  }
  return found;
};
