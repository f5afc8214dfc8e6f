import { type DeviceVoltage, deviceVoltages, type Lowest } from "../../analysis/device-voltage.ts";
import { isShareUnknown } from "../../analysis/network/unknown-shares.ts";
import type { ScenarioResult, SolvedScenario, SupplyPath } from "../../analysis/network-result.ts";
import { withoutLengthTo } from "../../analysis/unknown-lengths.ts";
import { dropVerdict } from "../../analysis/voltage-drop.ts";
import { resistsCurrent } from "../../model/internal-connections.ts";
import type { Part, Scenario } from "../../model/network.ts";
import { isCharging, isConsumer, passesCurrentOn } from "../../model/part-roles.ts";
import type { JudgedNetwork } from "../../rules/rule.ts";
import { formatRounded } from "../../rules/wording/format-number.ts";
import { kindInWords, listInWords } from "../../rules/wording/part-in-words.ts";
import { notKnown } from "../../rules/wording/unknown-length.ts";
import { isOfCircuit } from "../network-summary.ts";
import type { Cell, Quantity, Table } from "../table.ts";
import { type ColumnOf, numbers, quantity, tableOf, words } from "../table-of.ts";
import { findingsAbout, quantityBeside, tableBlock } from "./cells.ts";
import type { Chapter, ReportContext } from "./chapter.ts";
import { ratingsTable } from "./ratings.ts";
import { shortCircuitTable } from "./short-circuits.ts";

/**
 * The network as a whole: the scenarios it was solved in, the arriving voltages, the currents of each part, the fault currents.
 */
export function networkChapter(context: ReportContext): Chapter {
  const { judgement } = context;
  const common = { id: "network", title: "The network", orientation: "landscape" } as const;
  const judged = judgement.network;
  if (!judged)
    return {
      ...common,
      follows: true,
      blocks: [
        {
          kind: "paragraph",
          text: judgement.model.networkUnread
            ? "The network was not worked out, because a value of it is invalid: see the summary."
            : "The plan connects its circuits to no network: each was judged alone, and neither the drop from the bank nor a short was worked out.",
        },
      ],
    };
  const section = (id: string, title: string, text: string, tables: readonly Table[]) => ({
    id,
    title,
    blocks: [{ kind: "paragraph", text } as const, ...tables.flatMap(tableBlock)],
  });
  return {
    ...common,
    blocks: [],
    sections: [
      section(
        "scenarios",
        "Scenarios",
        judged.network.scenarios.some(({ record }) => record !== undefined)
          ? "States of the whole build that the plan names. All is judged by the worst of them."
          : "The plan names no scenario: these are the usual ones. All is judged by the worst of them.",
        [scenarioTable(judged)],
      ),
      section(
        "arrives",
        "Voltage at the devices",
        "The voltage drop on the whole path from the bank, out and back, in the worst scenario; and the lowest voltage at each device that states its minimum, starting motors included.",
        [wayTable(judged, context), lowestVoltageTable(judged, context)],
      ),
      section(
        "ratings",
        "Currents of parts, and their ratings",
        "The greatest current in any scenario that lasts. Ratings are the maker's, as stated in the plan.",
        [ratingsTable(judged, context)],
      ),
      section(
        "by-scenario",
        "Currents and voltages, scenario by scenario",
        "Current out of the positive terminal: negative where a part draws, or where a battery is charged; for parts that only pass current on, the current through them. Voltage between a part's own terminals.",
        partTables(judged),
      ),
      section(
        "shorts",
        "Short circuits",
        `The maximum fault is a short right behind the device, with cold copper and a full bank; the minimum is a short at the far end of the protected conductors, with hot copper. Neither includes fuses, contacts, lugs or the inductance of the cable${exceptResisting(judged)}.`,
        [shortCircuitTable(judged, context)],
      ),
    ],
  };
}

/** The resistance of a part counts in every fault. */
function exceptResisting({ network }: JudgedNetwork): string {
  const names = network.parts.filter(resistsCurrent).map(({ name }) => name);
  return names.length === 0 ? "" : `, except the resistance of ${listInWords(names, names.length)}`;
}

