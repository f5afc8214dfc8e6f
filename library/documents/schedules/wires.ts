import type { ConductorPolarity } from "../../analysis/network/topology/network-topology.ts";
import type { Placement } from "../../analysis/placement/placement.ts";
import type { BenchSettings } from "../../model/bench-settings.ts";
import type { LengthUnit } from "../../model/length-unit.ts";
import type { Network, NetworkConductor, Part } from "../../model/network.ts";
import { isDevice } from "../../model/part-roles.ts";
import { descriptorOf } from "../../model/parts/index.ts";
import type { Conductor, Protection, Run } from "../../model/run.ts";
import type { DuplexCable } from "../../plan/duplex.ts";
import type { InsulationC } from "../../plan/sizes.ts";
import type { JudgedNetwork, JudgedPlan } from "../../rules/rule.ts";
import { cutLengthM } from "./cut-length.ts";
import { type Fitted, usualFittingAt } from "./fittings.ts";

/**
 * Every conductor of a plan: those of its network, and both of each lone circuit. In the order of the plan, the positive
 * conductor of a circuit before its return.
 */
export function wiresOf({ model, network, placement }: JudgedPlan): readonly Wire[] {
  const alone = network ? model.circuits.filter(({ inNetwork }) => !inNetwork) : model.circuits;
  const atBench: AtBench = { ...model.build.bench, lengthUnit: model.lengthUnit };
  const inNetwork = network ? wiresOfNetwork(network, atBench) : [];
  return [
    ...inNetwork.map(alongWays(placement)),
    ...alone.flatMap((circuit) => wiresOfLone(circuit, atBench)),
  ].sort((one, other) => one.record - other.record);
}

/** Adds the channels on its way to each wire that has one. */
function alongWays(placement: Placement | undefined): (wire: Wire) => Wire {
  if (!placement) return (wire) => wire;
  const { layout, ways } = placement;
  const leads = new Map(layout.leads.map(({ record, role, index }) => [`${record} ${role}`, ways[index]!]));
  return (wire) => {
    const way = leads.get(`${wire.record} ${wire.role}`);
    if (way?.state !== "found") return wire;
    const channels = way.stretches.flatMap(({ channel }) => layout.channels[channel ?? -1]?.name ?? []);
    return { ...wire, channels };
  };
}

/**
 * One conductor as it is cut, ended, labelled and laid: of the network, or one of the two of a lone circuit. `parallel` equal
 * wires side by side are one conductor here and as many pieces in the cut list.
 */
export interface Wire {
  /** Index of its record in the plan. */
  readonly record: number;
  readonly name: string;
  readonly role: NetworkConductor["role"];
  /** For a cable, its polarity in the network; "none" if no source is connected to it. */
  readonly side: ConductorPolarity;
  /** Index in the network's conductors; undefined for a lone circuit. */
  readonly conductor: number | undefined;
  readonly from: WireEnd;
  readonly to: WireEnd;
  /** "" if neither the builder nor its side determines it. */
  readonly colour: string;
  readonly size: Conductor;
  /** It is one of the two conductors of such a cable; the other one is of the same record. */
  readonly duplex: DuplexCable | undefined;
  /** As planned, m; undefined if it is not known. */
  readonly lengthM: number | undefined;
  /**
   * With the build's slack and the allowance at both ends, rounded up to whole 10 mm (in feet: to whole inches), m; undefined if
   * {@link lengthM} is.
   */
  readonly cutLengthM: number | undefined;
  /** The unit of the plan's lengths: all wires of a plan have the same. */
  readonly lengthUnit: LengthUnit;
  readonly insulationC: InsulationC;
  readonly insulationStated: boolean;
  /** The builder's text for its labels, beside the number. */
  readonly label: string;
  /** The names of the channels on its way, in their order from its beginning; undefined without a way. */
  readonly channels?: readonly string[];
}

