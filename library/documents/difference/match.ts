import { changedProperties, type SameParts } from "./changed-properties.ts";
import type { PropertyValue } from "./property.ts";
import type { Subject } from "./subject.ts";

/** The subjects that both plans have, and those removed and added. */
export interface Matching {
  readonly pairs: readonly Pair[];
  readonly removed: readonly Subject[];
  readonly added: readonly Subject[];
  readonly same: SameParts;
}

export interface Pair {
  readonly before: Subject;
  readonly after: Subject;
}

/**
 * Finds each subject of the plan before in the plan after: by kind and name; in a family of one name, equal ones first, then in
 * their order. Renamed subjects then match by the rest: parts that are the same except for their name or are connected to the
 * same conductors, conductors between the same ends, circuits that kept most of their properties.
 */
export function matchSubjects(before: readonly Subject[], after: readonly Subject[]): Matching {
  const open = { before: new Set(before), after: new Set(after) };
  const pairs: Pair[] = [];
  const take = (found: readonly Pair[]) => {
    for (const pair of found) {
      open.before.delete(pair.before);
      open.after.delete(pair.after);
      pairs.push(pair);
    }
  };
  const kinds = new Set(before.map(({ kind }) => kind));
  for (const kind of kinds) {
    const [old, now] = [ofKind(open.before, kind), ofKind(open.after, kind)];
    const names = kind === "build" ? [undefined] : new Set(old.map(({ name }) => name));
    for (const name of names) take(family(named(old, name), named(now, name)));
  }
  // Parts first: conductors are recognised by the parts that they are connected to.
  for (const only of [isPart, (one: Subject) => !isPart(one)])
    for (const kind of kinds) {
      const [old, now] = [ofKind(open.before, kind).filter(only), ofKind(open.after, kind).filter(only)];
      const equal = equalOnes(old, now);
      take(equal);
      const [one, other] = [old, now].map(without(equal));
      take(renamed(one!, other!, pairs));
    }
  const order = new Map(after.map((subject, index) => [subject, index]));
  return {
    pairs: pairs.sort((one, other) => order.get(one.after)! - order.get(other.after)!),
    removed: [...open.before],
    added: [...open.after],
    same: sameParts(pairs),
  };
}

export function isPart({ kind }: Subject): boolean {
  return kind !== "build" && kind !== "circuit" && kind !== "cable" && !isOccasion({ kind });
}

/** Recognised by its name, or by being the same in everything else. */
function isOccasion({ kind }: Pick<Subject, "kind">): boolean {
  return ["scenario", "period", "surface", "channel", "compartment"].includes(kind);
}

function ofKind(subjects: ReadonlySet<Subject>, kind: Subject["kind"]): Subject[] {
  return [...subjects].filter((subject) => subject.kind === kind);
}

function named(subjects: readonly Subject[], name: string | undefined): readonly Subject[] {
  return name === undefined ? subjects : subjects.filter((subject) => subject.name === name);
}

/** Several of one name: equal ones belong together, at any position; the others match in their order. */
function family(before: readonly Subject[], after: readonly Subject[]): Pair[] {
  if (before.length === 1 && after.length === 1) return [{ before: before[0]!, after: after[0]! }];
  const pairs = equalOnes(before, after);
  const [restBefore, restAfter] = [before, after].map(without(pairs));
  for (const [index, subject] of restBefore!.entries()) {
    const other = restAfter![index];
    if (other) pairs.push({ before: subject, after: other });
  }
  return pairs;
}

/**
 * Those equal in everything except, perhaps, the name, in their order. Match equal accept lists first: two identical subjects
 * that changed places then do not look like a change of acceptance.
 */
function equalOnes(before: readonly Subject[], after: readonly Subject[]): Pair[] {
  const alike = samePrints(before, after, (one) => fingerprint(one) + acceptedOf(one));
  const left = without(alike);
  return [...alike, ...samePrints(left(before), left(after), fingerprint)];
}

function without(pairs: readonly Pair[]): (subjects: readonly Subject[]) => Subject[] {
  const taken = new Set(pairs.flatMap(({ before, after }) => [before, after]));
  return (subjects) => subjects.filter((subject) => !taken.has(subject));
}

function samePrints(
  before: readonly Subject[],
  after: readonly Subject[],
  print: (subject: Subject) => string,
): Pair[] {
  const free = new Map<string, Subject[]>();
  for (const subject of after) {
    const its = print(subject);
    free.set(its, [...(free.get(its) ?? []), subject]);
  }
  return before.flatMap((subject) => {
    const equal = free.get(print(subject))?.shift();
    return equal ? [{ before: subject, after: equal }] : [];
  });
}

/** Everything except the name, as text. Includes the names of the parts that it is connected to. */
function fingerprint({ properties, network }: Subject): string {
  return JSON.stringify(properties.map(({ id, value }) => [id, printOf(value, network)]));
}

