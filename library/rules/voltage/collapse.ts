import { estimatesOf } from "../../analysis/network/estimates.ts";
import { recordsOfIslands } from "../../analysis/network/topology/islands.ts";
import type { NetworkResult, UnsolvedScenario } from "../../analysis/network-result.ts";
import type { Network, Part } from "../../model/network.ts";
import type { At } from "../finding.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule, inNetwork } from "../rule.ts";
import { estimateInWords } from "../wording/estimate-in-words.ts";
import { withUnit } from "../wording/format-number.ts";
import { atPart, listInWords, partInWords, relatedPart, scenarioInWords } from "../wording/part-in-words.ts";

export const voltageCollapse = defineRule<Values>({
  id: "voltage/collapse",
  title: "Voltage collapse",
  formerTitles: ["No voltage at which the loads run"],
  severity: "error",
  why: "Constant-power devices draw more current as their voltage falls: on a supply that is too weak it falls until all cut out.",
  sources: [
    ownRequirement("The circuit has no operating point: a fact of physics, not a limit of a document."),
  ],
  fixable: false,
  acceptable: false,
  restsOn: "voltages",
  // Needs the scenarios for which the solver found no operating point. A warning if it came to no answer at all, and if all else goes on
  // while a motor starts, though no scenario of the plan states that.
  check: (plan) =>
    inNetwork(plan, ({ network, result }) =>
      worstOfEachPlace(network, result).map((unsolved) => {
        const culprits = unsolved.culprits.flatMap((index) => network.parts[index] ?? []);
        const { at, subject } = placeOf(network, unsolved, culprits[0]);
        return {
          subject,
          at,
          severity:
            unsolved.why === "collapse" && !network.scenarios[unsolved.scenario]?.furtherStart
              ? ("error" as const)
              : ("warning" as const),
          values: {
            why: unsolved.why,
            scenario: scenarioInWords(network, unsolved.scenario),
            estimate: estimateInWords(
              culprits[0] && estimatesOf(network).ofVoltage(unsolved.scenario, culprits[0].index),
            ),
            reachedPercent: 100 * unsolved.reachedShare,
            culprits: culprits.map(partInWords),
          },
          related: culprits.map((part) => relatedPart(part)),
          explains: recordsOfIslands(network, unsolved.culprits),
        };
      }),
    ),
  message({ why, scenario, estimate, reachedPercent, culprits }) {
    if (why === "not-converged")
      return `Currents and voltages ${scenario} could not be calculated, so they are not judged: look for implausible numbers.`;
    const who = culprits.length > 0 ? `; the voltage falls first at ${listInWords(culprits)}` : "";
    return `No voltage exists ${scenario} at which all loads run: the supply carries ${withUnit(reachedPercent, "%")} of the power${who}${estimate}. Use thicker or shorter conductors, or run less at once.`;
  },
});

interface Values {
  readonly why: UnsolvedScenario["why"];
  readonly scenario: string;
  readonly estimate: string;
  readonly reachedPercent: number;
  /** "the inverter kettle", worst first. */
  readonly culprits: readonly string[];
}

/** Built-in scenarios that fail at the same device are reported once: the one with the lowest reachable share. */
function worstOfEachPlace(network: Network, { scenarios }: NetworkResult): readonly UnsolvedScenario[] {
  const worst = new Map<string, UnsolvedScenario>();
  for (const unsolved of scenarios) {
    if (unsolved.state !== "unsolved") continue;
    const { record } = network.scenarios[unsolved.scenario] ?? {};
    const place = record === undefined ? `at part ${unsolved.culprits[0]}` : `at record ${record}`;
    const known = worst.get(place);
    if (!known || unsolved.reachedShare < known.reachedShare * (1 - shareBlur)) worst.set(place, unsolved);
  }
  return [...worst.values()];
}

/** The share is found by bisection: smaller differences count as equal, and the first scenario is reported. */
const shareBlur = 1e-4;

/** On the plan's own scenario; else on the device whose voltage falls first, or on any part if there is none. */
function placeOf(
  network: Network,
  { scenario }: UnsolvedScenario,
  worst: Part | undefined,
): { readonly at: At; readonly subject: string } {
  const { record, name } = network.scenarios[scenario] ?? { name: "" };
  if (record !== undefined) return { at: { record, path: [] }, subject: name };
  const part = worst ?? network.parts[0];
  return part ? { at: atPart(part), subject: part.name } : { at: { record: 0, path: [] }, subject: name };
}
