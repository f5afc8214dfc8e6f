import { ampacityOf } from "../../analysis/ampacity.ts";
import { designCurrentA } from "../../analysis/design-current.ts";
import type { Run } from "../../model/run.ts";
import { parallelConductors } from "../../standards/parallel-conductors.ts";
import { sizeInWords } from "../fixes/sized-fix.ts";
import { ownRequirement } from "../own-requirement.ts";
import { atProperty, defineRule, type Found, type JudgedPlan } from "../rule.ts";
import { exceeds, formatDistinctWithUnit } from "../wording/format-number.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

const oneLost = ownRequirement(
  "Of parallel wires, one may come loose without a sign; the others then carry its current too (N − 1).",
);

export const conductorParallel = defineRule<Values>({
  id: "conductor/parallel",
  title: "Parallel wires, one of them lost",
  severity: "info",
  why: "If the lug of one of two parallel wires works loose, the other carries all the current, and the fuse that was chosen for both lets it burn.",
  sources: [parallelConductors.source, oneLost],
  fixable: false,
  acceptable: true,
  restsOn: "currents",
  neverFolded: true,
  // Needs the ampacity with one wire less. One finding for the whole plan, about the run with the greatest excess.
  check,
  message({ name, size, smallerThanAllowed, lost, others, source }) {
    const more =
      others === 0 ? "" : others === 1 ? ", and another run likewise" : `, and ${others} other runs likewise`;
    const small = smallerThanAllowed ? `wires below 1/0 AWG are not put in parallel (${source})` : "";
    if (!lost) return `${size} of ${name}: ${small}${more}: use one thicker wire.`;
    const [allowed, carried] = formatDistinctWithUnit(lost.ampacityA, lost.currentA, "A");
    const by = lost.by === "device" ? `its device lets ${carried} through` : `the load is ${carried}`;
    const without = `with one wire lost it may carry ${allowed}, and ${by}`;
    return `${size} of ${name}: ${[without, small].filter(Boolean).join("; ")}${more}: use one thicker wire, or a device for each wire.`;
  },
});

interface Values {
  readonly name: string;
  readonly size: string;
  /** Below the least size that may be put in parallel. */
  readonly smallerThanAllowed: boolean;
  /** If one wire is lost: the ampacity of the others, and the greater current; absent if they carry it. */
  readonly lost?: Lost;
  /** The number of other runs with a reason for the finding. */
  readonly others: number;
  readonly source: string;
}

interface Lost {
  readonly ampacityA: number;
  readonly currentA: number;
  readonly by: "load" | "device";
}

function check({ circuits }: JudgedPlan): Found<Values>[] {
  const doubled = circuits
    .map(({ circuit }) => circuit)
    .filter(({ conductor }) => conductor.parallel > 1)
    .sort((one, other) => one.record - other.record);
  const found = doubled.flatMap((circuit) => {
    const lost = ifOneIsLost(circuit);
    const smallerThanAllowed = isBelowLeast(circuit);
    return lost || smallerThanAllowed ? [{ circuit, lost, smallerThanAllowed }] : [];
  });
  const excess = ({ lost }: (typeof found)[number]) => (lost ? lost.currentA / lost.ampacityA : 0);
  const [worst, ...others] = found.sort((one, other) => excess(other) - excess(one));
  // Always at the same run: a change elsewhere does not move the finding.
  const [first] = doubled;
  if (!worst || !first) return [];
  const { circuit, lost, smallerThanAllowed } = worst;
  const values: Values = {
    name: circuit.name,
    size: sizeInWords(circuit.conductor),
    smallerThanAllowed,
    ...(lost && { lost }),
    others: others.length,
    source: sourceInWords(parallelConductors.source),
  };
  const related = [worst, ...others]
    .slice(0, mostRelated)
    .map((one) => ({ at: atProperty(one.circuit, "parallel"), text: one.circuit.name }));
  return [{ subject: first.name, at: atProperty(first, "parallel"), values, related }];
}

const mostRelated = 8;

function ifOneIsLost(circuit: Run): Lost | undefined {
  const { conductor, protection, protectionFarEnd } = circuit;
  const rest = ampacityOf({ ...circuit, conductor: { ...conductor, parallel: conductor.parallel - 1 } });
  const deviceA = Math.min(...[protection, protectionFarEnd].flatMap((device) => device?.ratingA ?? []));
  if (!rest.judged) return undefined;
  const { ampacityA } = rest;
  const currentA = designCurrentA(circuit);
  if (exceeds(currentA, ampacityA)) return { ampacityA, currentA, by: "load" };
  const isLetThrough = Number.isFinite(deviceA) && exceeds(deviceA, ampacityA);
  return isLetThrough ? { ampacityA, currentA: deviceA, by: "device" } : undefined;
}

/** 1/0 AWG is 53.5 mm²: of the metric sizes, 70 mm² is the first that is not smaller; 50 mm² is sold as its equal. */
function isBelowLeast({ conductor }: Run): boolean {
  return conductor.system === "awg"
    ? typeof conductor.awg === "number"
    : conductor.mm2 < parallelConductors.leastMm2;
}
