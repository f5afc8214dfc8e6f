import type { ConductorPolarity } from "../../analysis/network/topology/network-topology.ts";
import { unknownSharesOf } from "../../analysis/network/unknown-shares.ts";
import type { SolvedScenario } from "../../analysis/network-result.ts";
import type { Judgement } from "../../judge.ts";
import { displayName } from "../../model/display-name.ts";
import type { Network, NetworkConductor, Part } from "../../model/network.ts";
import { isDevice } from "../../model/part-roles.ts";
import { descriptorOf } from "../../model/parts/index.ts";
import type { Protection, Run } from "../../model/run.ts";
import { formatExact } from "../../rules/wording/format-number.ts";
import { isOfCircuit } from "../network-summary.ts";
import { notKeptYet } from "../schedules/cells.ts";
import { conductorData, type LineCurrent, protectionInWords } from "./conductor-words.ts";
import type { DrawingOptions } from "./drawing.ts";
import { elementIds } from "./element-ids.ts";
import { readsForward, type UndirectedLine } from "./flow.ts";
import { type FindingsByPlace, findingsByPlace } from "./found-here.ts";
import { operatingWords, ratingInWords } from "./part-words.ts";
import type {
  Device,
  FoundHere,
  LineEnd,
  Polarity,
  Schematic,
  SchematicLine,
  SchematicPart,
  SchematicTerminal,
} from "./schematic.ts";

/** The complete plan: each part, and each conductor of either polarity from terminal to terminal. */
export function wiringSchematic(
  plan: Judgement,
  scenario: number | undefined,
  { numbers = () => undefined, colours = () => undefined }: WireTexts = {},
): Schematic {
  const drawing = new Drawing(plan, scenario, { numbers, colours });
  if (plan.network) drawing.addNetwork(plan.network.network);
  drawing.addLoneCircuits();
  return drawing.finished();
}

type WireTexts = Pick<DrawingOptions, "numbers" | "colours">;

class Drawing {
  readonly #plan: Judgement;
  readonly #solved: SolvedScenario | undefined;
  readonly #texts: Required<WireTexts>;
  readonly #found: FindingsByPlace;
  readonly #idOf = elementIds();
  readonly #parts: SchematicPart[] = [];
  readonly #lines: UndirectedLine[] = [];
  readonly #notices: string[] = [];

  constructor(plan: Judgement, scenario: number | undefined, texts: Required<WireTexts>) {
    this.#plan = plan;
    this.#texts = texts;
    this.#found = findingsByPlace(plan);
    if (scenario === undefined || !plan.network) return;
    const result = plan.network.result.scenarios[scenario];
    if (result?.state === "solved") this.#solved = result;
    else if (result)
      this.#notices.push("This scenario has no operating point: no currents and voltages can be shown.");
  }

