import { nearFixtures } from "../../analysis/placement/near-fixtures.ts";
import type { BoardUnit } from "../../model/length-unit.ts";
import { boardUnitOf } from "../../model/unit-of-plan.ts";
import { distanceFromFuel, distanceFromHeat } from "../../standards/conductor-ways.ts";
import { defineRule, type Found } from "../rule.ts";
import { distinctShortLengths, shortLengthInUnit } from "../wording/lengths.ts";
import { conductorInWords } from "../wording/part-in-words.ts";
import { atRecord, relatedLead } from "../wording/placement-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

export const conductorClearance = defineRule<Values>({
  id: "placement/conductor-clearance",
  title: "Conductors too near a fixture",
  severity: "warning",
  why: "Heat ages insulation, a spark beside a fuel or gas line can light it, and a current beside a compass turns it.",
  sources: [distanceFromHeat.source, distanceFromFuel.source],
  fixable: false,
  acceptable: true,
  // Needs the distances of conductors from fixtures. Information between the least distance from heat and the one to aim at.
  check({ placement }): Found<Values>[] {
    if (!placement) return [];
    const { channels, leads } = placement.layout;
    return nearFixtures(placement).map((near): Found<Values> => {
      const { fixture, channel: index, leastMm, leastStated, aimMm, distanceMm } = near;
      const [nearest, ...others] = near.leads.map((lead) => leads[lead]!) as [(typeof leads)[number]];
      const channel = index === undefined ? undefined : channels[index]!;
      const source = fixture.fixture === "source of heat" ? distanceFromHeat.source : distanceFromFuel.source;
      return {
        subject: (channel ?? nearest).name,
        at: channel ? atRecord(channel, "path") : atRecord(nearest),
        ...(distanceMm >= leastMm && { severity: "info" }),
        values: {
          unit: boardUnitOf(placement.layout),
          ...{ fixture: fixture.name, distanceMm, leastMm, aimMm },
          conductor: conductorInWords(nearest),
          others: others.length,
          inConduitNone: fixture.fixture === "fuel line" || fixture.fixture === "gas line",
          source: leastStated ? "as stated" : sourceInWords(source),
        },
        related: [nearest, ...others].slice(0, mostRelated).map(relatedLead),
      };
    });
  },
  message({ fixture, distanceMm, leastMm, aimMm, conductor, others, inConduitNone, unit, source }) {
    const which = others === 0 ? conductor : `${conductor} and ${others} more`;
    const isEnough = distanceMm >= leastMm;
    const [distance, limit] = distinctShortLengths(distanceMm, isEnough ? (aimMm ?? leastMm) : leastMm, unit);
    const verb = others === 0 ? "passes" : "pass";
    if (isEnough)
      return `${capitalised(which)} ${verb} ${fixture} at ${distance}: that is permitted, ${limit} is better (${source}).`;
    const aim = aimMm === undefined ? "" : `, better ${shortLengthInUnit(aimMm, unit)}`;
    const them = others === 0 ? "it" : "them";
    const way = inConduitNone ? `lead ${them} elsewhere, or in a conduit` : `lead ${them} elsewhere`;
    return `${capitalised(which)} ${verb} ${fixture} at ${distance}: keep at least ${limit} away${aim} (${source}); ${way}.`;
  },
});

function capitalised(text: string): string {
  return text.replace(/^the /, "The ");
}

interface Values {
  readonly fixture: string;
  readonly distanceMm: number;
  readonly leastMm: number;
  readonly aimMm: number | undefined;
  /** The nearest. */
  readonly conductor: string;
  readonly others: number;
  /** In a conduit none is needed. */
  readonly inConduitNone: boolean;
  readonly unit: BoardUnit;
  readonly source: string;
}

const mostRelated = 4;
