import type { Judgement } from "../../judge.ts";
import type { Network, Part } from "../../model/network.ts";
import { deviceKind } from "../../rules/fixes/sized-fix.ts";
import { familyInWords } from "../../rules/wording/family-in-words.ts";
import { formatDistinct, formatExact } from "../../rules/wording/format-number.ts";
import { listInWords } from "../../rules/wording/part-in-words.ts";
import { cautions } from "../report/cautions.ts";
import type { Cell, Table } from "../table.ts";
import { forPeople, forPrograms, numbers, quantity, tableOf, toFillIn, words } from "../table-of.ts";
import { counted, endInWords, notKeptNotes, numberCell } from "./cells.ts";
import { type Device, type Devices, hasProtection, placeInWords, wireNumberCell } from "./devices.ts";
import { type ExpectedVoltage, voltagesToExpect } from "./expected-voltages.ts";
import type { NumberedWire } from "./wire-numbers.ts";
import { sideInWords } from "./wire-schedule.ts";
import type { WireEnd } from "./wires.ts";

/**
 * Checks before the first power and at it, in the order of work: conductors, insulation, protection, voltages. Each with columns
 * for a pen. The id of every table begins with "first-power".
 */
export function firstPower(
  plan: Judgement,
  devices: Devices,
  wires: readonly NumberedWire[],
  scenario?: number,
): readonly Table[] {
  return [
    conductorChecks(plan, devices, wires),
    insulationChecks(plan, devices),
    deviceChecks(devices, wires),
    voltageChecks(plan, scenario),
  ];
}

/** The state of the system before the first power. */
function before(devices: Devices): string {
  const off = "With every battery disconnected, every other source off";
  return hasBreaker(devices)
    ? `${off}, every fuse out and every breaker open.`
    : `${off} and every fuse out.`;
}

function hasBreaker({ panels, elsewhere }: Devices): boolean {
  const onPanels = panels.flatMap(({ positions }) => positions.flatMap(({ taken }) => taken ?? []));
  return [...onPanels, ...elsewhere].some(({ protection }) => deviceKind(protection) === "breaker");
}

function conductorChecks(plan: Judgement, devices: Devices, wires: readonly NumberedWire[]): Table {
  const ends = wires.flatMap(({ wire }) => [wire.from, wire.to]);
  const withTorque = ends.some(({ torqueNm }) => torqueNm !== undefined);
  const sources = sourcesByPart(plan);
  return tableOf<NumberedWire>(
    {
      id: "first-power-conductors",
      title: "Before first power, 1: conductors",
      notes: [
        ...cautions.slice(0, 2),
        before(devices),
        "Continuity: from end to end, before both ends are connected. Polarity: each end is on the terminal that is named here.",
        withTorque
          ? `Torques are those that the plan states${sourcesInWords(ends, sources)}; tighten a terminal without one to its maker's figure.`
          : "The plan states no torques: tighten each terminal to its maker's figure.",
        ...notKeptNotes(wires),
      ],
    },
    [
      numbers("number", "No.", numberCell),
      words("name", "Name", ({ wire }) => wire.name),
      words("side", "Side", ({ wire }) => sideInWords(wire)),
      words("from", "From", ({ wire }) => endInWords(wire.from)),
      words("to", "To", ({ wire }) => endInWords(wire.to)),
      ...(withTorque
        ? [
            forPrograms(
              words<NumberedWire>("torqueFrom", "Torque at from", ({ wire }) => torque(wire.from, sources)),
            ),
            forPrograms(
              words<NumberedWire>("torqueTo", "Torque at to", ({ wire }) => torque(wire.to, sources)),
            ),
            forPeople(words<NumberedWire>("torqueNm", "Torque, N·m", torques)),
          ]
        : []),
      toFillIn("continuity", "Continuity"),
      toFillIn("polarity", "Polarity"),
      toFillIn("tightened", "Tightened"),
    ],
    wires,
  );
}

function torque({ torqueNm, part }: WireEnd, sources: ReadonlyMap<string, string>): Cell {
  if (torqueNm === undefined) return null;
  const source = sources.get(part);
  return `${formatExact(torqueNm)} N·m${source ? ` (${source})` : ""}`;
}

/** "from 10, to 12" */
function torques({ wire: { from, to } }: NumberedWire): Cell {
  const at = (word: string, { torqueNm }: WireEnd) =>
    torqueNm === undefined ? "" : `${word} ${formatExact(torqueNm)}`;
  return [at("from", from), at("to", to)].filter(Boolean).join(", ") || null;
}

/** " (house bank: data sheet p. 3; positive bus, negative bus: data sheet)": the parts of one source together. */
function sourcesInWords(ends: readonly WireEnd[], sources: ReadonlyMap<string, string>): string {
  const parts = new Map<string, Set<string>>();
  for (const { part, torqueNm } of ends) {
    const source = torqueNm === undefined ? undefined : sources.get(part);
    if (source !== undefined) parts.set(source, (parts.get(source) ?? new Set()).add(part));
  }
  const listed = [...parts].map(([source, of]) => `${[...of].join(", ")}: ${source}`);
  return listed.length > 0 ? ` (${listed.join("; ")})` : "";
}

/** The builder's source for the figures of a part. */
function sourcesByPart({ network }: Judgement): ReadonlyMap<string, string> {
  return new Map(
    (network?.network.parts ?? []).flatMap(({ name, source }) =>
      source === undefined ? [] : [[name, source]],
    ),
  );
}

