import type { Part, PartKind } from "./network.ts";

/**
 * - `source`: gives energy; a battery also takes it.
 * - `consumer`: draws, and gives nothing to the network.
 * - `converter`: draws at one pair of poles and gives at another.
 * - `passes current on`: joins conductors, and neither gives nor draws.
 * - `metal`: the same, but it is the metal of the vehicle, hull or building, and carries return current.
 */
export type PartRole = "source" | "consumer" | "converter" | "passes current on" | "metal";

/** The traits of a kind of part in a network, independent of its figures. */
export interface PartTraits<TerminalName extends string = string> {
  readonly role: PartRole;
  /** Its source of energy for charging batteries. Null: it charges none. */
  readonly chargesWith: "engine" | "shore" | "sun" | null;
  /** The pairs of poles at which it draws or feeds. A converter draws at its first pair. */
  readonly ports: readonly PortTerminals<TerminalName>[];
  /** Which of its terminals are joined inside, by metal or a small resistance. A converter that is isolated joins none. */
  readonly joins: readonly (readonly [TerminalName, TerminalName])[] | "stated in the plan";
  /** Whether it opens the line through it. A part of which only the terminals are known may be a contactor. */
  readonly opens: "by hand" | "unknown" | "never";
  /** Whether it lies in one line and carries current only if both of its sides are joined. */
  readonly inSeries: boolean;
  /** Whether several are wired in series, each on the next, so that their voltages add up. */
  readonly formsStrings: boolean;
  /** Whether a builder reads its figures off a data sheet. */
  readonly hasDataSheet: boolean;
}

export interface PortTerminals<TerminalName extends string = string> {
  readonly does: "feeds" | "draws";
  readonly positive: TerminalName;
  readonly negative: TerminalName;
}

type TerminalOf<Kind extends PartKind> = keyof Extract<Part, { kind: Kind }>["terminals"] & string;

/** The names of terminals that a kind has in every plan; a `part` has those that the plan gives it. */
export type FixedTerminalName = { [Kind in Exclude<PartKind, "part">]: TerminalOf<Kind> }[Exclude<
  PartKind,
  "part"
>];

const feeds = [{ does: "feeds", positive: "positive", negative: "negative" }] as const;
const draws = [{ does: "draws", positive: "positive", negative: "negative" }] as const;

/** The usual traits: the kind opens no line, and a network needs only one of it. */
const usual = { opens: "never", inSeries: false, formsStrings: false } as const;
const giver = { ...usual, ports: feeds, joins: [], hasDataSheet: true } as const;
const passer = { ...usual, chargesWith: null, ports: [], hasDataSheet: false } as const;

const traits = {
  battery: { ...giver, role: "source", chargesWith: null, formsStrings: true },
  alternator: { ...giver, role: "source", chargesWith: "engine" },
  shoreCharger: { ...giver, role: "source", chargesWith: "shore" },
  solarArray: { ...giver, role: "source", chargesWith: "sun", formsStrings: true },
  solarController: {
    ...giver,
    role: "converter",
    chargesWith: "sun",
    ports: [{ does: "draws", positive: "solarPositive", negative: "solarNegative" }, ...feeds],
  },
  dcDcCharger: {
    ...giver,
    role: "converter",
    chargesWith: "engine",
    ports: [
      { does: "draws", positive: "inputPositive", negative: "inputNegative" },
      { does: "feeds", positive: "outputPositive", negative: "outputNegative" },
    ],
    joins: [["inputNegative", "outputNegative"]],
  },
  inverter: { ...giver, role: "consumer", chargesWith: null, ports: draws },
  load: { ...giver, role: "consumer", chargesWith: null, ports: draws, hasDataSheet: false },
  busBar: { ...passer, role: "passes current on", joins: [] },
  fusePanel: { ...passer, role: "passes current on", joins: [["feed", "branch"]] },
  disconnect: {
    ...passer,
    role: "passes current on",
    joins: [["line", "load"]],
    opens: "by hand",
    inSeries: true,
  },
  shunt: { ...passer, role: "passes current on", joins: [["batterySide", "systemSide"]], inSeries: true },
  chassis: { ...passer, role: "metal", joins: [["bond", "metal"]] },
  part: { ...passer, role: "passes current on", joins: "stated in the plan", opens: "unknown" },
} as const satisfies { readonly [Kind in PartKind]: PartTraits<TerminalOf<Kind>> };

/**
 * A row for each kind of part. A kind that is new does not compile until it has one; the rooms above derive their lists from
 * here, and `tests/parts` holds analysis, drawing and lists to it.
 */
export const partTraits: Readonly<Record<PartKind, PartTraits>> = traits;

type KindOf<Role extends PartRole> = {
  [Kind in PartKind]: (typeof traits)[Kind]["role"] extends Role ? Kind : never;
}[PartKind];

/** The parts that have one of these roles. */
export type PartWithRole<Role extends PartRole> = Extract<Part, { kind: KindOf<Role> }>;

export function isConsumer(part: Part): part is PartWithRole<"consumer"> {
  return partTraits[part.kind].role === "consumer";
}

/** It joins conductors, and is neither source, consumer nor converter. */
export function passesCurrentOn(part: Part): part is PartWithRole<"passes current on" | "metal"> {
  const { role } = partTraits[part.kind];
  return role === "passes current on" || role === "metal";
}

/** It gives energy to the network, of its own or from another part of it. */
export function givesEnergy({ kind }: Pick<Part, "kind">): boolean {
  const { role } = partTraits[kind];
  return role === "source" || role === "converter";
}

/** A source or converter that charges batteries. */
export function isCharging({ kind }: Pick<Part, "kind">): boolean {
  return partTraits[kind].chargesWith !== null;
}

/** The kind of part whose terminals have the state of a scenario: closed, or open. */
export function opensByHand({ kind }: Pick<Part, "kind">): boolean {
  return partTraits[kind].opens === "by hand";
}
