import { formatDistinct, formatExact } from "../../rules/wording/format-number.ts";
import { listInWords } from "../../rules/wording/part-in-words.ts";
import type { Compared, Property, PropertyValue } from "./property.ts";
import type { Subject } from "./subject.ts";

/** One property that differs, in the builder's units: "length one way", "24 ft", "34 ft". */
export interface ChangedProperty {
  readonly id: string;
  readonly words: string;
  /** "not stated" on the side without one. As the plan gives it: not yet fit to be shown. */
  readonly before: string;
  readonly after: string;
}

/** The same parts in the plan before and the plan after, by index; undefined for a part that only one of them has. */
export interface SameParts {
  readonly afterOf: ReadonlyMap<number, number>;
  readonly beforeOf: ReadonlyMap<number, number>;
}

/** The differences between the two states of one subject, in the order of its properties. */
export function changedProperties(before: Subject, after: Subject, same: SameParts): ChangedProperty[] {
  const old = new Map(before.properties.map((property) => [property.id, property]));
  const now = new Map(after.properties.map((property) => [property.id, property]));
  const ids = new Set([...now.keys(), ...old.keys()]);
  return [...ids].flatMap((id): ChangedProperty[] => {
    const [one, other] = [old.get(id), now.get(id)];
    const { words } = (other ?? one) as Property;
    const texts = textsOf(one?.value, other?.value, { before, after, same });
    return texts ? [{ id, words, before: texts[0], after: texts[1] }] : [];
  });
}

interface Sides {
  readonly before: Subject;
  readonly after: Subject;
  readonly same: SameParts;
}

const notStated = "not stated";

/** Undefined if both are the same. */
function textsOf(
  one: PropertyValue | undefined,
  other: PropertyValue | undefined,
  sides: Sides,
): readonly [string, string] | undefined {
  if (one?.as === "parts" || other?.as === "parts") return partTexts(one, other, sides);
  if (!one || !other) return [one ? textOf(one) : notStated, other ? textOf(other) : notStated];
  if (one.as === "quantity" && other.as === "quantity" && one.unit === other.unit) {
    if (!differ(one.amount, other.amount)) return undefined;
    const texts = [textOf(one), textOf(other)] as const;
    if (texts[0] !== texts[1]) return texts;
    const [first, second] = formatDistinct(one.amount, other.amount);
    return [`${first} ${one.unit}`.trim(), `${second} ${one.unit}`.trim()];
  }
  if (one.as === "end" && other.as === "end") {
    const isSame =
      sides.same.afterOf.get(one.end.part) === other.end.part && one.end.terminal === other.end.terminal;
    return isSame ? undefined : [one.text, other.text];
  }
  if (one.as === "text" && other.as === "text")
    return differ(one.compare ?? one.text, other.compare ?? other.text) ? [one.text, other.text] : undefined;
  return [textOf(one), textOf(other)];
}

/** As shown on its own. */
export function textOf(value: Exclude<PropertyValue, { as: "parts" }>): string {
  return value.as === "quantity" ? `${formatExact(value.amount)} ${value.unit}`.trim() : value.text;
}

/** The parts in the list on one side only; a part that only one plan has does not count as a changed list. */
function partTexts(
  one: PropertyValue | undefined,
  other: PropertyValue | undefined,
  { before, after, same }: Sides,
): readonly [string, string] | undefined {
  const partsOf = (value: PropertyValue | undefined) => (value?.as === "parts" ? value.parts : []);
  const old = new Set(partsOf(one).flatMap((part) => same.afterOf.get(part) ?? []));
  const now = new Set(partsOf(other).filter((part) => same.beforeOf.has(part)));
  if (old.size === now.size && [...old].every((part) => now.has(part))) return undefined;
  const named = ({ network }: Subject, parts: readonly number[]) =>
    listInWords(parts.map((part) => network?.parts[part]?.name ?? "")) || "nothing";
  return [
    named(
      before,
      [...old].map((part) => same.beforeOf.get(part) ?? -1),
    ),
    named(after, [...now]),
  ];
}

/** Equal lengths given in other units, and equal sums that a plan calculates, can differ in their last digits. */
export function differ(one: Compared, other: Compared): boolean {
  if (typeof one === "number" && typeof other === "number")
    return Math.abs(one - other) > 1e-9 * Math.max(Math.abs(one), Math.abs(other));
  if (typeof one === "object" && typeof other === "object")
    return one.length !== other.length || one.some((each, at) => differ(each, other[at]!));
  return one !== other;
}
