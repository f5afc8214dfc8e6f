import { takeNumber } from "./numbering.ts";

/**
 * The input of a DSL function as frozen plain data, marked with the function's kind and the number of its call. A part also
 * gets its terminals ("its own": those that it lists itself). They are not enumerable, because they follow from the part.
 * Properties, getters included, are read once. Nearly every call holds only numbers, texts, booleans and results of other
 * functions, and needs no deep copy.
 */
export function frozenPlanData(
  given: object,
  kind: string,
  terminals: readonly string[] | "its own" = [],
): object {
  let data: Record<string, unknown> = { ...given, kind, id: 0 };
  // Only now: a getter may have called another function.
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
    // The builder's own properties are kept: a terminal called "name" cannot be reached as a property.
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

/** Results of DSL functions. They are already frozen and are passed on uncopied, which keeps a part's terminals. */
const made = new WeakSet<object>();

/**
 * A deep copy of plain data, frozen except for its outermost object: later changes to the builder's own object do not affect
 * the plan. Values are not checked here: a plan with a wrong value still runs to its end, and all wrong values are found
 * together. Functions are passed on unchanged. A getter or proxy that throws does so at the builder's own call.
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
  // The loop also visits entries added during it: without recursion, deep or circular objects cannot overflow the stack.
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
