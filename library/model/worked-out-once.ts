/**
 * A function that computes its result once for each object it is given, and keeps it for as long as the object is in use. For
 * results that depend on the object alone, and that several rules need.
 */
export function workedOutOnce<Key extends WeakKey, Result>(
  workOut: (key: Key) => Result,
): (key: Key) => Result {
  const known = new WeakMap<Key, { readonly result: Result }>();
  return (key) => {
    let entry = known.get(key);
    if (!entry) {
      entry = { result: workOut(key) };
      known.set(key, entry);
    }
    return entry.result;
  };
}
