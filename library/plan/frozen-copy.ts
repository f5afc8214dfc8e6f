/**
 * What a word was given, marked with the word's kind, as plain data that nobody can change any more.
 * Properties are read once, getters too; nearly every circuit holds nothing but numbers, texts and booleans, and is done then.
 */
export function frozenPlanData(given: object, kind: string): object {
  const data: Record<string, unknown> = { ...given, kind };
  for (const key in data) {
    const value = data[key];
    if (typeof value === "object" && value !== null) return frozenCopy(data);
  }
  return Object.freeze(data);
}

/**
 * A deep copy of plain data, deeply frozen: what a builder does to their own object later changes nothing in the plan.
 * Nothing is judged here, so that a plan with a wrong value still runs to its end and every wrong value is found at once.
 * Functions are passed on as they are. A getter or proxy that throws does so at the builder's own call.
 */
function frozenCopy(value: object): object {
  const copies = new Map<object, object>();
  const copyOf = (part: unknown): unknown => {
    if (typeof part !== "object" || part === null) return part;
    let copy = copies.get(part);
    if (!copy) {
      copy = Array.isArray(part) ? [] : {};
      copies.set(part, copy);
    }
    return copy;
  };
  const copyOfAll = copyOf(value) as object;
  // The walk also meets what is added on the way: no recursion, so deep or circular objects cannot overflow the stack.
  for (const [original, copy] of copies) {
    for (const key of Object.keys(original)) {
      // Defined rather than assigned: assigning a key named `__proto__` would change the prototype instead.
      const part = copyOf((original as Record<string, unknown>)[key]);
      Object.defineProperty(copy, key, { value: part, enumerable: true });
    }
    Object.freeze(copy);
  }
  return copyOfAll;
}
