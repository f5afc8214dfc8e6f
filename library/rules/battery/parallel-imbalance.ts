import { sizesAbove } from "../../analysis/made-sizes.ts";
import { estimatesOf } from "../../analysis/network/estimates.ts";
import { parallelLeads, stringShares, stringsAreAlike } from "../../analysis/network/solver/string-shares.ts";
import type { Bank } from "../../analysis/network/topology/network-topology.ts";
import { isShareUnknown } from "../../analysis/network/unknown-shares.ts";
import type { NetworkConductor } from "../../model/network.ts";
import type { LengthProperty } from "../../model/run.ts";
import { isAbove } from "../current-through.ts";
import type { Change, ProposedFix } from "../finding.ts";
import { setSize, sizeInWords } from "../fixes/sized-fix.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule, type Found, inNetwork, type JudgedNetwork } from "../rule.ts";
import { estimateInWords } from "../wording/estimate-in-words.ts";
import { formatDistinctWithUnit, formatExact, withUnit } from "../wording/format-number.ts";
import { atPart, relatedConductor, scenarioInWords } from "../wording/part-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";
import { wayOut } from "../wording/way-out.ts";

/** How far above its share a battery's current may be, percent. */
const limitPercent = 10;

const withinTenPercent = ownRequirement(
  "Parallel batteries share the current by capacity, each within 10 % of its share.",
);

export const parallelImbalance = defineRule<Values>({
  id: "battery/parallel-imbalance",
  title: "Parallel batteries share current unequally",
  formerTitles: ["Batteries side by side share unequally"],
  severity: "warning",
  why: "The battery with the shorter leads works hardest, ages first, and then pulls the others down with it.",
  sources: [withinTenPercent],
  fixable: true,
  acceptable: true,
  restsOn: "voltages",
  // Needs the current of each string in the scenario with the bank's maximum current. One finding for each bank.
  check: (plan) =>
    inNetwork(plan, (judged) => judged.result.topology.banks.flatMap((bank) => finding(judged, bank))),
  message(values) {
    const { currentA, fairA, totalA, estimate, overPercent, charging, scenario, source } = values;
    const [over, limit] = formatDistinctWithUnit(overPercent, limitPercent, "%");
    const [own, fair] = formatDistinctWithUnit(currentA, fairA, "A");
    return `${charging ? "Takes" : "Gives"} ${own} of the bank's ${withUnit(totalA, "A")} ${scenario}${estimate}, ${over} above its share of ${fair}; up to ${limit} is ${source}: ${values.wayOut}.`;
  },
});

interface Values {
  readonly currentA: number;
  readonly fairA: number;
  readonly totalA: number;
  readonly estimate: string;
  /** How far the current is above its share. */
  readonly overPercent: number;
  readonly charging: boolean;
  /** `in "everything on"`. */
  readonly scenario: string;
  readonly source: string;
  readonly wayOut: string;
}

function finding({ network, result }: JudgedNetwork, bank: Bank): Found<Values>[] {
  const shares = stringShares(network, result.scenarios, bank);
  const worst = shares?.strings.reduce((a, b) => (b.overPercent > a.overPercent ? b : a));
  const battery = network.parts[worst?.batteries.at(-1) ?? -1];
  if (!shares || !worst || !battery || !isAbove(worst.overPercent, limitPercent)) return [];
  // How they share is unknown then: conductor/no-length reports it.
  if (isShareUnknown(network, shares.scenario, battery.index)) return [];
  const leads = parallelLeads(network, bank);
  const alike = stringsAreAlike(network, bank);
  const fixes = leads && alike ? balancing(leads.positive, leads.negative) : [];
  const otherwise = alike
    ? "take the positive from one end of the row and the negative from the other, or give each battery its own identical leads to a bus bar"
    : "use batteries of one kind and age, each with identical leads to a bus bar";
  const values: Values = {
    currentA: Math.abs(worst.currentA),
    fairA: Math.abs(worst.fairA),
    totalA: Math.abs(shares.totalA),
    // Batteries of one kind rest at one voltage: only their resistances matter.
    estimate: estimateInWords(
      estimatesOf(network).ofVoltage(shares.scenario, battery.index)?.internalResistance && {
        internalResistance: true,
      },
    ),
    overPercent: worst.overPercent,
    charging: shares.totalA < 0,
    scenario: scenarioInWords(network, shares.scenario),
    source: sourceInWords(withinTenPercent),
    wayOut: wayOut(fixes, otherwise),
  };
  const related = [...(leads?.positive ?? []), ...(leads?.negative ?? [])]
    .slice(0, mostRelated)
    .map((lead) => relatedConductor(lead, inWords(lead)));
  return [{ subject: battery.name, at: atPart(battery), values, related, fixes }];
}

const mostRelated = 8;

/**
 * Makes each lead as long as the longest and as thick as the thickest of its polarity. Only a suggestion: it changes several
 * cables, and a longer lead is work at the bench. None if the plan measures them in different units.
 */
function balancing(...polarities: readonly (readonly NetworkConductor[])[]): ProposedFix[] {
  const changes: Change[] = [];
  const words: string[] = [];
  for (const [index, leads] of polarities.entries()) {
    const [first] = leads;
    const comparable = leads.every(
      ({ role, run }) =>
        role === "cable" &&
        run.lengthsFrom === "plan" &&
        run.conductor.system === first?.run.conductor.system &&
        run.conductor.parallel === first.run.conductor.parallel &&
        run.lengthUnit === first.run.lengthUnit,
    );
    if (!first || !comparable) return [];
    const metres = ({ lengthM = 0 }: NetworkConductor) => lengthM;
    const longest = leads.reduce((a, b) => (metres(b) > metres(a) ? b : a));
    const thickest = leads.reduce((a, b) => (sizesAbove(b.run.conductor, a.run.conductor) > 0 ? b : a));
    const [length, value] = Object.entries(longest.run.lengthsGiven)[0] as [LengthProperty, number];
    const before = changes.length;
    for (const lead of leads) {
      const { record, run } = lead;
      if (metres(lead) < metres(longest)) changes.push({ do: "set", record, path: [length], value });
      if (sizesAbove(thickest.run.conductor, run.conductor) > 0)
        changes.push(setSize(run, thickest.run.conductor));
    }
    if (changes.length > before)
      words.push(
        `${formatExact(value)} ${length.endsWith("Ft") ? "ft" : "m"} of ${sizeInWords(thickest.run.conductor)} for each ${index === 0 ? "positive" : "negative"} lead`,
      );
  }
  return changes.length === 0 ? [] : [{ title: `Use ${words.join(" and ")}`, kind: "suggestion", changes }];
}

function inWords({ name, run }: NetworkConductor): string {
  const [length, value] = Object.entries(run.lengthsGiven)[0] ?? [];
  const size = sizeInWords(run.conductor);
  if (length === undefined || value === undefined) return `${name}, ${size}`;
  return `${name}, ${formatExact(value)} ${length.endsWith("Ft") ? "ft" : "m"} of ${size}`;
}
