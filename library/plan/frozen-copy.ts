import { takeNumber } from "./numbering.ts";

/**
 * What a word was given, marked with the word's kind and the number of its call, as plain data that nobody can change any
 * more. A part also gets its terminals ("its own": those that it lists itself), which are not enumerable: they follow from the part and are no news about it.
 * Properties are read once, getters too; nearly every call holds nothing but numbers, texts, booleans and what other words
 * made, and is done then.
 */
export function frozenPlanData(
  given: object,
  kind: string,
  terminals: readonly string[] | "its own" = [],
): object {
  let data: Record<string, unknown> = { ...given, kind, id: 0 };
  // Not before: a getter may just have called another word.
  const id = takeNumber();
  data.id = id;
  for (const key in data) {
    const value = data[key];
    if (typeof value === "object" && value !== null && !made.has(value)) {
      data = copyOfPlainData(data);
      break;
    }
  }
  for (const name of terminals === "its own" ? textsIn(data.terminals) : terminals) {
    // What the builder gave stays what it is: a terminal called "name" cannot be reached as a property.
    if (Object.hasOwn(data, name)) continue;
    const terminal = Object.freeze({ kind: "terminal", part: id, of: kind, terminal: name });
    made.add(terminal);
    Object.defineProperty(data, name, { value: terminal });
  }
  made.add(data);
  return Object.freeze(data);
}

function textsIn(list: unknown): readonly string[] {
  return Array.isArray(list) ? list.filter((name) => typeof name === "string") : [];
}

/** What words made. It is frozen already, and is passed on as it is, so that a part keeps its terminals. */
const made = new WeakSet<object>();

/**
 * A deep copy of plain data, frozen but for its outermost object: what a builder does to their own object later changes
 * nothing in the plan. Nothing is judged here, so that a plan with a wrong value still runs to its end and every wrong value
 * is found at once. Functions are passed on as they are. A getter or proxy that throws does so at the builder's own call.
 */
function copyOfPlainData(value: object): Record<string, unknown> {
  const copies = new Map<object, object>();
  const copyOf = (part: unknown): unknown => {
    if (typeof part !== "object" || part === null || made.has(part)) return part;
    let copy = copies.get(part);
    if (!copy) {
      copy = Array.isArray(part) ? [] : {};
      copies.set(part, copy);
    }
    return copy;
  };
  const copyOfAll = copyOf(value) as Record<string, unknown>;
  // The walk also meets what is added on the way: no recursion, so deep or circular objects cannot overflow the stack.
  for (const [original, copy] of copies) {
    const outermost = copy === copyOfAll;
    for (const key of Object.keys(original)) {
      // Defined rather than assigned: assigning a key named `__proto__` would change the prototype instead.
      const part = copyOf((original as Record<string, unknown>)[key]);
      Object.defineProperty(copy, key, {
        value: part,
        enumerable: true,
        writable: outermost,
        configurable: outermost,
      });
    }
    if (!outermost) Object.freeze(copy);
  }
  return copyOfAll;
}
