import type { CableValues } from "./cable-properties.ts";
import type { CircuitValues } from "./circuit-properties.ts";
import { withArticle } from "./describe-value.ts";
import type { LoadOfCircuit, PartDraft } from "./draft-part.ts";
import type { NetworkTerminal } from "./network.ts";
import type { PlanRecord } from "./record.ts";
import type { Refusal } from "./run.ts";
import type { WrittenReference, WrittenTerminal } from "./terminal-property.ts";
import { polesOf, returnOf } from "./terminals.ts";

/** The contents of a plan, for resolving its terminals and references. */
export interface PartsOfPlan {
  readonly records: readonly PlanRecord[];
  /** In the order of the network. */
  readonly parts: readonly (PartDraft | LoadOfCircuit)[];
  readonly byRecord: ReadonlyMap<number, PartDraft>;
  readonly terminals: readonly NetworkTerminal[];
}

/** The ends of a run, as far as they are known, and the errors in them. */
export interface ReadEnds<Ends> {
  /** Undefined if there is an error, here or in the part where the run ends. */
  readonly ends: Ends | undefined;
  readonly invalid: readonly Refusal[];
}

export interface CableEnds {
  readonly from: number;
  readonly to: number;
}

/** The two terminals of a cable. */
export function endsOfCable(values: CableValues, plan: PartsOfPlan): ReadEnds<CableEnds> {
  const invalid: Refusal[] = [];
  const from = terminalAt(values.from, "from", plan, invalid);
  const to = terminalAt(values.to, "to", plan, invalid);
  if (from === undefined || to === undefined) return { ends: undefined, invalid };
  const wrong = from === to ? "is where the cable starts" : acrossThePoles(from, to, plan);
  if (wrong) {
    const allowed = from === to ? "another terminal" : "a terminal on the side of from";
    return { ends: undefined, invalid: [{ path: ["to"], given: undefined, wrong, allowed }] };
  }
  return { ends: { from, to }, invalid };
}

/** Only batteries in series may connect a positive terminal to a negative one. */
function acrossThePoles(from: number, to: number, { terminals, parts }: PartsOfPlan): string | undefined {
  const [one, other] = [terminals[from]!, terminals[to]!];
  if (one.side === other.side || one.side === "either" || other.side === "either") return undefined;
  const word = parts[one.part]?.word;
  if (one.part === other.part) return `is the other pole of the same ${word}`;
  if (word === "battery" && parts[other.part]?.word === "battery") return undefined;
  return `is a ${other.side} terminal, and from is a ${one.side} one: reversed polarity`;
}

export interface CircuitEnds {
  readonly from: number;
  readonly returnTo: number;
  /** The part where the circuit ends; undefined if it states its load itself. */
  readonly to: { readonly part: number; readonly positive: number; readonly negative: number } | undefined;
}

/** The start of a circuit, the end of its return, and the part that it feeds. */
export function endsOfCircuit(values: CircuitValues, plan: PartsOfPlan): ReadEnds<CircuitEnds> {
  const invalid: Refusal[] = [];
  const refuse = (property: string, wrong: string, allowed: string) => {
    invalid.push({ path: [property], given: undefined, wrong, allowed });
    return { ends: undefined, invalid };
  };
  if (values.from === undefined) {
    for (const property of ["to", "returnTo"] as const)
      if (values[property] !== undefined)
        refuse(
          property,
          "needs from beside it",
          "from: the terminal where the circuit starts, such as panel.branch",
        );
    return { ends: undefined, invalid };
  }
  const from = terminalAt(values.from, "from", plan, invalid);
  const stated = values.returnTo && terminalAt(values.returnTo, "returnTo", plan, invalid);
  const to = values.to && polesAt(values.to, plan, invalid);
  if (from === undefined) return { ends: undefined, invalid };
  if (plan.terminals[from]!.side === "negative")
    return refuse(
      "from",
      "is a negative terminal: reversed polarity",
      "the positive terminal where the circuit starts",
    );
  if (stated !== undefined && plan.terminals[stated]!.side === "positive")
    return refuse(
      "returnTo",
      "is a positive terminal: reversed polarity",
      "the negative terminal where the return ends",
    );
  const returnTo = values.returnTo ? stated : ownReturn(from, plan);
  if (returnTo === undefined && !values.returnTo) {
    const { name } = plan.parts[plan.terminals[from]!.part]!;
    const allowed = "the negative terminal where the return ends, such as negativeBus.stud";
    invalid.push({
      path: [],
      given: undefined,
      wrong: `returnTo is missing, and ${name} has no negative terminal`,
      allowed,
    });
  }
  if (returnTo === undefined || (values.to && !to)) return { ends: undefined, invalid };
  if (returnTo === from) return refuse("returnTo", "is where the circuit starts", "another terminal");
  if (to?.positive === from || to?.negative === returnTo)
    return refuse("to", "is the part where the circuit starts", "another part");
  return { ends: { from, returnTo, to }, invalid };
}

