import { deviceVoltages } from "../../analysis/device-voltage.ts";
import type { SolvedScenario } from "../../analysis/network-result.ts";
import type { Part } from "../../model/network.ts";
import { isCharging, isConsumer, passesCurrentOn } from "../../model/part-roles.ts";
import type { JudgedNetwork } from "../../rules/rule.ts";
import { formatDistinct, formatRounded } from "../../rules/wording/format-number.ts";
import { kindInWords } from "../../rules/wording/part-in-words.ts";
import { isOfCircuit } from "../network-summary.ts";
import type { Cell, Column, Table } from "../table.ts";
import { numberColumn, quantity, tableBlock, textColumn, valueAndLimit } from "./cells.ts";
import type { Chapter, ReportContext } from "./chapter.ts";
import { numbersAbout } from "./numbered-findings.ts";
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
        "The maximum fault is a short right behind the device, with cold copper and a full bank; the minimum is a short at the far end of the protected conductors, with hot copper. Neither includes fuses, contacts, lugs or the inductance of the cable.",
        [shortCircuitTable(judged, context)],
      ),
    ],
  };
}

function scenarioTable({ network, result }: JudgedNetwork): Table {
  const drawing = network.parts.filter(isConsumer);
  return {
    id: "scenarios",
    title: "Scenarios",
    notes: [],
    columns: [
      textColumn("name", "Scenario"),
      textColumn("state", "Worked out"),
      numberColumn("loads", "Loads on"),
      textColumn("sources", "Charging sources on"),
      textColumn("starting", "Motors starting"),
      textColumn("rest", "Batteries at rest, V"),
      numberColumn("sunPercent", "Sun, %"),
    ],
    rows: result.scenarios.flatMap((one): (readonly Cell[])[] => {
      const scenario = network.scenarios[one.scenario];
      if (!scenario) return [];
      const names = (wanted: (part: Part) => boolean) =>
        network.parts
          .filter(wanted)
          .map(({ name }) => name)
          .join("; ") || "none";
      const on = drawing.filter(({ index }) => scenario.on[index]).length;
      const rest = network.parts.flatMap((part) => {
        const volts =
          part.kind === "battery" && scenario.on[part.index] ? scenario.restV[part.index] : undefined;
        return volts === undefined ? [] : [formatRounded(volts)];
      });
      return [
        [
          scenario.name,
          one.state === "solved"
            ? "solved"
            : one.why === "collapse"
              ? "no: voltage collapse"
              : "no: not solved",
          { value: on, text: `${on} of ${drawing.length}` },
          names((part) => isCharging(part) && scenario.on[part.index] === true),
          names(({ index }) => scenario.starting[index] === true),
          [...new Set(rest)].join(", ") || "none",
          quantity(100 * scenario.sunShare),
        ],
      ];
    }),
  };
}

function wayTable({ network, result }: JudgedNetwork, { numbered }: ReportContext): Table {
  return {
    id: "ways",
    title: "The whole path from the bank",
    notes: [],
    columns: [
      textColumn("device", "Device"),
      textColumn("bank", "From"),
      textColumn("scenario", "Worst in"),
      numberColumn("dropV", "Drop, V"),
      numberColumn("dropPercent", "Drop, %"),
      numberColumn("dropLimitPercent", "Limit, %"),
      numberColumn("arrivingV", "Arriving, V"),
      textColumn("most", "Most of it on"),
      textColumn("findings", "Findings"),
    ],
    rows: result.supplyPaths.map((way) => {
      const name = network.parts[way.part]?.name ?? "";
      const [drop, limit] = valueAndLimit(way.dropPercent, way.dropLimitPercent);
      const most = [...way.legs].sort((one, other) => other.dropV - one.dropV)[0];
      const leg = most && network.conductors[most.conductor];
      return [
        name,
        network.parts[way.battery]?.name ?? "",
        network.scenarios[way.scenario]?.name ?? "",
        quantity(way.dropV),
        drop,
        limit,
        quantity(way.arrivingV),
        leg
          ? `${leg.role === "return" ? "return of " : ""}${leg.name}, ${formatRounded(most.dropV)} V`
          : null,
        numbersAbout(numbered, name),
      ];
    }),
  };
}

function lowestVoltageTable(judged: JudgedNetwork, { numbered }: ReportContext): Table {
  return {
    id: "lowest-voltages",
    title: "Lowest voltage at devices that state their minimum",
    notes: [],
    columns: [
      textColumn("device", "Device"),
      textColumn("scenario", "Lowest in"),
      numberColumn("voltageV", "Arrives, V"),
      numberColumn("neededV", "Needs, V"),
      numberColumn("marginV", "Margin, V"),
      textColumn("findings", "Findings"),
    ],
    rows: deviceVoltages(judged).map(({ part, neededV, lasting, momentary }) => {
      const lowest =
        lasting && momentary
          ? momentary.voltageV < lasting.voltageV
            ? momentary
            : lasting
          : (lasting ?? momentary);
      const findings = numbersAbout(numbered, part.name);
      if (!lowest)
        return [part.name, "on in no scenario that was solved", null, quantity(neededV), null, findings];
      const [arrives, needs] = formatDistinct(lowest.voltageV, neededV);
      return [
        part.name,
        judged.network.scenarios[lowest.scenario]?.name ?? "",
        { value: lowest.voltageV, text: arrives },
        { value: neededV, text: needs },
        quantity(lowest.voltageV - neededV),
        findings,
      ];
    }),
  };
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
  return chunks.map((chunk, index) => ({
    id: `by-scenario-${index + 1}`,
    title:
      chunks.length > 1
        ? `Parts by scenario, ${index * scenariosAcross + 1} to ${index * scenariosAcross + chunk.length}`
        : "Parts by scenario",
    notes: [],
    columns: [
      textColumn("part", "Part"),
      textColumn("kind", "Kind"),
      ...chunk.flatMap(({ scenario }): readonly Column[] => {
        const name = network.scenarios[scenario]?.name ?? "";
        return [numberColumn(`currentA${scenario}`, `${name}, A`), numberColumn(`voltageV${scenario}`, "V")];
      }),
    ],
    rows: parts.map((part) => [
      part.name,
      kindInWords(part),
      ...chunk.flatMap((one): readonly Cell[] => [
        quantity(shownCurrentA(part, one)),
        volts(one.partV[part.index]),
      ]),
    ]),
  }));
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
