/**
 * A function of plain data (texts, numbers, yes and no), worked out once for each of the last few things that it was asked of: the
 * same value, sooner. `most`: how many are remembered; the oldest goes first. `keyOf`: a text that differs wherever what is given does,
 * for what JSON does not write.
 */
export function remembered<Given extends readonly unknown[], Value>(
  most: number,
  compute: (...given: Given) => Value,
  keyOf: (given: Given) => string = JSON.stringify,
) {
  const kept = new Map<string, Value>();
  return (...given: Given): Value => {
    const key = keyOf(given);
    const known = kept.get(key);
    const value = known ?? compute(...given);
    // asked again it is the newest
    kept.delete(key);
    kept.set(key, value);
    const [oldest] = kept.keys();
    if (kept.size > most && oldest !== undefined) kept.delete(oldest);
    return value;
  };
}
