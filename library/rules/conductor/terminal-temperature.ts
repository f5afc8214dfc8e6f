import { ampacityOf } from "../../analysis/ampacity.ts";
import { byName } from "../../analysis/by-name.ts";
import { designCurrentA } from "../../analysis/design-current.ts";
import type { Run } from "../../model/run.ts";
import { workedOutOnce } from "../../model/worked-out-once.ts";
import { coolestEnd, usualTerminal } from "../../standards/terminal-temperature.ts";
import { sizeInWords } from "../fixes/sized-fix.ts";
import { atProperty, defineRule, type Found, type JudgedPlan } from "../rule.ts";
import { exceeds, formatDistinctWithUnit, withUnit } from "../wording/format-number.ts";
import { sizePath } from "../wording/property-paths.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

export const terminalTemperature = defineRule<Values>({
  id: "conductor/terminal-temperature",
  title: "Terminals of unknown temperature rating",
  severity: "info",
  why: "A conductor whose insulation withstands 105 °C can be too hot for the terminal that it ends at, which then softens its holder and burns.",
  sources: [coolestEnd, usualTerminal.source],
  fixable: false,
  acceptable: true,
  restsOn: "currents",
  neverFolded: true,
  // Needs the ampacity at terminals of the usual rating. One finding for the whole plan, about the run with the greatest excess.
  check,
  message({ name, size, loadA, allowedA, others, source }) {
    const [load, allowed] = formatDistinctWithUnit(loadA, allowedA, "A");
    const more =
      others === 0 ? "" : others === 1 ? ", and so does another run" : `, and so do ${others} other runs`;
    return `${size} of ${name} carries ${load}, more than the ${allowed} of terminals rated ${withUnit(usualTerminal.ratedC, "°C")}${more} (${source}): read the rating off fuse holders, breakers and bus bars, and state it (terminalC).`;
  },
});

interface Values {
  /** Of the run with the greatest excess. */
  readonly name: string;
  readonly size: string;
  readonly loadA: number;
  /** At terminals of the usual rating, A. */
  readonly allowedA: number;
  /** The number of other runs with such a current. */
  readonly others: number;
  readonly source: string;
}

function check({ circuits }: JudgedPlan): Found<Values>[] {
  const unstated = circuits
    .filter(({ circuit }) => !circuit.coolestTerminal && circuit.insulationC > usualTerminal.ratedC)
    .map(({ circuit }) => circuit);
  const beyond = unstated.flatMap((circuit) => {
    const ampacity = ampacityAtUsualTerminals(circuit);
    const loadA = designCurrentA(circuit);
    if (!ampacity.judged || !ampacity.terminal || !exceeds(loadA, ampacity.ampacityA)) return [];
    return [{ circuit, loadA, ampacityA: ampacity.ampacityA }];
  });
  if (beyond.length === 0) return [];
  const inOrder = (one: Run, other: Run) => byName(one, other) || one.record - other.record;
  const excess = ({ loadA, ampacityA }: (typeof beyond)[number]) => loadA / ampacityA;
  const [worst, ...others] = beyond.sort(
    (one, other) => excess(other) - excess(one) || inOrder(one.circuit, other.circuit),
  );
  // Always at the same run, the first by name: neither a thicker conductor elsewhere nor the order of statements moves the finding.
  const [first] = unstated.sort(inOrder);
  if (!worst || !first) return [];
  const values: Values = {
    name: worst.circuit.name,
    size: sizeInWords(worst.circuit.conductor),
    loadA: worst.loadA,
    allowedA: worst.ampacityA,
    others: others.length,
    source: sourceInWords(coolestEnd),
  };
  const related = [worst, ...others]
    .slice(0, mostRelated)
    .map(({ circuit }) => ({ at: atProperty(circuit, ...sizePath(circuit)), text: circuit.name }));
  return [{ subject: thePlan, at: atProperty(first, ...sizePath(first)), values, related }];
}

const ampacityAtUsualTerminals = workedOutOnce((run: Run) =>
  ampacityOf({ coolestTerminal: { ratedC: usualTerminal.ratedC }, ...run }),
);

const thePlan = "the plan";
const mostRelated = 8;
