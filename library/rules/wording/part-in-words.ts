import type { Network, NetworkConductor, Part, PartKind } from "../../model/network.ts";
import type { FixedTerminalName } from "../../model/part-roles.ts";
import type { At, Related } from "../finding.ts";

/**
 * How findings name the parts of a network, and their places in the plan: "the battery house", "the return of Fridge", `in
 * "everything on"`. A name that already contains its kind gets no kind before it: "the starter battery", not "the battery starter
 * battery".
 */

/** "the battery house", "the starter battery", "Fridge" for a load, whose name is enough. */
export function partInWords(part: Part): string {
  if (part.kind === "load") return part.name;
  const kind = kindInWords(part);
  return saysKind(part.name, part.kind) ? `the ${part.name}` : `the ${kind} ${part.name}`;
}

/** The trade's word for a kind of part: "bus bar", "DC-DC charger"; a motor is called one. */
export function kindInWords(part: Part): string {
  return part.kind === "load" && part.draws.as === "motor" ? "motor" : kinds[part.kind].word;
}

/** "the cable feed"; "the positive conductor of Fridge", "the return of Fridge" of a circuit. */
export function conductorInWords({ name, role }: NetworkConductor): string {
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
  if (part.kind === "part") return `the terminal ${name}`;
  const known: Readonly<Record<string, string>> = terminalNames;
  return known[name] ?? `the terminal ${name}`;
}

/** `in "everything on"`: the scenario of a computed number. */
export function scenarioInWords({ scenarios }: Network, scenario: number): string {
  return `in "${scenarios[scenario]?.name ?? ""}"`;
}

/** "a, b and c"; beyond `most` of them "a, b, c and 4 more". `count`: their total number, if `words` are only the first ones. */
export function listInWords(words: readonly string[], most = 4, count = words.length): string {
  const shown = count > most + 1 ? [...words.slice(0, most), `${count - most} more`] : words;
  const last = shown.at(-1) ?? "";
  return shown.length < 2 ? last : `${shown.slice(0, -1).join(", ")} and ${last}`;
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

/** `said`: words in a name that already show the kind. */
const kinds: Readonly<Record<PartKind, { readonly word: string; readonly said: RegExp }>> = {
  battery: { word: "battery", said: /batter(y|ies)|bank/i },
  busBar: { word: "bus bar", said: /bus/i },
  fusePanel: { word: "fuse panel", said: /panel/i },
  disconnect: { word: "disconnect", said: /disconnect|switch|isolator/i },
  shunt: { word: "shunt", said: /shunt/i },
  inverter: { word: "inverter", said: /inverter/i },
  dcDcCharger: { word: "DC-DC charger", said: /charger/i },
  alternator: { word: "alternator", said: /alternator/i },
  shoreCharger: { word: "shore charger", said: /charger/i },
  solarArray: { word: "solar array", said: /array|solar|panel/i },
  solarController: { word: "solar controller", said: /controller/i },
  chassis: { word: "chassis", said: /chassis|hull|metal|frame/i },
  load: { word: "load", said: /./ },
  part: { word: "part", said: /./ },
};

function saysKind(name: string, kind: PartKind): boolean {
  return kinds[kind].said.test(name);
}

const terminalNames: Readonly<Record<FixedTerminalName, string>> = {
  positive: "the positive terminal",
  negative: "the negative terminal",
  stud: "a stud",
  feed: "the feed",
  branch: "the branches",
  line: "the line side",
  load: "the load side",
  batterySide: "the battery side",
  systemSide: "the system side",
  inputPositive: "the input's positive terminal",
  inputNegative: "the input's negative terminal",
  outputPositive: "the output's positive terminal",
  outputNegative: "the output's negative terminal",
  solarPositive: "the solar input's positive terminal",
  solarNegative: "the solar input's negative terminal",
  bond: "the bond",
  metal: "the metal",
};
