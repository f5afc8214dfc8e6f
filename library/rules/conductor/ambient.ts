import { ampacityOf, inDecidingPlace, ratedColumnsC } from "../../analysis/ampacity.ts";
import { designCurrentA } from "../../analysis/design-current.ts";
import type { Run } from "../../model/run.ts";
import type { InsulationC } from "../../plan/sizes.ts";
import { ambientCorrection } from "../../standards/ambient-nfpa70.ts";
import { engineSpace60C } from "../../standards/ampacity-iso10133.ts";
import type { ProposedFix } from "../finding.ts";
import { atProperty, defineRule, perRun } from "../rule.ts";
import { formatDistinctWithUnit, withUnit } from "../wording/format-number.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

export const ambient = defineRule<Values>({
  id: "conductor/ambient",
  title: "Ambient temperature too high for the insulation",
  formerTitles: ["Place too hot for the insulation"],
  severity: "error",
  why: "If the air is already as hot as the insulation may get, any current takes it above that, and it ages, cracks or melts.",
  sources: [ambientCorrection.source, engineSpace60C.source],
  fixable: true,
  acceptable: true,
  // Needs the ampacity, which is not judged in such a place.
  check: (plan) =>
    perRun(plan, ({ circuit, result: { ampacity } }) => {
      if (ampacity.judged || ampacity.why !== "place-too-hot") return [];
      const enoughC = coolestThatCarries(circuit);
      const there = inDecidingPlace(circuit);
      const values: Values = {
        columnC: ampacity.columnC,
        insulationStated: circuit.insulationStated,
        ambientC: ampacity.ambientC,
        engineSpace: there.engineSpace,
        ...(there.place !== undefined && { at: there.place }),
        ...(byTheTable(there, ampacity.columnC) ? { source: sourceInWords(engineSpace60C.source) } : {}),
        enoughC,
      };
      const fixes = enoughC === undefined ? [] : [useInsulation(circuit, enoughC)];
      return [{ at: atProperty(circuit, ...wrongProperty(there)), values, fixes }];
    }),
  message({ columnC, insulationStated, ambientC, engineSpace, at, source, enoughC }) {
    const [place, insulation] = formatDistinctWithUnit(ambientC, columnC, "°C");
    const what = `Insulation ${insulationStated ? "judged" : "not stated, taken"} as ${insulation}`;
    const where = `${engineSpace ? "an engine space" : "a place"} of ${place}${at ? ` (${at})` : ""}`;
    const way =
      enoughC === undefined
        ? "choose a cooler route, or insulation for hotter places"
        : `choose insulation rated ${withUnit(enoughC, "°C")}, or a cooler route`;
    return `${what}: its ampacity is zero in ${where}${source ? ` (${source})` : ""}; ${way}.`;
  },
});

interface Values {
  /** The table's column at or below the stated rating. */
  readonly columnC: number;
  readonly insulationStated: boolean;
  readonly ambientC: number;
  readonly engineSpace: boolean;
  /** The place on its way that decides, if its surroundings differ along it. */
  readonly at?: string;
  /** Present if a table sets the limit. A stated ambient above the rating needs no source. */
  readonly source?: string;
  /** The lowest rating that carries the load there; undefined if none in the tables does with this size. */
  readonly enoughC: number | undefined;
}

/** Metric insulation of 60 °C has no factor for engine spaces, at any ambient that the plan states. */
function byTheTable({ engineSpace, ambientStated, ambientC }: Run, columnC: number): boolean {
  return engineSpace && !(ambientStated && ambientC >= columnC);
}

/** The value to look at first: the rating if the builder gave one, else the property that makes the place hot; none for a place on its way. */
function wrongProperty({ insulationStated, place, ambientStated }: Run): readonly string[] {
  if (insulationStated) return ["insulationC"];
  if (place !== undefined) return [];
  return [ambientStated ? "ambientC" : "engineSpace"];
}

/** The lowest rating in the tables with which this size carries the load, and is protected, in this place. */
function coolestThatCarries(circuit: Run): InsulationC | undefined {
  const { protection, protectionFarEnd } = circuit;
  const neededA = Math.max(designCurrentA(circuit), protection?.ratingA ?? 0, protectionFarEnd?.ratingA ?? 0);
  return ratedColumnsC(circuit.conductor.system).find((insulationC) => {
    const ampacity = ampacityOf({ ...circuit, insulationC });
    return ampacity.judged && ampacity.ampacityA >= neededA;
  });
}

/** A suggestion, never a repair: only the builder can make sure that the wire is marked so. */
function useInsulation(circuit: Run, insulationC: InsulationC): ProposedFix {
  return {
    title: `Use insulation rated ${insulationC} °C`,
    kind: "suggestion",
    changes: [{ do: "set", record: circuit.record, path: ["insulationC"], value: insulationC }],
  };
}
