import { unknownSharesOf } from "../../library/analysis/network/unknown-shares.ts";
import type { SolvedScenario } from "../../library/analysis/network-result.ts";
import { withoutLengthTo } from "../../library/analysis/unknown-lengths.ts";
import type { NetworkConductor, Part } from "../../library/model/network.ts";
import { sizeInWords } from "../../library/rules/fixes/sized-fix.ts";
import type { JudgedNetwork } from "../../library/rules/rule.ts";
import { withUnit } from "../../library/rules/wording/format-number.ts";
import { notKnown } from "../../library/rules/wording/unknown-length.ts";
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
  const { decidedBy, sharesCurrentBy } = unknownSharesOf(network);
  const isLossKnown = ({ scenario }: SolvedScenario) =>
    all.every((one) => decidedBy(network.scenarios[scenario]!, one).length === 0);
  const isShared = ({ scenario }: SolvedScenario) =>
    sharesCurrentBy(network.scenarios[scenario]!, conductor).length > 0;
  const columns: ScenarioColumn[] = [
    {
      title: "Current",
      cell: (solved) => (isShared(solved) ? notKnown : flowInWords(solved.conductorA[conductor] ?? 0)),
    },
    { title: "Lost", cell: (solved) => (isLossKnown(solved) ? withUnit(lostV(solved), "V") : notKnown) },
    { title: "Conductor", cell: ({ conductorC }) => withUnit(conductorC[conductor] ?? Number.NaN, "°C") },
  ];
  if (word === "circuit")
    columns.push({
      title: "At its end",
      cell: ({ partV }) => voltageAtPart(judged, network.parts[device]!, partV[device]),
    });
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

/** At most the one worked out, if a length on the way is unknown. */
export function voltageAtPart(judged: JudgedNetwork, part: Part, voltageV: number | undefined): string {
  const isKnown = withoutLengthTo(judged, part).length === 0 || !Number.isFinite(voltageV);
  if (isKnown) return voltageInWords(voltageV);
  // A battery with a smaller share of the current than was worked out has a higher voltage.
  return part.kind === "battery" ? notKnown : `at most ${voltageInWords(voltageV)}`;
}

/** A terminal that no source reaches has no voltage. */
function voltageInWords(voltageV: number | undefined): string {
  return voltageV === undefined || Number.isNaN(voltageV) ? "none reaches it" : withUnit(voltageV, "V");
}
