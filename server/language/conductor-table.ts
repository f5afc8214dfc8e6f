import type { SolvedScenario } from "../../library/analysis/network-result.ts";
import type { NetworkConductor } from "../../library/model/network.ts";
import { sizeInWords } from "../../library/rules/fixes/sized-fix.ts";
import type { JudgedNetwork } from "../../library/rules/rule.ts";
import { withUnit } from "../../library/rules/wording/format-number.ts";
import { conductorsOf } from "./network-at.ts";
import { type ScenarioColumn, scenarioTable } from "./scenario-table.ts";

/**
 * The current in a conductor, its loss and its temperature, by scenario. For a circuit, the loss of both its conductors together,
 * and the voltage at its end.
 */
export function conductorTable(judged: JudgedNetwork, conductor: number, word: "circuit" | "cable"): string {
  const { network } = judged;
  const { record, to } = network.conductors[conductor] as NetworkConductor;
  const all = word === "circuit" ? conductorsOf(judged, record) : [conductor];
  const lostV = ({ conductorA, conductorOhm }: SolvedScenario) =>
    all.reduce((sum, one) => sum + Math.abs(conductorA[one] ?? 0) * (conductorOhm[one] ?? 0), 0);
  const device = network.terminals[to]!.part;
  const columns: ScenarioColumn[] = [
    { title: "Current", cell: ({ conductorA }) => flowInWords(conductorA[conductor] ?? 0) },
    { title: "Lost", cell: (solved) => withUnit(lostV(solved), "V") },
    { title: "Conductor", cell: ({ conductorC }) => withUnit(conductorC[conductor] ?? Number.NaN, "°C") },
  ];
  if (word === "circuit")
    columns.push({ title: "At its end", cell: ({ partV }) => voltageInWords(partV[device]) });
  // A momentary current heats nothing, so it is the worst only for voltages.
  return scenarioTable(judged, columns, ({ scenario, conductorA, partV }) => {
    if (network.scenarios[scenario]?.momentary) return undefined;
    const currentA = Math.abs(conductorA[conductor] ?? 0);
    // The same current from an emptier bank arrives at a lower voltage.
    return word === "circuit" && currentA > 0 ? [currentA, -(partV[device] ?? 0)] : [currentA];
  });
}

/** For a cable or circuit whose lasting current no scenario gives. */
export function unsolvedSummary(judged: JudgedNetwork, conductor: number): string {
  const { run, role } = judged.network.conductors[conductor] as NetworkConductor;
  return [
    `on ${sizeInWords(run.conductor)}: **not judged**, because its current could not be worked out in any scenario`,
    conductorTable(judged, conductor, role === "cable" ? "cable" : "circuit"),
  ].join("\n\n");
}

/** A lead of a battery carries its charging current the other way. */
function flowInWords(currentA: number): string {
  return `${withUnit(Math.abs(currentA), "A")}${currentA < -leastCurrentA ? " towards its start" : ""}`;
}

/** A current below this, and its sign, is rounding error, A. */
export const leastCurrentA = 1e-6;

/** A terminal that no source reaches has no voltage. */
export function voltageInWords(voltageV: number | undefined): string {
  return voltageV === undefined || Number.isNaN(voltageV) ? "none reaches it" : withUnit(voltageV, "V");
}