function scenarioTable({ network, result }: JudgedNetwork): Table {
  const drawing = network.parts.filter(isConsumer);
  const names = (wanted: (part: Part) => boolean) =>
    network.parts
      .filter(wanted)
      .map(({ name }) => name)
      .join("; ") || "none";
  return tableOf<ScenarioRow>(
    { id: "scenarios", title: "Scenarios", notes: [] },
    [
      words("name", "Scenario", ({ scenario }) => scenario.name),
      words("state", "Worked out", ({ solution }) => {
        if (solution.state === "solved") return "solved";
        return solution.why === "collapse" ? "no: voltage collapse" : "no: not solved";
      }),
      numbers("loads", "Loads on", ({ scenario }) => {
        const on = drawing.filter(({ index }) => scenario.on[index]).length;
        return { value: on, text: `${on} of ${drawing.length}` };
      }),
      words("sources", "Charging sources on", ({ scenario }) =>
        names((part) => isCharging(part) && scenario.on[part.index] === true),
      ),
      words("starting", "Motors starting", ({ scenario }) =>
        names(({ index }) => scenario.starting[index] === true),
      ),
      words("rest", "Batteries at rest, V", ({ scenario }) => {
        const rest = network.parts.flatMap((part) => {
          const volts =
            part.kind === "battery" && scenario.on[part.index] ? scenario.restV[part.index] : undefined;
          return volts === undefined ? [] : [formatRounded(volts)];
        });
        return [...new Set(rest)].join(", ") || "none";
      }),
      numbers("sunPercent", "Sun, %", ({ scenario }) => quantity(100 * scenario.sunShare)),
    ],
    result.scenarios.flatMap((solution): ScenarioRow[] => {
      const scenario = network.scenarios[solution.scenario];
      return scenario ? [{ scenario, solution }] : [];
    }),
  );
}

interface ScenarioRow {
  readonly scenario: Scenario;
  readonly solution: ScenarioResult;
}

function wayTable({ network, result }: JudgedNetwork, { numbered }: ReportContext): Table {
  const nameOf = (part: number) => network.parts[part]?.name ?? "";
  return tableOf<(typeof result.supplyPaths)[number]>(
    {
      id: "ways",
      title: "The whole path from the bank",
      notes: result.supplyPaths.some(({ withoutLength }) => withoutLength.length > 0)
        ? [
            "Not judged: a conductor on the path has no known length. A drop that exceeds its limit all the same is shown as the least.",
          ]
        : [],
    },
    [
      words("device", "Device", ({ part }) => nameOf(part)),
      words("bank", "From", ({ battery }) => nameOf(battery)),
      words("scenario", "Worst in", ({ scenario }) => network.scenarios[scenario]?.name ?? ""),
      numbers("dropV", "Drop, V", (way) => dropOnWay(way, quantity(way.dropV))),
      numbers("dropPercent", "Drop, %", (way) =>
        dropOnWay(way, quantityBeside(way.dropPercent, way.dropLimitPercent)),
      ),
      numbers("dropLimitPercent", "Limit, %", (way) =>
        dropVerdict(way) === "not judged"
          ? quantity(way.dropLimitPercent)
          : quantityBeside(way.dropLimitPercent, way.dropPercent),
      ),
      numbers("arrivingV", "Arriving, V", (way) =>
        way.withoutLength.length > 0 ? "not judged" : quantity(way.arrivingV),
      ),
      words("most", "Most of it on", ({ legs, withoutLength }) => {
        if (withoutLength.length > 0) return null;
        const [most] = [...legs].sort((one, other) => other.dropV - one.dropV);
        const leg = most && network.conductors[most.conductor];
        if (!leg) return null;
        return `${leg.role === "return" ? "return of " : ""}${leg.name}, ${formatRounded(most.dropV)} V`;
      }),
      findingsAbout(numbered, ({ part }) => nameOf(part)),
    ],
    result.supplyPaths,
  );
}

function dropOnWay(way: SupplyPath, cell: Quantity): Cell {
  const verdict = dropVerdict(way);
  if (verdict === "not judged") return verdict;
  return way.withoutLength.length > 0 ? { ...cell, text: `at least ${cell.text}` } : cell;
}