function acceptedOf({ accept }: Subject): string {
  return JSON.stringify(Object.entries(accept).sort());
}

function printOf(value: PropertyValue, network: Subject["network"]): unknown {
  switch (value.as) {
    case "parts":
      return value.parts.map((part) => network?.parts[part]?.name);
    case "end":
      return [network?.parts[value.end.part]?.name, value.end.terminal];
    case "text":
      return value.compare ?? value.text;
    case "quantity":
      return [value.amount, value.unit];
  }
}

/** Unmatched subjects of one kind: the pairs alike enough to be one thing with another name, most alike first. */
function renamed(before: readonly Subject[], after: readonly Subject[], known: readonly Pair[]): Pair[] {
  if (before.length === 0 || after.length === 0) return [];
  const same = sameParts(known);
  const neighbours = neighboursOf(known);
  const candidates = before.flatMap((one, row) =>
    after.flatMap((other, column) => {
      const likeness = likenessOf(one, other, same, neighbours);
      return likeness === undefined ? [] : [{ before: one, after: other, likeness, row, column }];
    }),
  );
  // For equal likeness, the order in the plan decides: the answer is always the same.
  candidates.sort((a, b) => b.likeness - a.likeness || a.row - b.row || a.column - b.column);
  const taken = new Set<Subject>();
  return candidates.flatMap((candidate) => {
    if (taken.has(candidate.before) || taken.has(candidate.after)) return [];
    taken.add(candidate.before).add(candidate.after);
    return [{ before: candidate.before, after: candidate.after }];
  });
}

/** 0 to 1, the share of equal properties; undefined if no reader would take one for the other. */
function likenessOf(
  one: Subject,
  other: Subject,
  same: SameParts,
  neighbours: (part: Subject) => ReadonlySet<string>,
): number | undefined {
  // Runs for every two unmatched subjects: the quick checks come first.
  if (!isPart(one) && !isOccasion(one) && !endsAtSamePart(one, other, same) && !tellingAlike(one, other))
    return undefined;
  const changed = changedProperties(one, other, same).length;
  if (changed === 0) return 1;
  if (isOccasion(one)) return undefined;
  const touches = neighbours(one);
  if (isPart(one) && ![...neighbours(other)].some((conductor) => touches.has(conductor))) return undefined;
  const ids = new Set([...one.properties, ...other.properties].map(({ id }) => id));
  return 1 - changed / ids.size;
}

/** Both of its ends are parts of the plan, and they are the same ones. */
function endsAtSamePart(one: Subject, other: Subject, same: SameParts): boolean {
  return (
    one.properties.some(({ id }) => id === "to") &&
    one.ends.length === other.ends.length &&
    one.ends.every(({ part, terminal }, index) => {
      const there = other.ends[index];
      return same.afterOf.get(part) === there?.part && terminal === there?.terminal;
    })
  );
}

/** The properties by which a builder would recognise a circuit. */
const telling = ["load", "loadW", "length", "size", "protection"];

/**
 * At least three of load, length, size and protection are equal, and all except one: two circuits to lamps of one kind are often
 * alike in two of them.
 */
function tellingAlike(one: Subject, other: Subject): boolean {
  const [first, second] = [tellingOf(one), tellingOf(other)];
  const told = new Set([...first.keys(), ...second.keys()]);
  const kept = [...told].filter((id) => first.get(id) === second.get(id)).length;
  return kept >= 3 && kept >= told.size - 1;
}

function tellingOf({ properties, network }: Subject): ReadonlyMap<string, string> {
  return new Map(
    properties.flatMap(({ id, value }) =>
      telling.includes(id) ? [[id, JSON.stringify(printOf(value, network))] as const] : [],
    ),
  );
}

/** By part: the ends of conductors that both plans have and that are connected to it. */
function neighboursOf(known: readonly Pair[]): (part: Subject) => ReadonlySet<string> {
  const touching = new Map<Subject["network"], Map<number, Set<string>>>();
  for (const [index, pair] of known.entries())
    for (const { network, ends } of [pair.before, pair.after]) {
      const ofNetwork = touching.get(network) ?? new Map<number, Set<string>>();
      touching.set(network, ofNetwork);
      for (const [end, { part, terminal }] of ends.entries())
        ofNetwork.set(part, (ofNetwork.get(part) ?? new Set()).add(`${index}/${end}/${terminal}`));
    }
  return ({ network, part }) => touching.get(network)?.get(part ?? -1) ?? new Set();
}

function sameParts(pairs: readonly Pair[]): SameParts {
  const both = pairs.flatMap(({ before, after }): [number, number][] =>
    before.part === undefined || after.part === undefined ? [] : [[before.part, after.part]],
  );
  return {
    afterOf: new Map(both),
    beforeOf: new Map(both.map(([before, after]) => [after, before])),
  };
}
