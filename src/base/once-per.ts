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