export interface WireEnd {
  /**
   * `terminal`: of a part of the plan. `ownLoad`: the load that the circuit states itself. `notStated`: the start of a lone
   * circuit, which its plan does not state.
   */
  readonly at: "terminal" | "ownLoad" | "notStated";
  /** The name of a part; for the far end of a lone circuit its own name, and "" if the plan does not state it. */
  readonly part: string;
  /** "positive", "stud"; "" if there is none to name. */
  readonly terminal: string;
  readonly termination: Fitted["termination"];
  readonly usualFitting: Fitted["usualFitting"];
  readonly torqueNm: number | undefined;
  /** The device in the wire near this end. */
  readonly protection: Protection | null;
  /** Present if the part lies in one line, as a fuse holder or a relay does. */
  readonly inLine?: InLineEnd;
}

interface InLineEnd {
  /** This end is at its first terminal, which belongs towards the source. */
  readonly isSourceSide: boolean;
  /** The terminal that it is mounted on, if there is one. */
  readonly on: Pick<WireEnd, "part" | "terminal"> | undefined;
}

interface AtBench extends BenchSettings {
  readonly lengthUnit: LengthUnit;
}

function wiresOfNetwork(judged: JudgedNetwork, bench: AtBench): Wire[] {
  const { parts, conductors } = judged.network;
  const panelOf = new Map(panelByBranch(parts));
  for (const part of parts) {
    const panel = isDevice(part) ? panelOf.get(part.mountedOn ?? -1) : undefined;
    if (isDevice(part) && panel !== undefined) panelOf.set(part.terminals.load, panel);
  }
  const fromBranch = new Set(
    conductors.flatMap(({ record, from }) => (panelOf.has(from) ? [`${record} ${panelOf.get(from)}`] : [])),
  );
  return conductors.map((_, index) => wireOf(judged, index, { bench, fromBranch }));
}

/** By terminal index: the panel whose branches are there. */
export function panelByBranch(parts: readonly Part[]): ReadonlyMap<number, number> {
  return new Map(
    parts.flatMap((part) =>
      part.kind === "fusePanel" ? [[part.terminals.branch, part.index] as const] : [],
    ),
  );
}

interface Fastening {
  readonly bench: AtBench;
  /** Record and panel of every run that begins at a panel's branch, or behind a device that is mounted on one. */
  readonly fromBranch: ReadonlySet<string>;
}

function partOf({ network }: JudgedNetwork, terminal: number): number {
  return network.terminals[terminal]!.part;
}

function wireOf(judged: JudgedNetwork, index: number, { bench, fromBranch }: Fastening): Wire {
  const { network, result } = judged;
  const conductor = network.conductors[index]!;
  const { record, name, role, run, lengthM, near, far } = conductor;
  const side = result.topology.conductorSides[index] ?? "none";
  const sides = [conductor.from, conductor.to].map((terminal) => {
    const told = result.topology.sides[terminal];
    return told === "positive" || told === "negative" ? told : network.terminals[terminal]!.side;
  });
  const end = (terminal: number, protection: Protection | null): WireEnd => {
    const { part: index, name: terminalName } = network.terminals[terminal]!;
    const { termination, torqueNm } = network.terminals[fastenedAs(judged, terminal, conductor, fromBranch)]!;
    const part = network.parts[index]!;
    const own = part.kind === "load" && part.statedBy === "circuit";
    return {
      at: own ? "ownLoad" : "terminal",
      part: part.name,
      terminal: terminalName,
      termination: termination ?? (own ? run.termination : undefined),
      usualFitting: usualFittingAt(part.kind, run.conductor),
      torqueNm,
      protection,
      ...inLineEnd(network, part, terminalName),
    };
  };
  return {
    ...{ record, name, role, side, conductor: index },
    from: end(conductor.from, near),
    to: end(conductor.to, far),
    colour: colourOf(run, role, polarityOf(role, side, sides), bench),
    ...madeOf(run, lengthM, bench),
  };
}