function lowestVoltageTable(judged: JudgedNetwork, { numbered }: ReportContext): Table {
  const isKnown = (part: Part) => withoutLengthTo(judged, part).length === 0;
  return tableOf<DeviceVoltage & { readonly lowest: Lowest | undefined }>(
    {
      id: "lowest-voltages",
      title: "Lowest voltage at devices that state their minimum",
      notes: [],
    },
    [
      words("device", "Device", ({ part }) => part.name),
      words("scenario", "Lowest in", ({ lowest }) =>
        lowest
          ? (judged.network.scenarios[lowest.scenario]?.name ?? "")
          : "on in no scenario that was solved",
      ),
      numbers("voltageV", "Arrives, V", ({ lowest, neededV, part }) => {
        if (!lowest) return null;
        const arrives = quantityBeside(lowest.voltageV, neededV);
        return isKnown(part) ? arrives : { ...arrives, text: `at most ${arrives.text}` };
      }),
      numbers("neededV", "Needs, V", ({ lowest, neededV }) =>
        lowest ? quantityBeside(neededV, lowest.voltageV) : quantity(neededV),
      ),
      numbers("marginV", "Margin, V", ({ lowest, neededV, part }) => {
        if (!lowest) return null;
        return isKnown(part) ? quantity(lowest.voltageV - neededV) : "not judged";
      }),
      findingsAbout(numbered, ({ part }) => part.name),
    ],
    deviceVoltages(judged).map((device) => ({ ...device, lowest: lowerOf(device) })),
  );
}

function lowerOf({ lasting, momentary }: DeviceVoltage): Lowest | undefined {
  if (!lasting || !momentary) return lasting ?? momentary;
  return momentary.voltageV < lasting.voltageV ? momentary : lasting;
}

/** Number of scenarios side by side; further ones follow in a table of their own. */
const scenariosAcross = 4;

function partTables({ network, result }: JudgedNetwork): readonly Table[] {
  const solved = result.scenarios.filter((one): one is SolvedScenario => one.state === "solved");
  const chunks = Array.from({ length: Math.ceil(solved.length / scenariosAcross) }, (_, index) =>
    solved.slice(index * scenariosAcross, (index + 1) * scenariosAcross),
  );
  // The load that a circuit states itself has the circuit's name, and belongs among the devices.
  const parts = [...network.parts].sort(
    (one, other) => Number(isOfCircuit(one)) - Number(isOfCircuit(other)),
  );
  return chunks.map((chunk, index) =>
    tableOf<Part>(
      {
        id: `by-scenario-${index + 1}`,
        title:
          chunks.length > 1
            ? `Parts by scenario, ${index * scenariosAcross + 1} to ${index * scenariosAcross + chunk.length}`
            : "Parts by scenario",
        notes: [],
      },
      [
        words("part", "Part", ({ name }) => name),
        words("kind", "Kind", kindInWords),
        ...chunk.flatMap((one): readonly ColumnOf<Part>[] => {
          const name = network.scenarios[one.scenario]?.name ?? "";
          return [
            numbers(`currentA${one.scenario}`, `${name}, A`, (part) =>
              isShareUnknown(network, one.scenario, part.index)
                ? notKnown
                : quantity(shownCurrentA(part, one)),
            ),
            numbers(`voltageV${one.scenario}`, "V", (part) =>
              withoutLengthTo({ network, result }, part).length > 0 ? notKnown : volts(one.partV[part.index]),
            ),
          ];
        }),
      ],
      parts,
    ),
  );
}

/**
 * The residual of the sum of currents is not a current. A part that passes current on has no sign here: a reader does not know
 * which of its terminals it names first.
 */
function shownCurrentA(part: Part, { partA, largestA }: SolvedScenario): number {
  const currentA = partA[part.index] ?? 0;
  if (Math.abs(currentA) < 1e-6 * Math.max(1, largestA)) return 0;
  return passesCurrentOn(part) ? Math.abs(currentA) : currentA;
}

function volts(voltageV: number | undefined): Cell {
  return voltageV === undefined || Number.isNaN(voltageV) ? null : quantity(voltageV);
}
