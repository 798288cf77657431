/**
 * A function of something that never changes (a job's state, a sheet) and a key, worked out once for each: the same value,
 * sooner. What is kept goes when its owner goes.
 */
export function oncePer<Owner extends object, Key, Value>(compute: (owner: Owner, key: Key) => Value): (owner: Owner, key: Key) => Value {
  const kept = new WeakMap<Owner, Map<Key, Value>>();
  return (owner, key) => {
    let own = kept.get(owner);
    if (own === undefined) {
      own = new Map();
      kept.set(owner, own);
    }
    const known = own.get(key);
    if (known !== undefined || own.has(key)) return known as Value;
    const value = compute(owner, key);
    own.set(key, value);
    return value;
  };
}