function inLineEnd({ terminals, parts }: Network, part: Part, terminal: string): Pick<WireEnd, "inLine"> {
  const [first, ...others] = Object.keys(part.terminals);
  if (!descriptorOf(part).inSeries || others.length !== 1) return {};
  const on = isDevice(part) && part.mountedOn !== undefined ? terminals[part.mountedOn] : undefined;
  return {
    inLine: {
      isSourceSide: terminal === first,
      on: on && { part: parts[on.part]!.name, terminal: on.name },
    },
  };
}

/**
 * The terminal whose fastening holds for a conductor. At a panel's bus for the returns, the screws of the branches take the
 * returns of circuits from those branches; any other conductor there, like the return of the feeder, is fastened like the feed.
 */
function fastenedAs(
  judged: JudgedNetwork,
  terminal: number,
  { record, role }: NetworkConductor,
  fromBranch: ReadonlySet<string>,
): number {
  const part = judged.network.parts[partOf(judged, terminal)]!;
  if (part.kind !== "fusePanel" || terminal !== part.terminals.negative) return terminal;
  return role === "return" && fromBranch.has(`${record} ${part.index}`) ? terminal : part.terminals.feed;
}

function wiresOfLone(circuit: Run, bench: AtBench): Wire[] {
  const { record, name, protection, protectionFarEnd } = circuit;
  const nowhere = { at: "notStated", part: "", terminal: "" } as const;
  const unknown = { termination: undefined, usualFitting: undefined, torqueNm: undefined };
  const supply = { ...nowhere, ...unknown };
  const load = (terminal: string): WireEnd => ({
    ...{ at: "ownLoad", part: name, terminal, torqueNm: undefined, protection: null },
    termination: circuit.termination,
    usualFitting: usualFittingAt("load", circuit.conductor),
  });
  const positive: Wire = {
    ...{ record, name, role: "positive", side: "positive", conductor: undefined },
    from: { ...supply, protection },
    to: { ...load("positive"), protection: protectionFarEnd },
    colour: colourOf(circuit, "positive", "positive", bench),
    ...madeOf(circuit, circuit.positiveM, bench),
  };
  return [
    positive,
    {
      ...{ record, name, role: "return", side: "negative", conductor: undefined },
      from: load("negative"),
      to: { ...supply, protection: null },
      colour: colourOf(circuit, "return", "negative", bench),
      ...madeOf(circuit, circuit.negativeM, bench),
    },
  ];
}

function madeOf(run: Run, lengthM: number | undefined, bench: AtBench) {
  const { conductor: size, duplex, insulationC, insulationStated, label, name } = run;
  const cutM =
    lengthM === undefined ? undefined : cutLengthM(lengthM, bench.lengthUnit, bench, run.lengthsFrom);
  return {
    ...{ size, duplex, lengthM, cutLengthM: cutM },
    lengthUnit: bench.lengthUnit,
    ...{ insulationC, insulationStated, label: label ?? name },
  };
}

/** A link between the batteries of a string is live against both poles, and counts as positive. */
function polarityOf(
  role: Wire["role"],
  side: ConductorPolarity,
  sides: readonly string[],
): "positive" | "negative" | undefined {
  if (role !== "cable") return role === "return" ? "negative" : "positive";
  if (side === "positive" || side === "series-link") return "positive";
  if (side === "negative") return "negative";
  const told = sides.filter((one) => one === "positive" || one === "negative");
  return told.length > 0 && told.every((one) => one === told[0]) ? told[0] : undefined;
}

function colourOf(
  { colour, returnColour }: Run,
  role: Wire["role"],
  polarity: "positive" | "negative" | undefined,
  { positiveColour, negativeColour }: AtBench,
): string {
  const stated = role === "return" ? returnColour : colour;
  if (stated) return stated;
  if (polarity === undefined) return "";
  return polarity === "positive" ? positiveColour : negativeColour;
}
