import type { Run } from "../model/run.ts";
import { workedOutOnce } from "../model/worked-out-once.ts";
import { byName } from "./by-name.ts";
import { groupedBy } from "./grouped-by.ts";
import type { Judged } from "./supply-path-drop.ts";

/**
 * The other cable of each feed, by record of a run: one cable on the positive and one on the negative side of the same supply paths,
 * with as many wires in parallel and about the same length. Both conductors of a feed are bought and laid as a pair: common practice, no
 * source. Their sizes in the plan do not matter: a repair may reach one of them first.
 */
export const feedPairs: (judged: Judged) => ReadonlyMap<number, Run> = workedOutOnce(
  ({ network, result }: Judged) => {
    const onPaths = result.supplyPaths.flatMap(({ legs }, path) =>
      legs.map(({ conductor }) => ({ conductor, path })),
    );
    const cables = [...groupedBy(onPaths, ({ conductor }) => conductor)].flatMap(([conductor, on]) => {
      const { role, run } = network.conductors[conductor]!;
      const side = result.topology.conductorSides[conductor];
      return role === "cable" ? [{ run, side, paths: on.map(({ path }) => path).join(" ") }] : [];
    });
    const pairs = new Map<number, Run>();
    for (const onSamePaths of groupedBy(cables, ({ paths }) => paths).values()) {
      const runsOn = (wanted: "positive" | "negative") =>
        onSamePaths.flatMap(({ run, side }) => (side === wanted ? [run] : []));
      const [positive, negative] = [runsOn("positive"), runsOn("negative")];
      for (const one of positive) {
        const other = nearestInLength(one, negative);
        if (!other || nearestInLength(other, positive) !== one) continue;
        pairs.set(one.record, other);
        pairs.set(other.record, one);
      }
    }
    return pairs;
  },
);

/** Of the runs that may be the other one of a pair, the one whose length differs least. */
function nearestInLength(run: Run, others: readonly Run[]): Run | undefined {
  const [nearest] = others
    .flatMap((other) => {
      const differenceM = isAlike(run, other) ? lengthDifferenceM(run, other) : undefined;
      return differenceM === undefined ? [] : [{ other, differenceM }];
    })
    .sort((one, next) => one.differenceM - next.differenceM || byName(one.other, next.other));
  return nearest?.other;
}

function isAlike({ conductor }: Run, { conductor: other }: Run): boolean {
  return conductor.system === other.system && conductor.parallel === other.parallel;
}

/** Undefined: a length is unknown, or they differ too much for a pair. */
function lengthDifferenceM({ positiveM: oneM }: Run, { positiveM: otherM }: Run): number | undefined {
  if (oneM === undefined || otherM === undefined) return undefined;
  const differenceM = Math.abs(oneM - otherM);
  return differenceM <= mostDifference * Math.min(oneM, otherM) ? differenceM : undefined;
}

/** Our choice, a share of the shorter one: the two of a pair end at terminals that are not quite beside each other. */
const mostDifference = 1 / 4;
