import type { Judgement } from "../../judge.ts";
import type { FusePanelPart } from "../../model/network.ts";
import type { Protection } from "../../model/run.ts";
import { formatExact, formatRounded } from "../../rules/wording/format-number.ts";
import { endInWords } from "./cells.ts";
import type { NumberedWire } from "./wire-numbers.ts";
import type { WireEnd } from "./wires.ts";

/** The positions of the plan's fuse panels, and every protective device outside them. In the order of the plan. */
export function devicesOf(plan: Judgement, wires: readonly NumberedWire[]): Devices {
  const panels = (plan.network?.network.parts ?? []).filter((part) => part.kind === "fusePanel");
  const leaving = new Map(panels.map((panel): [number, Placed[]] => [panel.index, []]));
  const elsewhere: Device[] = [];
  for (const numbered of wires) {
    for (const end of ["from", "to"] as const) {
      const { protection } = numbered.wire[end];
      const panel = panelBehind(plan, numbered, end);
      if (panel !== undefined) leaving.get(panel)?.push({ numbered, protection });
      else if (protection) elsewhere.push({ numbered, protection, end: numbered.wire[end] });
    }
  }
  return {
    panels: panels.map((panel) => ({ panel, positions: positionsOf(panel, leaving.get(panel.index) ?? []) })),
    elsewhere,
  };
}

export interface Devices {
  readonly panels: readonly { readonly panel: FusePanelPart; readonly positions: readonly Position[] }[];
  readonly elsewhere: readonly Device[];
}

/** One position of a panel; free if no wire leaves from it. */
export interface Position {
  /** From 1. Exceeds the panel's number of positions if more wires leave from it than it has. */
  readonly position: number;
  readonly taken: Placed | undefined;
}

export interface Placed {
  readonly numbered: NumberedWire;
  /** null: the wire that leaves here has no device of its own. */
  readonly protection: Protection | null;
}

export interface Device {
  readonly numbered: NumberedWire;
  readonly protection: Protection;
  /** Its end of the wire. */
  readonly end: WireEnd;
}

/** "near house bank · positive, 6 in from it" */
export function placeInWords({ end, protection }: Device): string {
  const { distanceIn, distanceMm } = protection.distanceGiven ?? {};
  const far =
    distanceIn === undefined
      ? distanceMm !== undefined && `${formatExact(distanceMm)} mm`
      : `${formatExact(distanceIn)} in`;
  const what = end.at === "notStated" ? "the supply" : endInWords(end);
  return `near ${what}${far ? `, ${far} from it` : ""}`;
}

/**
 * The maximum current that the wire of a device carries for longer than a moment, with the scenario; for a circuit that was
 * judged alone, the load that it states. Undefined if no current could be calculated.
 */
export function loadOf(
  plan: Judgement,
  { wire }: NumberedWire,
): { readonly currentA: number; readonly when: string } | undefined {
  if (wire.conductor !== undefined) {
    const worst = plan.network?.result.conductors[wire.conductor]?.worst;
    const scenario = worst && plan.network?.network.scenarios[worst.scenario]?.name;
    return worst && { currentA: Math.abs(worst.currentA), when: scenario ?? "" };
  }
  const circuit = plan.model.circuits.find(({ record }) => record === wire.record);
  return circuit && { currentA: circuit.loadA, when: "as the circuit states" };
}

/** Requirements for a device beside its rating and family: "interrupts 20,000 A, 58 V". */
export function demandsInWords({ interruptingA, ratedV }: Protection): string {
  return [
    interruptingA === undefined ? "" : `interrupts ${formatExact(interruptingA)} A`,
    ratedV === undefined ? "" : `${formatRounded(ratedV)} V`,
  ]
    .filter(Boolean)
    .join(", ");
}

function panelBehind(plan: Judgement, { wire }: NumberedWire, end: "from" | "to"): number | undefined {
  const network = plan.network?.network;
  const conductor = wire.conductor === undefined ? undefined : network?.conductors[wire.conductor];
  const terminal = conductor && network?.terminals[conductor[end]];
  if (terminal?.name !== "branch") return undefined;
  return network?.parts[terminal.part]?.kind === "fusePanel" ? terminal.part : undefined;
}

function positionsOf({ positions }: FusePanelPart, leaving: readonly Placed[]): Position[] {
  return Array.from({ length: Math.max(positions, leaving.length) }, (_, index) => ({
    position: index + 1,
    taken: leaving[index],
  }));
}
