import { type Ventilation, ventilations } from "../../analysis/placement/battery-ventilation.ts";
import { batteryVentilation } from "../../standards/battery-ventilation.ts";
import { defineRule, type Found } from "../rule.ts";
import { exceeds, formatDistinct, formatRounded } from "../wording/format-number.ts";
import { listInWords, partInWords, relatedPart } from "../wording/part-in-words.ts";
import { atRecord } from "../wording/placement-in-words.ts";
import { sourceInWords, unconfirmedAmong } from "../wording/source-in-words.ts";

export const batteryVentilationTooSmall = defineRule<Values>({
  id: "placement/battery-ventilation",
  title: "Ventilation of a lead-acid battery",
  severity: "warning",
  why: "Lead-acid batteries give off hydrogen while they are charged: 4 % of it in the air of a closed space explodes at a spark.",
  sources: [
    batteryVentilation.stationary,
    batteryVentilation.stationaryBoost,
    batteryVentilation.traction,
    batteryVentilation.boats,
  ],
  fixable: false,
  acceptable: true,
  // Needs the flow of air that the batteries of each compartment need. Information if an opening is not stated.
  check({ placement, network, model }): Found<Values>[] {
    if (!placement || !network) return [];
    return ventilations(placement, network.network, model.build.installedIn).flatMap(
      (one): Found<Values>[] => {
        const compartment = placement.layout.compartments[one.compartment]!;
        const { inletCm2, outletCm2 } = compartment;
        const small = (
          [
            ["inletCm2", inletCm2],
            ["outletCm2", outletCm2],
          ] as const
        ).filter(([, stated]) => stated === undefined || exceeds(one.areaCm2, stated));
        const [worst] = small.sort(
          ([, first = Number.POSITIVE_INFINITY], [, second = Number.POSITIVE_INFINITY]) => first - second,
        );
        if (!worst) return [];
        const isStated = worst[1] !== undefined;
        return [
          {
            subject: compartment.name,
            at: atRecord(compartment, ...(isStated ? [worst[0]] : [])),
            ...(!isStated && { severity: "info" }),
            values: {
              ...{ flowM3h: one.flowM3h, areaCm2: one.areaCm2, by: one.by, isEither: one.isEither },
              opening: worst[0] === "inletCm2" ? "inlet" : "outlet",
              statedCm2: worst[1],
              batteries: one.batteries.map(partInWords),
              source: `${sourceInWords(one.sources[0])}${unconfirmedAmong(one.sources)}`,
            },
            related: one.batteries.slice(0, mostRelated).map((battery) => relatedPart(battery)),
          },
        ];
      },
    );
  },
  message({ flowM3h, areaCm2, by, isEither, opening, statedCm2, batteries, source }) {
    const place = isEither
      ? "the stricter one, as installedIn is not stated"
      : by === "stationary"
        ? "for a building"
        : "for a vehicle or boat";
    const needed = `${listInWords(batteries, 3)} ${batteries.length === 1 ? "needs" : "need"} ${formatRounded(flowM3h)} m³/h of air in charging`;
    if (statedCm2 === undefined)
      return `Openings are not stated: ${needed}, an inlet and an outlet of ${formatRounded(areaCm2)} cm² each (${source}, ${place}). State inletCm2 and outletCm2.`;
    const [stated, least] = formatDistinct(statedCm2, areaCm2);
    return `The ${opening} of ${stated} cm² is too small: ${needed}, an inlet and an outlet of ${least} cm² each (${source}, ${place}).`;
  },
});

interface Values extends Pick<Ventilation, "flowM3h" | "areaCm2" | "by" | "isEither"> {
  readonly opening: "inlet" | "outlet";
  readonly statedCm2: number | undefined;
  readonly batteries: readonly string[];
  readonly source: string;
}

const mostRelated = 4;