  addNetwork(network: Network): void {
    const lines = network.conductors.map((conductor, index) => this.#lineOf(network, conductor, index));
    for (const part of network.parts) this.#parts.push(this.#partOf(network, part));
    for (const line of lines) this.#lines.push(line);
    this.#lines.push(...this.#mountingsIn(network));
  }

  /** Each is connected between one supply that the plan does not state and a load of its own. */
  addLoneCircuits(): void {
    const alone = this.#plan.circuits
      .map(({ circuit }) => circuit)
      .filter(({ word, inNetwork }) => word === "circuit" && !(inNetwork && this.#plan.network));
    if (this.#plan.model.networkUnread && alone.length > 0)
      this.#notices.push(
        "The network could not be read, because a value in it is invalid: only circuits that state their own load are drawn, and none of their connections.",
      );
    if (alone.length === 0) return;
    const supply = this.#parts.length;
    this.#parts.push({
      id: this.#idOf("part", "supply"),
      records: [],
      symbol: "supply",
      name: "supply, not stated",
      words: [],
      terminals: [
        { name: "positive", label: "" },
        { name: "negative", label: "" },
      ],
      found: [],
      description: "Supply, not stated in the plan: circuits that name no source begin here.",
    });
    for (const circuit of alone) this.#addLone(circuit, supply);
  }

  finished(): Schematic {
    const { model } = this.#plan;
    if (this.#parts.length === 0)
      this.#notices.push("The drawing is empty: the plan has no part and no circuit that could be read.");
    const unread = new Map(
      [...model.unjudged, ...model.withoutCircuits].map(({ record, name }) => [record, displayName(name)]),
    );
    if (unread.size > 0)
      this.#notices.push(`Not drawn, because they could not be read: ${[...unread.values()].join(", ")}.`);
    if (this.#lines.some(({ number }) => number.endsWith("*"))) this.#notices.push(notKeptYet);
    const open = this.#found.left().filter(({ accepted }) => !accepted).length;
    if (open > 0)
      this.#notices.push(
        open === 1
          ? "1 finding is about the plan as a whole, or about elements that are not drawn."
          : `${open} findings are about the plan as a whole, or about elements that are not drawn.`,
      );
    const forward = readsForward(this.#parts, this.#lines);
    return {
      parts: this.#parts,
      lines: this.#lines.map((line, index): SchematicLine => ({ ...line, forward: forward[index]! })),
      notices: this.#notices,
    };
  }

  #partOf(network: Network, part: Part): SchematicPart {
    // The circuit's conductors already show the findings of its record.
    const found = isOfCircuit(part) ? [] : this.#found.ofRecord(part.record);
    const operating =
      this.#solved && this.#plan.network ? operatingWords(this.#plan.network, part, this.#solved) : "";
    const words = [ratingInWords(part), operating].filter(Boolean);
    const name = displayName(part.name);
    return {
      id: this.#idOf("part", part.name),
      records: [part.record],
      symbol: part.kind === "load" && part.draws.as === "motor" ? "motor" : part.kind,
      name,
      words,
      terminals: terminalsOf(part),
      found,
      description: sentences(`${name}: ${[...words, ...mountedInWords(network, part)].join(", ")}`, found),
    };
  }

  /** From the terminal to the device that is mounted on it. */
  #mountingsIn({ parts, terminals }: Network): UndirectedLine[] {
    const sides = this.#plan.network?.result.topology.sides ?? [];
    return parts.flatMap((part): UndirectedLine[] => {
      if (!isDevice(part) || part.mountedOn === undefined) return [];
      const { part: host, name: terminal } = terminals[part.mountedOn]!;
      const side = sides[part.mountedOn];
      return [
        {
          ...{
            id: "",
            records: [part.record],
            name: "",
            number: "",
            data: "",
            colour: "",
            description: "",
            found: [],
          },
          ...{ ofCircuit: false, isMounting: true },
          polarity: side === "positive" || side === "negative" ? side : "unknown",
          from: { part: host, terminal, device: undefined },
          to: { part: part.index, terminal: "line", device: undefined },
        },
      ];
    });
  }

  #lineOf(network: Network, conductor: NetworkConductor, index: number): UndirectedLine {
    const { record, role, run, near, far, lengthM } = conductor;
    const side = this.#plan.network?.result.topology.conductorSides[index] ?? "none";
    const currentA = this.#currentOf(network, index);
    const [from, to] = [conductor.from, conductor.to].map((terminal) => {
      const { part, name } = network.terminals[terminal]!;
      return { part, terminal: name };
    }) as [Landing, Landing];
    const name = role === "return" ? `${conductor.name}, return` : conductor.name;
    const between = [from, to]
      .map(({ part, terminal }) => `${displayName(network.parts[part]!.name)} (${terminal})`)
      .join(" to ");
    return this.#line({
      ...{ record, role, run, lengthM, currentA, near, far, from, to, between },
      name: displayName(name),
      polarity: this.#polarityOf(network, conductor, side),
    });
  }

  #currentOf(network: Network, conductor: number): LineCurrent {
    if (!this.#solved) return undefined;
    const scenario = network.scenarios[this.#solved.scenario]!;
    const isKnown = unknownSharesOf(network).sharesCurrentBy(scenario, conductor).length === 0;
    return isKnown ? this.#solved.conductorA[conductor] : "not known";
  }

  #polarityOf(network: Network, { role, from }: NetworkConductor, side: ConductorPolarity): Polarity {
    if (role !== "cable") return role === "positive" ? "positive" : "negative";
    // Between equal poles of two batteries: their own terminals state which poles.
    if (side === "parallel-link")
      return network.terminals[from]!.side === "negative" ? "negative" : "positive";
    return polarityOf[side];
  }

  #addLone(circuit: Run, supply: number): void {
    const load = this.#parts.length;
    const { record, conductor: _, protection, protectionFarEnd } = circuit;
    const name = displayName(circuit.name);
    const common = { record, run: circuit, currentA: undefined };
    const lines = (["positive", "return"] as const).map((role) =>
      this.#line({
        ...common,
        role,
        name: role === "positive" ? name : `${name}, return`,
        polarity: role === "positive" ? "positive" : "negative",
        lengthM: role === "positive" ? circuit.positiveM : circuit.negativeM,
        near: role === "positive" ? protection : null,
        far: role === "positive" ? protectionFarEnd : null,
        from: { part: supply, terminal: role === "positive" ? "positive" : "negative" },
        to: { part: load, terminal: role === "positive" ? "positive" : "negative" },
        between: `a supply that is not stated to ${name}`,
      }),
    );
    const words = [
      circuit.loadW === undefined
        ? `load, ${formatExact(circuit.loadA)} A`
        : `load, ${formatExact(circuit.loadW)} W`,
    ];
    this.#parts.push({
      id: this.#idOf("part", circuit.name),
      records: [record],
      symbol: "load",
      name,
      words,
      terminals: poles,
      found: [],
      description: `${name}: ${words.join(", ")}.`,
    });
    this.#lines.push(...lines);
  }

  #line(given: {
    readonly record: number;
    readonly role: NetworkConductor["role"];
    readonly run: Run;
    readonly name: string;
    readonly polarity: Polarity;
    readonly lengthM: number | undefined;
    readonly currentA: LineCurrent;
    readonly near: Protection | null;
    readonly far: Protection | null;
    readonly from: Landing;
    readonly to: Landing;
    readonly between: string;
  }): UndirectedLine {
    const { record, role, run, name, polarity, near, far, from, to } = given;
    const device = (protection: Protection | null, end: "near" | "far", at: string): Device | undefined => {
      if (!protection) return undefined;
      const words = protectionInWords(protection);
      const found = this.#found.ofDevice(record, end);
      return {
        ...{ protection, found, records: [record] },
        property: end === "near" ? "protect" : "protectFarEnd",
        id: this.#idOf("protection", name, end),
        name: `${words} of ${name}`,
        description: sentences(`${words}, in ${name}, ${at}`, found),
      };
    };
    const nearDevice = device(near, "near", "at its start");
    const farDevice = device(far, "far", "at its end");
    const found = this.#found.ofConductor(record, role);
    const number = this.#texts.numbers(record, role) ?? "";
    const colour = this.#texts.colours(record, role) ?? "";
    const data = [conductorData(run, given.lengthM, given.currentA), displayName(colour)]
      .filter(Boolean)
      .join(" · ");
    const called = number === "" ? name : `${name}, number ${number}`;
    return {
      id: this.#idOf("conductor", name),
      records: [record],
      ofCircuit: role !== "cable",
      ...{ polarity, name, number, data, colour, found },
      from: { ...from, device: nearDevice },
      to: { ...to, device: farDevice },
      description: sentences(
        `${called}: ${polarityInWords[polarity]} from ${given.between}, ${data.replaceAll(" · ", ", ")}`,
        found,
      ),
    };
  }
}

