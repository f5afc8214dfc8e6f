import { currentThrough } from "../../analysis/current-through.ts";
import { designCurrentA } from "../../analysis/design-current.ts";
import type { Judgement } from "../../judge.ts";
import type { FusePanelPart, Network } from "../../model/network.ts";
import { type DevicePart, isDevice } from "../../model/part-roles.ts";
import type { Protection } from "../../model/run.ts";
import { formatExact, formatRounded } from "../../rules/wording/format-number.ts";
import { listInWords, occasionName } from "../../rules/wording/part-in-words.ts";
import type { Cell } from "../table.ts";
import { endInWords, numberCell, numberText, terminalOfPartInWords } from "./cells.ts";
import type { NumberedWire } from "./wire-numbers.ts";
import { panelByBranch, type WireEnd } from "./wires.ts";

/** The positions of the plan's fuse panels, and every protective device outside them. In the order of the plan. */
export function devicesOf(plan: Judgement, wires: readonly NumberedWire[]): Devices {
  const network = plan.network?.network;
  const panels = (network?.parts ?? []).filter((part) => part.kind === "fusePanel");
  const placed = [
    ...wires.flatMap((numbered) => inWire(network, numbered)),
    ...(network ? ownParts(network, wires) : []),
  ].sort((one, other) => one.record - other.record);
  const panelOf = panelByBranch(panels);
  const onPanels = new Map(panels.map(({ index }): [number, Placed[]] => [index, []]));
  const elsewhere: Device[] = [];
  for (const { terminal, ...one } of placed) {
    const panel = panelOf.get(terminal ?? -1);
    if (panel !== undefined) onPanels.get(panel)?.push(one);
    else if (hasProtection(one)) elsewhere.push(one);
  }
  return {
    panels: panels.map((panel) => ({
      panel,
      positions: positionsOf(panel, onPanels.get(panel.index) ?? []),
    })),
    elsewhere,
  };
}

export interface Devices {
  readonly panels: readonly { readonly panel: FusePanelPart; readonly positions: readonly Position[] }[];
  readonly elsewhere: readonly Device[];
}

/** One position of a panel; free if neither a wire leaves from it nor a device is on it. */
export interface Position {
  /** From 1. Exceeds the panel's number of positions if more wires and devices are on it than it has. */
  readonly position: number;
  readonly taken: Placed | undefined;
}

/** A device in a wire, or one that is a part of its own. */
export interface Placed {
  /** null: the wire that leaves here has no device of its own. */
  readonly protection: Protection | null;
  /** The device, if it is a part of its own. */
  readonly part: DevicePart | undefined;
  /** The wire that it is in, or those at the load side of a part. */
  readonly wires: readonly NumberedWire[];
  /** Its load in words. */
  readonly feeds: string;
  /** "near house bank · positive"; "on house bank · positive"; the name of a part between two cables. */
  readonly place: string;
}

export interface Device extends Placed {
  readonly protection: Protection;
}

/** "near house bank · positive, 6 in from it" */
export function placeInWords({ place, protection }: Device): string {
  const { distanceIn, distanceMm } = protection.distanceGiven ?? {};
  const far =
    distanceIn === undefined
      ? distanceMm !== undefined && `${formatExact(distanceMm)} mm`
      : `${formatExact(distanceIn)} in`;
  return `${place}${far ? `, ${far} from it` : ""}`;
}

/** The numbers of its wires: "12"; "3, 4*". */
export function wireNumberCell({ wires }: Placed): Cell {
  const [first, ...more] = wires;
  if (!first) return null;
  return more.length === 0 ? numberCell(first) : wires.map(numberText).join(", ");
}

/**
 * The maximum current through a device for longer than a moment, with the scenario; for a circuit that was judged alone, the
 * load that it states. Undefined if no current could be calculated.
 */
export function loadOf(
  plan: Judgement,
  { part, wires: [first] }: Placed,
): { readonly currentA: number; readonly when: string } | undefined {
  const { network: judged } = plan;
  const conductor = first?.wire.conductor;
  if (judged && (part || conductor !== undefined)) {
    const { network, result } = judged;
    const worst = part ? currentThrough(result, part) : result.conductors[conductor!]?.design;
    return worst && { currentA: Math.abs(worst.currentA), when: occasionName(network, worst) };
  }
  const circuit = plan.model.circuits.find(({ record }) => record === first?.wire.record);
  return circuit && { currentA: designCurrentA(circuit), when: "as the circuit states" };
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

interface AtTerminal extends Placed {
  /** Index of the record that states it. */
  readonly record: number;
  /** The terminal that it is at, or on; undefined if there is none. */
  readonly terminal: number | undefined;
}

/** Both ends of a wire, with a device or without. */
function inWire(network: Network | undefined, numbered: NumberedWire): AtTerminal[] {
  const { wire } = numbered;
  const conductor = wire.conductor === undefined ? undefined : network?.conductors[wire.conductor];
  return (["from", "to"] as const).map((end) => ({
    ...{ record: wire.record, terminal: conductor?.[end], protection: wire[end].protection },
    ...{ part: undefined, wires: [numbered], feeds: wire.label, place: `near ${placeOf(wire[end])}` },
  }));
}

function placeOf(end: WireEnd): string {
  return end.at === "notStated" ? "the supply" : endInWords(end);
}

/** The devices that are parts of their own. */
function ownParts(network: Network, wires: readonly NumberedWire[]): AtTerminal[] {
  const { parts, terminals, conductors } = network;
  const devices = parts.filter(isDevice);
  const loads = new Map(devices.map(({ terminals: { load } }): [number, NumberedWire[]] => [load, []]));
  for (const numbered of wires) {
    const conductor = conductors[numbered.wire.conductor ?? -1];
    for (const terminal of conductor ? [conductor.from, conductor.to] : [])
      loads.get(terminal)?.push(numbered);
  }
  return devices.map((part) => {
    const { record, name, mountedOn } = part;
    const { load } = part.terminals;
    const here = loads.get(load) ?? [];
    const onIt = devices.filter((other) => other.mountedOn === load);
    const host = mountedOn === undefined ? undefined : terminals[mountedOn];
    return {
      ...{ record, terminal: mountedOn, protection: part, part, wires: here },
      feeds:
        listInWords([...here.map(({ wire }) => wire.label), ...onIt.map((one) => one.name)], 20) || "none",
      place: host ? `on ${terminalOfPartInWords(parts[host.part]!.name, host.name)}` : name,
    };
  });
}

export function hasProtection(placed: Placed): placed is Device {
  return placed.protection !== null;
}

function positionsOf({ positions }: FusePanelPart, leaving: readonly Placed[]): Position[] {
  return Array.from({ length: Math.max(positions, leaving.length) }, (_, index) => ({
    position: index + 1,
    taken: leaving[index],
  }));
}