interface InsulationCheck {
  readonly between: string;
  readonly how: string;
}

function insulationChecks(plan: Judgement, devices: Devices): Table {
  return tableOf<InsulationCheck>(
    {
      id: "first-power-insulation",
      title: "Before first power, 2: insulation",
      notes: [
        before(devices),
        "No limit is given here: take that of the meter's manual and of the local code, and write it down beside the reading.",
        "Take every device off its conductors first: the test voltage of an insulation meter destroys electronics.",
      ],
    },
    [
      words("between", "Between", ({ between }) => between),
      words("how", "How", ({ how }) => how),
      toFillIn("limit", "Limit taken"),
      toFillIn("measured", "Measured"),
    ],
    insulationRows(plan.network?.network, hasBreaker(devices)),
  );
}

function insulationRows(network: Network | undefined, withBreakers: boolean): InsulationCheck[] {
  const opened = withBreakers
    ? "each fuse that is out and each breaker that is open"
    : "each fuse that is out";
  const positiveSide = `every device off its conductors, every disconnect closed; behind ${opened}, measure again`;
  const chassis = (network?.parts ?? []).filter(({ kind }) => kind === "chassis");
  const metals =
    chassis.length > 0 ? chassis.map(({ name }) => name) : ["bare metal of the vehicle, hull or building"];
  const bonds = bondsOf(network);
  const open = bonds.length > 0 ? ` with ${listInWords(bonds)} taken off` : "";
  return [
    {
      between: "all positive conductors together, and all negative conductors together",
      how: positiveSide,
    },
    ...metals.map((metal) => ({
      between: `all positive conductors together, and ${metal}`,
      how: positiveSide,
    })),
    ...metals.map((metal) => ({
      between: `all negative conductors together, and ${metal}`,
      how: chassisReturns(network)
        ? `only conductors that do not return over the metal${open ? `,${open}` : ""}`
        : `every device off its conductors${open ? `,${open}` : ""}`,
    })),
  ];
}

/** Names of the conductors that bond the negative side to metal on purpose. */
function bondsOf(network: Network | undefined): string[] {
  return (network?.conductors ?? [])
    .filter(({ from, to }) => [from, to].some((terminal) => partAt(network!, terminal)?.kind === "chassis"))
    .filter(({ role }) => role === "cable")
    .map(({ name }) => name);
}

/** Some circuits return over the metal itself. */
function chassisReturns(network: Network | undefined): boolean {
  return (network?.conductors ?? []).some(
    ({ role, to }) => role === "return" && partAt(network!, to)?.kind === "chassis",
  );
}

function partAt({ terminals, parts }: Network, terminal: number): Part | undefined {
  return parts[terminals[terminal]!.part];
}

interface DeviceCheck {
  readonly place: string;
  readonly position?: number;
  readonly device: Device;
}

function deviceChecks({ panels, elsewhere }: Devices, wires: readonly NumberedWire[]): Table {
  const rows: DeviceCheck[] = [
    ...panels.flatMap(({ panel, positions }) =>
      positions.flatMap(({ position, taken }) =>
        taken && hasProtection(taken) ? [{ place: panel.name, position, device: taken }] : [],
      ),
    ),
    ...elsewhere.map((device) => ({ place: placeInWords(device), device })),
  ];
  return tableOf<DeviceCheck>(
    {
      id: "first-power-protection",
      title: "Before first power, 3: fuses and breakers",
      notes: [
        "Read the rating on the device itself. Leave fuses out and breakers open until the conductors and the insulation are done; put in the one nearest to the battery last.",
        ...notKeptNotes(wires),
      ],
    },
    [
      words("place", "Place", ({ place }) => place),
      numbers("position", "Position", ({ position }) => (position === undefined ? null : counted(position))),
      words("circuit", "Feeds", ({ device }) => device.feeds),
      numbers("number", "Wire no.", ({ device }) => wireNumberCell(device)),
      numbers("ratingA", "Rating, A", ({ device }) => quantity(device.protection.ratingA)),
      words("family", "Family", ({ device }) => familyInWords(device.protection) ?? "not stated"),
      toFillIn("rating", "Rating read"),
      toFillIn("seated", "Seated"),
    ],
    rows,
  );
}

function voltageChecks(plan: Judgement, scenario: number | undefined): Table {
  const { rows, notes } = voltagesToExpect(plan, scenario);
  return tableOf<ExpectedVoltage>(
    { id: "first-power-voltages", title: "At first power: voltages to expect", notes },
    [
      words("device", "At", ({ at }) => at),
      words("between", "Measure between", ({ between }) => between),
      words("scenario", "When", ({ when }) => when),
      numbers("currentA", "Current, A", ({ currentA }) =>
        currentA === undefined ? null : quantity(currentA),
      ),
      numbers("expectedV", "Expected, V", expectedCell),
      numbers("leastV", "Works down to, V", ({ leastV }) => (leastV === undefined ? null : quantity(leastV))),
      toFillIn("measured", "Measured, V"),
    ],
    rows,
  );
}

/** With enough figures to differ from the least voltage if the two differ. */
function expectedCell({ expectedV, leastV }: ExpectedVoltage): Cell {
  if (typeof expectedV === "string") return expectedV;
  if (leastV === undefined) return quantity(expectedV);
  return { value: expectedV, text: formatDistinct(expectedV, leastV)[0] };
}