type Landing = Omit<LineEnd, "device">;

/** A sentence, followed by the findings. */
export function sentences(first: string, found: readonly FoundHere[]): string {
  return [`${first}.`, ...found.map(({ severity, message }) => `${atStart(severity)}: ${message}`)].join(" ");
}

function atStart(word: string): string {
  return `${word.slice(0, 1).toUpperCase()}${word.slice(1)}`;
}

/** "mounted on house (positive)" */
function mountedInWords({ parts, terminals }: Network, part: Part): readonly string[] {
  if (!isDevice(part) || part.mountedOn === undefined) return [];
  const { part: host, name } = terminals[part.mountedOn]!;
  return [`mounted on ${displayName(parts[host]!.name)} (${name})`];
}

const polarityOf: Readonly<Record<Exclude<ConductorPolarity, "parallel-link">, Polarity>> = {
  positive: "positive",
  negative: "negative",
  "series-link": "link",
  shorted: "unknown",
  none: "unknown",
};

const polarityInWords: Readonly<Record<Polarity, string>> = {
  positive: "positive conductor",
  negative: "negative conductor",
  pair: "both conductors",
  link: "link in series",
  unknown: "conductor of unknown polarity",
};

const poles: readonly SchematicTerminal[] = [
  { name: "positive", label: "" },
  { name: "negative", label: "" },
];

function terminalsOf(part: Part): readonly SchematicTerminal[] {
  const described = descriptorOf(part).terminals;
  return Object.keys(part.terminals).map((name) => ({
    name,
    label: part.kind === "part" ? displayName(name) : (described[name]?.label ?? ""),
  }));
}
