import type { SupplyPath } from "../../analysis/network-result.ts";
import type { Thickening } from "../../analysis/way-thickening.ts";
import type { NetworkConductor } from "../../model/network.ts";
import type { ProposedFix, Related } from "../finding.ts";
import type { JudgedNetwork } from "../rule.ts";
import { withUnit } from "../wording/format-number.ts";
import { atConductor, listInWords } from "../wording/part-in-words.ts";
import { setSize, sizeInWords } from "./sized-fix.ts";

/**
 * The fixes for a supply path with too much loss: the one with the least added copper; and if that changes conductors that other
 * loads share, after it the one that does not. Changing other circuits is the builder's decision.
 *
 * `place`: the record of the finding, which needs no name.
 */
export function wayFixes(
  { least, own }: { readonly least: Thickening | undefined; readonly own: Thickening | undefined },
  place: number,
): ProposedFix[] {
  const both = own && own !== least ? [least, own] : [least];
  return both.flatMap((thickening) => (thickening ? [fixOf(thickening, place)] : []));
}

function fixOf({ runs, touchesOthers }: Thickening, place: number): ProposedFix {
  const words = runs.map(({ run, conductor }) => {
    const where = run.record === place ? (runs.length > 1 ? " here" : "") : ` for ${run.name}`;
    return `${sizeInWords(conductor)}${where}`;
  });
  return {
    title: `Use ${listInWords(words, 12)}`,
    kind: touchesOthers ? "suggestion" : "repair",
    changes: runs.map(({ run, conductor }) => setSize(run, conductor)),
  };
}

/** The voltage lost on one run of a path, both of its conductors together. */
export interface Loss {
  readonly conductor: NetworkConductor;
  readonly dropV: number;
}

/** The runs of a path, highest loss first. */
export function lossesOn({ network }: JudgedNetwork, way: SupplyPath): readonly Loss[] {
  const losses = new Map<number, Loss>();
  for (const { conductor: index, dropV } of way.legs) {
    const conductor = network.conductors[index];
    if (!conductor) continue;
    const before = losses.get(conductor.record);
    losses.set(conductor.record, {
      conductor: before?.conductor ?? conductor,
      dropV: dropV + (before?.dropV ?? 0),
    });
  }
  return [...losses.values()].sort((one, other) => other.dropV - one.dropV);
}

/** The other places of such a finding: the runs with the highest losses, except its own. */
export function relatedLosses(losses: readonly Loss[], place: number): Related[] {
  return losses
    .filter(({ conductor, dropV }) => conductor.record !== place && dropV > 0)
    .slice(0, mostRelated)
    .map(({ conductor, dropV }) => ({
      at: atConductor(conductor),
      text: `${conductor.name} loses ${withUnit(dropV, "V")}`,
    }));
}

const mostRelated = 3;
