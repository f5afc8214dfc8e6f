/** True for equal plain data, with its properties in the same order. */
export function isSamePlainData(one: unknown, other: unknown): boolean {
  if (Object.is(one, other)) return true;
  if (typeof one !== "object" || typeof other !== "object" || one === null || other === null) return false;
  if (Array.isArray(one) !== Array.isArray(other)) return false;
  const keys = Object.keys(one);
  const others = Object.keys(other);
  if (keys.length !== others.length) return false;
  for (let at = 0; at < keys.length; at++) {
    const key = keys[at]!;
    if (key !== others[at]) return false;
    if (!isSamePlainData((one as Plain)[key], (other as Plain)[key])) return false;
  }
  return true;
}

type Plain = Readonly<Record<string, unknown>>;

/**
 * Keeps the object that was made last for a key: one with equal data is that same object. Results for it are then taken over, and need
 * no comparison.
 */
export function keptIfEqual<Key extends WeakKey, Made>(): (key: Key, made: Made) => Made {
  const last = new WeakMap<Key, Made>();
  return (key, made) => {
    const before = last.get(key);
    if (before !== undefined && isSamePlainData(before, made)) return before;
    last.set(key, made);
    return made;
  };
}
