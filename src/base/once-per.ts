/** A value that is computed when it is first asked for. */
export function lazily<Value>(find: () => Value): () => Value {
  let known: { readonly value: Value } | null = null;
  return () => {
    known ??= { value: find() };
    return known.value;
  };
}

/** A function whose result is kept as long as the object that it is asked about. */
export function oncePer<Key extends object, Value>(find: (key: Key) => Value): (key: Key) => Value {
  const known = new WeakMap<Key, { readonly value: Value }>();
  return (key) => {
    const before = known.get(key);
    if (before) return before.value;
    const value = find(key);
    known.set(key, { value });
    return value;
  };
}

/** The same for a function that is asked about an object and a detail of it (a word, a number). */
export function oncePerBoth<Key extends object, Detail, Value>(
  find: (key: Key, detail: Detail) => Value,
): (key: Key, detail: Detail) => Value {
  const details = oncePer((_: Key) => new Map<Detail, { readonly value: Value }>());
  return (key, detail) => {
    const known = details(key);
    const before = known.get(detail);
    if (before) return before.value;
    const value = find(key, detail);
    known.set(detail, { value });
    return value;
  };
}
