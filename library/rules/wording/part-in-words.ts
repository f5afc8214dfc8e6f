import type { WorstOf } from "../../analysis/network-result.ts";
import { isOnInNone } from "../../analysis/single-draw.ts";
import type { Network, NetworkConductor, Part } from "../../model/network.ts";
import { type AnyPartDescriptor, descriptorOf, descriptorOfWord } from "../../model/parts/index.ts";
import type { Phrase, Quantity } from "../../model/parts/phrase.ts";
import type { At, Related } from "../finding.ts";
import { formatExact, formatRounded } from "./format-number.ts";

/**
 * How findings name the parts of a network, and their places in the plan: "the battery house", "the return of Fridge", `in
 * "everything on"`. A name that already contains its kind gets no kind before it: "the starter battery", not "the battery starter
 * battery".
 */

/** "the battery house", "the starter battery", "Fridge" for a load, whose name is enough. */
export function partInWords(part: Part): string {
  if (part.kind === "load") return part.name;
  const kind = kindInWords(part);
  return calledOf(part).saidBy.test(part.name) ? `the ${part.name}` : `the ${kind} ${part.name}`;
}

/** The trade's word for a kind of part: "bus bar", "DC-DC charger"; a motor is called one, and so is a starter motor. */
export function kindInWords(part: Part): string {
  return calledOf(part).word;
}

function calledOf(part: Part): AnyPartDescriptor["called"] {
  if (part.kind !== "load") return descriptorOf(part).called;
  return descriptorOfWord(part.statedBy === "circuit" ? "load" : part.statedBy).called;
}

/** The figures by which a builder knows a part, as the plan states them: ["AGM", "12 V", "110 Ah"]. */
export function summaryInWords(part: Part): string[] {
  return [
    ...shownProperties(part, ["summary"]),
    ...(descriptorOf(part).summary?.(part) ?? []).map(phraseInWords),
  ];
}

/** The details needed to buy a part: {@link summaryInWords}, and more. */
export function detailsInWords(part: Part): string[] {
  const { properties, summary, details } = descriptorOf(part);
  const unrated = properties.ratedA && !("ratedA" in part) ? ["rating not stated"] : [];
  return [
    ...(summary?.(part) ?? []).map(phraseInWords),
    ...unrated,
    ...shownProperties(part, ["summary", "details"]),
    ...(details?.(part) ?? []).map(phraseInWords),
  ];
}

function shownProperties(part: Part, places: readonly ("summary" | "details")[]): string[] {
  const values = part as unknown as Readonly<Record<string, unknown>>;
  return Object.entries(descriptorOf(part).properties).flatMap(([name, property]) => {
    const place = places.find((one) => property[one] !== undefined);
    const value = values[name];
    if (!place || value === undefined || value === false) return [];
    const behind = property[place];
    const amount =
      typeof value === "number"
        ? [quantityInWords({ value, unit: property.unit ?? "" })]
        : typeof value === "string"
          ? [value]
          : [];
    return [[...amount, ...(typeof behind === "string" ? [behind] : [])].join(" ")];
  });
}

/** Text with its quantities formatted. */
export function phraseInWords(phrase: Phrase): string {
  return phrase.map((piece) => (typeof piece === "string" ? piece : quantityInWords(piece))).join("");
}

function quantityInWords({ value, unit, rounded }: Quantity): string {
  return `${rounded ? formatRounded(value) : formatExact(value)} ${unit}`.trimEnd();
}

/** "the cable feed"; "the positive conductor of Fridge", "the return of Fridge" of a circuit. */
export function conductorInWords({ name, role }: Pick<NetworkConductor, "name" | "role">): string {
  if (role === "cable") return /\bcable\b/i.test(name) ? `the ${name}` : `the cable ${name}`;
  return role === "positive" ? `the positive conductor of ${name}` : `the return of ${name}`;
}

/** "the positive terminal of the battery house", "the bus bar main" whose studs are all one node. */
export function terminalInWords({ terminals, parts }: Network, terminal: number): string {
  const { part: index, name } = terminals[terminal] as Network["terminals"][number];
  const part = parts[index] as Part;
  if (part.kind === "busBar") return partInWords(part);
  return `${terminalNameInWords(part, name)} of ${partInWords(part)}`;
}

/** One terminal without its part: "the positive terminal", "the feed", "the solar input's negative terminal". */
export function terminalNameInWords(part: Part, name: string): string {
  const { terminals } = descriptorOf(part);
  return Object.hasOwn(terminals, name) ? terminals[name]!.words : `the terminal ${name}`;
}

/** `in "everything on"`: the scenario of a computed number. */
export function scenarioInWords({ scenarios }: Network, scenario: number): string {
  return `in "${scenarios[scenario]?.name ?? ""}"`;
}

/** `in "everything on"`, `with windlass alone (on in no scenario)`: the occasion of a greatest current. */
export function occasionInWords(network: Network, { scenario, alone }: WorstOf): string {
  if (alone === undefined) return scenarioInWords(network, scenario);
  const part = network.parts[alone] as Part;
  return `with ${partInWords(part)} alone${isOnInNone(network, part) ? " (on in no scenario)" : ""}`;
}

/** The same for a column of occasions: `everything on`, `windlass alone`. */
export function occasionName({ scenarios, parts }: Network, { scenario, alone }: WorstOf): string {
  return alone === undefined ? (scenarios[scenario]?.name ?? "") : `${parts[alone]?.name ?? ""} alone`;
}

/** "a, b and c"; beyond `most` of them "a, b, c and 4 more". `count`: their total number, if `words` are only the first ones. */
export function listInWords(words: readonly string[], most = 4, count = words.length): string {
  const shown = count > most + 1 ? [...words.slice(0, most), `${count - most} more`] : words;
  const last = shown.at(-1) ?? "";
  return shown.length < 2 ? last : `${shown.slice(0, -1).join(separatorOf(shown))} and ${last}`;
}

/** A list of names that hold commas themselves needs semicolons. */
export function separatorOf(words: readonly string[]): "; " | ", " {
  return words.some((name) => name.includes(",")) ? "; " : ", ";
}

/** The place of a property of a part; without a path, of the whole part. */
export function atPart(part: Part, ...path: string[]): At {
  return { record: part.record, path };
}

/** The place of a property of the cable or circuit that a conductor comes from. */
export function atConductor(conductor: NetworkConductor, ...path: string[]): At {
  return { record: conductor.record, path };
}

/** The place of the terminal's name at one end of the conductor: `from` or `to` of a cable, `from` or `returnTo` of a circuit. */
export function atEnd(conductor: NetworkConductor, end: "from" | "to"): At {
  if (conductor.role === "cable") return atConductor(conductor, end);
  if (conductor.role === "return")
    return end === "to" ? atConductor(conductor, "returnTo") : atConductor(conductor);
  return end === "from" ? atConductor(conductor, "from") : atConductor(conductor);
}

export function relatedPart(part: Part, text: string = partInWords(part)): Related {
  return { at: atPart(part), text: atStart(text) };
}

export function relatedConductor(
  conductor: NetworkConductor,
  text: string = conductorInWords(conductor),
): Related {
  return { at: atConductor(conductor), text: atStart(text) };
}

/** At the start of a sentence: "The battery house". A name keeps its own letters: "fridge" stays as in the plan. */
export function atStart(words: string): string {
  return words.replace(/^the /, "The ");
}
