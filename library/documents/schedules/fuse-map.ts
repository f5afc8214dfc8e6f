import type { Judgement } from "../../judge.ts";
import type { FusePanelPart } from "../../model/network.ts";
import { familyInWords } from "../../rules/wording/family-in-words.ts";
import { formatRounded } from "../../rules/wording/format-number.ts";
import { listInWords } from "../../rules/wording/part-in-words.ts";
import type { Cell, Table } from "../table.ts";
import { numbers, quantity, tableOf, words } from "../table-of.ts";
import { counted, notKeptNotes } from "./cells.ts";
import {
  type Device,
  type Devices,
  loadOf,
  type Placed,
  type Position,
  placeInWords,
  wireNumberCell,
} from "./devices.ts";
import type { NumberedWire } from "./wire-numbers.ts";

/** For the door of each fuse panel: the load and the fuse of each position; then the devices elsewhere. */
export function fuseMap(plan: Judgement, devices: Devices, wires: readonly NumberedWire[]): Table {
  const rows: Row[] = [
    ...devices.panels.flatMap(({ panel, positions }) =>
      positions.map((position): Row => ({ panel, position, placed: position.taken })),
    ),
    ...devices.elsewhere.map((device): Row => ({ device, placed: device })),
  ];
  return tableOf<Row>(
    { id: "fuse-map", title: "Fuse map", notes: notesFor(plan, devices, wires) },
    [
      words("place", "Place", ({ panel, device }) => panel?.name ?? (device ? placeInWords(device) : null)),
      numbers("position", "Position", ({ position }) => (position ? counted(position.position) : null)),
      words("circuit", "Feeds", ({ placed }) => placed?.feeds ?? "free"),
      numbers("number", "Wire no.", ({ placed }) => (placed ? wireNumberCell(placed) : null)),
      numbers("ratingA", "Rating, A", ratingCell),
      words("family", "Family", familyCell),
      numbers("loadA", "Load, A", ({ placed }) => loadCell(plan, placed)),
      words("scenario", "Greatest in", ({ placed }) =>
        placed ? (loadOf(plan, placed)?.when ?? null) : null,
      ),
    ],
    rows,
  );
}

interface Row {
  readonly panel?: FusePanelPart;
  readonly position?: Position;
  readonly device?: Device;
  readonly placed: Placed | undefined;
}

function ratingCell({ placed }: Row): Cell {
  if (!placed) return null;
  return placed.protection ? quantity(placed.protection.ratingA) : "none stated";
}

function familyCell({ placed }: Row): Cell {
  return placed?.protection ? (familyInWords(placed.protection) ?? "not stated") : null;
}

function loadCell(plan: Judgement, placed: Row["placed"]): Cell {
  if (!placed) return null;
  const load = loadOf(plan, placed);
  return load ? quantity(load.currentA) : "not worked out";
}

function onBranches(positions: readonly Position[]): string {
  return positions.some(({ taken }) => taken?.part)
    ? `${positions.length} conductors and devices are on its branches`
    : `${positions.length} conductors leave from it`;
}

function notesFor(plan: Judgement, { panels }: Devices, wires: readonly NumberedWire[]): string[] {
  const notes: string[] = [];
  if (panels.length > 0) notes.push("Positions are numbered in the order of the plan.");
  for (const { panel, positions } of panels) {
    if (positions.length > panel.positions)
      notes.push(`${panel.name} has ${panel.positions} positions, and ${onBranches(positions)}.`);
    if (panel.branchRatedA !== undefined)
      notes.push(`${panel.name}: each position is rated for at most ${formatRounded(panel.branchRatedA)} A.`);
  }
  const bare = wires.filter(
    ({ wire }) =>
      wire.role === "positive" &&
      wire.conductor === undefined &&
      !wire.from.protection &&
      !wire.to.protection,
  );
  if (bare.length > 0)
    notes.push(
      `Without any protection in the plan: ${listInWords(
        bare.map(({ wire }) => wire.name),
        20,
      )}.`,
    );
  if (plan.network) notes.push("Load: the greatest current in any scenario of the plan that lasts.");
  notes.push("Replace a fuse only by one of the same rating and family, and find out first why it opened.");
  return [...notes, ...notKeptNotes(wires)];
}