/** The terminal that a device is mounted on; none if its plan states none. */
export function mountingOf(
  draft: PartDraft,
  plan: PartsOfPlan,
): { readonly terminal: number | undefined; readonly invalid: readonly Refusal[] } {
  const invalid: Refusal[] = [];
  if (!("on" in draft.values)) return { terminal: undefined, invalid };
  const terminal = terminalAt(draft.values.on, "on", plan, invalid);
  if (terminal === undefined || plan.terminals[terminal]!.part !== draft.index) return { terminal, invalid };
  const allowed = "a terminal of another part, such as house.positive";
  const wrong = "is a terminal of the device itself";
  return { terminal: undefined, invalid: [{ path: ["on"], given: undefined, wrong, allowed }] };
}

/** The negative terminal of the positive terminal's part. */
function ownReturn(from: number, { terminals, parts }: PartsOfPlan): number | undefined {
  const { part, name } = terminals[from]!;
  const draft = parts[part];
  if (!draft || draft.word === "circuit" || lacksNegativeBus(draft)) return undefined;
  const own = returnOf(draft.word, name);
  return own === undefined ? undefined : draft.terminals?.get(own);
}

function lacksNegativeBus(draft: PartDraft): boolean {
  return draft.word === "fusePanel" && draft.values.negativeBus === false;
}

/** The poles of the part that a circuit feeds. */
function polesAt({ kind, id }: WrittenReference, plan: PartsOfPlan, invalid: Refusal[]): CircuitEnds["to"] {
  const refuse = (wrong: string) => {
    const allowed = "a part of this plan with a positive and a negative terminal";
    invalid.push({ path: ["to"], given: undefined, wrong, allowed });
    return undefined;
  };
  const draft = plan.byRecord.get(id);
  if (plan.records[id]?.word !== kind) return refuse(`is ${withArticle(kind)} that is not in this plan`);
  if (!draft) return refuse(`is ${withArticle(kind)}, not a part`);
  const poles = polesOf(draft.word);
  if (!poles) return refuse(`is ${withArticle(kind)}, which has no two poles`);
  if (lacksNegativeBus(draft)) return refuse("is a fusePanel without a negative bus");
  if (!draft.terminals) return undefined;
  const positive = draft.terminals.get(poles.positive);
  const negative = draft.terminals.get(poles.negative);
  if (positive === undefined || negative === undefined)
    return refuse(`has no terminals called ${poles.positive} and ${poles.negative}`);
  return { part: draft.index, positive, negative };
}

/** The index of a terminal; undefined if there is none, which is reported unless it follows from an error in its part. */
function terminalAt(
  written: WrittenTerminal | undefined,
  property: string,
  plan: PartsOfPlan,
  invalid: Refusal[],
): number | undefined {
  // Its shape was refused already.
  if (!written) return undefined;
  const refuse = (wrong: string, allowed: string) => {
    invalid.push({ path: [property], given: undefined, wrong, allowed });
    return undefined;
  };
  const { part, of, terminal } = written;
  const draft = plan.byRecord.get(part);
  if (!draft || draft.word !== of)
    return refuse(
      `is a terminal of ${withArticle(of)} that is not in this plan`,
      "a terminal of a part of this plan, such as house.positive",
    );
  if (!draft.terminals) return undefined;
  const found = draft.terminals.get(terminal);
  if (found === undefined)
    return refuse(`is not a terminal of ${draft.name}`, [...draft.terminals.keys()].join(", "));
  if (terminal === "negative" && lacksNegativeBus(draft))
    return refuse(`is the negative terminal of ${draft.name}, which has no negative bus`, "another terminal");
  return found;
}
