import type { AwgSize, FuseFamily, Mm2Size } from "../../plan/sizes.ts";
import type { Termination } from "../../plan/termination.ts";
import type { Citation } from "../../standards/citation.ts";
import { oneLargestConductor } from "../largest-conductor.ts";
import { ofEveryPart } from "../part-properties.ts";
import { type Choice, type PropertyTable, propertyTable, type ValuesOf } from "../property-table.ts";
import type { Conductor, Refusal } from "../run.ts";
import type { DefaultContext, GivenValues, KeptValues, PartProperties } from "./part-property.ts";
import type { Phrase, Quantity } from "./phrase.ts";
import { largestConductor } from "./terminal-sizes.ts";

/**
 * - `source`: gives energy; a battery also takes it.
 * - `consumer`: draws, and gives nothing to the network.
 * - `converter`: draws at one port and gives at another.
 * - `passes current on`: joins conductors, and neither gives nor draws.
 * - `metal`: the same, but it is the metal of the vehicle, hull or building, and carries return current.
 */
export type PartRole = "source" | "consumer" | "converter" | "passes current on" | "metal";

/** Polarity of a terminal; for "either", the topology determines it. */
export type Side = "positive" | "negative" | "either";

export interface TerminalDescription {
  readonly side: Side;
  /** "the positive terminal" */
  readonly words: string;
  /** Beside it inside the symbol of a drawing, if its place alone does not show which one it is. */
  readonly label?: string;
}

/** A pair of terminals at which a part feeds or draws. A converter draws at its first one. */
export interface PortTerminals<Terminal extends string = string> {
  readonly does: "feeds" | "draws";
  readonly positive: Terminal;
  readonly negative: Terminal;
}

/** A connection of two terminals inside a part. */
export interface InsideConnection<Terminal extends string = string> {
  readonly between: readonly [Terminal, Terminal];
  /** 0: one piece of metal. */
  readonly ohm: number;
}

/** The state that a scenario gives a part. Topology takes a part that opens as closed, with all its inputs connected. */
export interface PartState {
  readonly closed: boolean;
  /** The inputs that a selector switch connects, by the names of their terminals; absent: all of them. */
  readonly selected?: readonly string[];
}

export const asClosed: PartState = { closed: true };

/** How conductors are fastened to a terminal, as far as the part states it. */
export interface Fastening {
  readonly termination?: Termination;
  readonly torqueNm?: number;
  /** The largest single wire that it takes. */
  readonly largest?: Conductor;
  /** The family of fuses that it takes, of the branches of a fuse panel. */
  readonly fuseFamily?: FuseFamily;
}

export function fasteningOf(
  termination: Termination | undefined,
  torqueNm: number | undefined,
  largest: Conductor | undefined,
): Fastening {
  return {
    ...(termination !== undefined && { termination }),
    ...(torqueNm !== undefined && { torqueNm }),
    ...(largest !== undefined && { largest }),
  };
}

type StatedFastening = Partial<
  Pick<ValuesOf<typeof ofEveryPart>, "termination" | "torqueNm"> & ValuesOf<typeof largestConductor>
>;

/** A figure in a list of differences that is no property of the plan, or a property in another form. */
export interface ComparedFigure {
  /** Stable, for programs. */
  readonly id: string;
  readonly words: string;
  readonly value: Quantity | Phrase;
}

/** A figure that the report lists as assumed. */
interface AssumedFigure {
  readonly words: string;
  readonly as: Phrase;
  readonly source: Citation;
}

/** The description of a kind of part. Everything that the rooms know of a kind follows from it, except its electrical law. */
interface Definition<
  Kind extends string,
  Role extends PartRole,
  Terminal extends string,
  P extends PartProperties,
  Own extends object,
