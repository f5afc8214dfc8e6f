import { statedInPlan } from "../../model/stated-in-plan.ts";
import { fromPetrol } from "../../standards/placement-distances.ts";
import { distinctOnSurface, type OfFault, perBodyFault } from "../board.ts";
import { moveFixes } from "../fixes/moved-body.ts";
import { defineRule } from "../rule.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

export const placementFixture = defineRule<Values>({
  id: "placement/fixture",
  title: "Part too near a fixture",
  severity: "warning",
  why: "A spark ignites petrol vapour, a current turns a compass away from north, and heat ages a part.",
  sources: [fromPetrol.source, statedInPlan(undefined)],
  fixable: true,
  acceptable: true,
  // Needs the fixtures of a surface: the distance that each states, or the published one of petrol vapour.
  check: (plan) =>
    perBodyFault(plan, "fixture", ({ fault, body, surface }) => {
      const fixture = surface.fixtures.find(({ index }) => index === fault.fixture)!;
      const [is, needs] = distinctOnSurface(body, fault.isMm, fault.needsMm);
      const at = { record: surface.record, path: ["fixtures", String(fault.fixture)] };
      const isStated = fixture.distanceMm !== undefined;
      return {
        related: [{ at, text: fixture.name }],
        values: {
          fixture: fixture.name,
          ...{ is, needs, isOn: fault.isOn && fault.needsMm === 0 },
          ofPetrol: fixture.fixture === "petrol engine" && !isStated,
          source: sourceInWords(isStated ? statedInPlan(undefined) : fromPetrol.source),
        },
      };
    }),
  whenAsked: moveFixes,
  message({ fixture, is, needs, isOn, ofPetrol, source }) {
    if (isOn) return `Covers ${fixture}: move one of them.`;
    const wayOut = ofPetrol
      ? "move it, unless it is marked as ignition protected or a bulkhead is between"
      : "move it";
    return `${is} from ${fixture}, below ${needs} (${source}): ${wayOut}.`;
  },
});

interface Values extends OfFault {
  readonly fixture: string;
  readonly is: string;
  readonly needs: string;
  /** No distance is asked, and the part covers it. */
  readonly isOn: boolean;
  readonly ofPetrol: boolean;
  readonly source: string;
}
