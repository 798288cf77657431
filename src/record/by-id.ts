/** Things by their id; of two with the same the first, as whoever looks them up in their list finds it. */
export function byId<T extends { readonly id: string }>(list: readonly T[] = []): ReadonlyMap<string, T> {
  const known = new Map<string, T>();
  for (const one of list) if (!known.has(one.id)) known.set(one.id, one);
  return known;
}