> {
  /** The kind in the model, if it is not the DSL function itself: `motor` makes a load. */
  readonly kind?: Kind;
  /** The trade's word, and the words in a name that already show it: "the starter battery", not "the battery starter battery". */
  readonly called: { readonly word: string; readonly saidBy: RegExp };
  readonly role: Role;
  /** Its source of energy for charging batteries. */
  readonly chargesWith?: "engine" | "shore" | "sun";
  /** In their order in the part. `part` has those that the plan names. */
  readonly terminals: Readonly<Record<Terminal, TerminalDescription>>;
  readonly ports?: readonly PortTerminals<NoInfer<Terminal>>[];
  /** The terminals for a pair of conductors that ends at the whole part, if it has no port. */
  readonly poles?: { readonly positive: NoInfer<Terminal>; readonly negative: NoInfer<Terminal> };
  /** Whether it opens the line through it. A part of which only the terminals are known may be a contactor. */
  readonly opens?: "by hand" | "by control" | "unknown";
  /** Its positions besides the one with all connected, if it is judged in each of them whether or not a scenario names it. */
  readonly positions?: readonly PartState[];
  /** It is a fuse or breaker. */
  readonly protects?: true;
  /** The fuses or breakers of conductors that leave it are in it. */
  readonly holdsDevices?: true;
  /** It lies in a line and carries current only if two terminals that it joins are connected. */
  readonly inSeries?: true;
  /** Several are wired in series, each on the next, so that their voltages add up. */
  readonly formsStrings?: true;
  /** A builder reads its figures off a data sheet. */
  readonly hasDataSheet?: true;
  /** In the order of lists. */
  readonly properties: P;
  /** The property with the voltage below which the device does not work, or not fully. */
  readonly worksFrom?: keyof P & string;
  /** The property with the greatest voltage that the device withstands. */
  readonly worksUpTo?: keyof P & string;
  /**
   * The terminals at which conductors meet: the current through it is the sum of all currents into them, or into its other terminals, if
   * that is greater. Otherwise it is the greatest current into one of its terminals.
   */
  readonly collectsAt?: readonly NoInfer<Terminal>[];
  /** Properties that replace each other. */
  readonly choices?: readonly Choice[];
  /** Figures of the model that are calculated. */
  figures?(given: GivenValues<P>, context: FigureContext): Own;
  /**
   * Its internal connections in a state. Called with the figures of the part; and before they are made, for the nominal voltages,
   * with those that the plan states.
   */
  inside?(
    figures: Partial<KeptValues<P> & Own>,
    state: PartState,
  ): readonly InsideConnection<NoInfer<Terminal>>[];
  /** The nominal voltage that it determines at the port where it feeds, as far as the plan states it, V. */
  determinesV?(stated: ValuesOf<P>): number | undefined;
  /** Its terminals with their polarity, if they depend on values; undefined if they are unknown. */
  sides?(stated: ValuesOf<P>): readonly (readonly [string, Side])[] | undefined;
  /** How conductors are fastened to each terminal, if not to all alike. */
  fastening?(stated: ValuesOf<P> & StatedFastening): (terminal: string) => Fastening;
  /** Values that contradict each other, although each is allowed by itself. */
  contradictions?(stated: ValuesOf<P>): readonly Refusal[];
  /** Voltages that are too high for the system, whose nominal voltage is given by terminals. */
  voltagesTooHigh?(stated: ValuesOf<P>, nominalV: DefaultContext["nominalV"]): readonly Refusal[];
  /** The phrases of the short summary that no property gives. */
  summary?(part: KeptValues<P> & Own): readonly Phrase[];
  /** The phrases of the shopping lists that no property gives. */
  details?(part: KeptValues<P> & Own): readonly Phrase[];
  compared?(part: KeptValues<P> & Own): readonly ComparedFigure[];
  assumed?(part: KeptValues<P> & Own): readonly AssumedFigure[];
}

export interface FigureContext extends DefaultContext {
  /** The index of a terminal in the network. */
  at(terminal: string): number;
  /** The builder's source of the part's numbers. */
  readonly source: string | undefined;
  /** The properties for which a default was taken. */
  readonly taken: readonly string[];
  /** Index of the terminal of another part that it is mounted on. */
  readonly mountedOn: number | undefined;
}

export interface PartDescriptor<
  Word extends string,
  Kind extends string,
  Role extends PartRole,
  Terminal extends string,
  P extends PartProperties,
  Own extends object,
> extends Omit<Definition<Kind, Role, Terminal, P, Own>, "kind" | "figures" | "ports"> {
  readonly word: Word;
  readonly kind: Kind;
  readonly ports: readonly PortTerminals<Terminal>[];
  figures(given: GivenValues<P>, context: FigureContext): Own;
  readonly table: PropertyTable<P & typeof ofEveryPart & typeof largestConductor>;
}

export function definePart<
  const Word extends string,
  const Role extends PartRole,
  Terminal extends string,
  P extends PartProperties,
  Own extends object = Record<never, never>,
  const Kind extends string = Word,
>(
  word: Word,
  definition: Definition<Kind, Role, Terminal, P, Own>,
): PartDescriptor<Word, Kind, Role, Terminal, P, Own> {
  const properties = { ...definition.properties, ...largestConductor };
  const choices = [...(definition.choices ?? []), oneLargestConductor];
  const needed = Object.keys(properties).filter((name) =>
    ["required", "needed input"].includes(properties[name]!.presence),
  );
  const unknown = `is not a property of ${word}`;
  return {
    ports: [],
    figures: () => ({}) as Own,
    ...definition,
    properties,
    word,
    kind: definition.kind ?? (word as string as Kind),
    table: propertyTable({ ...properties, ...ofEveryPart }, { word, unknown, needed, choices }),
  };
}

/** The fields that every part of the model has. */
interface PartBase<Kind extends string, Terminal extends string> {
  readonly kind: Kind;
  /** Its own index in the network's parts. */
  readonly index: number;
  /** Index of the record that made it; a circuit's record for the load that the circuit states itself. */
  readonly record: number;
  readonly name: string;
  /** Terminal name to index in the network's terminals. */
  readonly terminals: Readonly<Record<Terminal, number>>;
  /** The builder's source of its numbers: "data sheet p. 3". */
  readonly source?: string;
  /** The largest conductor that its terminals take. */
  readonly largestGauge?: AwgSize;
  readonly largestMm2?: Mm2Size;
  /** In the build's currency. */
  readonly price?: number;
  readonly accept: Readonly<Record<string, string>>;
  /** The properties for which a default was taken; absent if there are none. */
  readonly taken?: readonly string[];
}

/** The part of the model that a descriptor describes. */
export type PartOf<D> =
  D extends PartDescriptor<string, infer Kind, PartRole, infer Terminal, infer P, infer Own>
    ? PartBase<Kind, Terminal> & KeptValues<P> & Own
    : never;

/** The values of a part as the plan states them. */
export type StatedValues<D extends { readonly table: PropertyTable }> =
  D["table"] extends PropertyTable<infer Shape> ? ValuesOf<Shape> : never;
