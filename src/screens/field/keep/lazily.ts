/** A value that is worked out when it is first asked for, and once. */
export function lazily<Value>(work: () => Value): () => Value {
  let done: { readonly value: Value } | undefined;
  return () => {
    done ??= { value: work() };
    return done.value;
  };
}
