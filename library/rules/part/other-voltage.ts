import { minimumVoltageOf } from "../../model/part-roles.ts";
import { descriptorOf } from "../../model/parts/index.ts";
import { worksFromShare } from "../../standards/machine-practice.ts";
import { atProperty, defineRule, type Found, inNetwork, perRun } from "../rule.ts";
import { exceeds, formatExact, withUnit } from "../wording/format-number.ts";
import { atPart } from "../wording/part-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

export const partOtherVoltage = defineRule<Values>({
  id: "part/other-voltage",
  title: "Device that may be made for less voltage",
  severity: "info",
  why: "A device for 12 V on 24 V burns out as it is switched on, and only its nameplate shows it.",
  sources: [worksFromShare.source],
  fixable: false,
  acceptable: true,
  // Needs the minimum voltage that the plan states for a device that works from a voltage on: the only stated figure that shows for which voltage
  // it is made. Of inverters, whose cut-off voltages are alike, inverter/other-voltage makes an error.
  check: (plan) => [
    ...perRun(plan, ({ circuit }) => {
      const { minimumV, systemV } = circuit;
      if (circuit.inNetwork || minimumV === undefined || !isFarBelow(minimumV, systemV)) return [];
      return [{ at: atProperty(circuit, "minimumV"), values: valuesOf("minimumV", minimumV, systemV) }];
    }),
    ...inNetwork(plan, ({ network, result }) =>
      result.supplyPaths.flatMap(({ part: index, dropV, dropPercent }): Found<Values>[] => {
        const part = network.parts[index]!;
        const property = descriptorOf(part).worksFrom;
        const minimumV = minimumVoltageOf(part);
        if (part.kind === "inverter" || property === undefined || minimumV === undefined) return [];
        const nominalV = (100 * dropV) / dropPercent;
        if (part.taken?.includes(property) || !isFarBelow(minimumV, nominalV)) return [];
        return [
          { subject: part.name, at: atPart(part, property), values: valuesOf(property, minimumV, nominalV) },
        ];
      }),
    ),
  ],
  message: ({ property, minimumV, nominalV, source }) =>
    `Works from ${formatExact(minimumV)} V on (${property}), less than half of the ${withUnit(nominalV, "V")} here; a device for ${withUnit(nominalV, "V")} rarely does (${source}): see on its nameplate that it is made for ${withUnit(nominalV, "V")}.`,
});

interface Values {
  readonly property: string;
  readonly minimumV: number;
  readonly nominalV: number;
  readonly source: string;
}

function valuesOf(property: Values["property"], minimumV: number, nominalV: number): Values {
  return { property, minimumV, nominalV, source: sourceInWords(worksFromShare.source) };
}

function isFarBelow(minimumV: number, nominalV: number): boolean {
  return exceeds(worksFromShare.least * nominalV, minimumV);
}
