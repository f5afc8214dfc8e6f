import { inverterSurges } from "../../analysis/inverter-surge.ts";
import { sourceOfFigure } from "../../model/part-roles.ts";
import { cutOffVoltage, inverterEfficiency } from "../../standards/device-practice.ts";
import { internalResistance } from "../../standards/internal-resistance.ts";
import { surgeVoltage } from "../../standards/machine-practice.ts";
import { defineRule, inNetwork } from "../rule.ts";
import { formatDistinctWithUnit, withUnit } from "../wording/format-number.ts";
import { atPart, scenarioInWords } from "../wording/part-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

export const inverterSurge = defineRule<Values>({
  id: "inverter/surge",
  title: "Inverter switches off during its surge",
  severity: "warning",
  why: "A motor behind the inverter draws its surge for seconds: if battery and cables let the voltage fall below the cut-off, the motor never starts.",
  sources: [surgeVoltage, cutOffVoltage.source, inverterEfficiency.source, internalResistance.source],
  fixable: false,
  acceptable: true,
  // Needs the voltage at each inverter while it gives its surge power. Information if the internal resistance is not stated.
  check: (plan) =>
    inNetwork(plan, (judged) =>
      inverterSurges(judged).flatMap(({ inverter, scenario, voltageV, estimated }) => {
        const { surgeW = 0, cutOffV } = inverter;
        if (voltageV !== undefined && voltageV >= cutOffV * withinBlur) return [];
        const values: Values = {
          surgeW,
          cutOffV,
          voltageV,
          estimated,
          scenario: scenarioInWords(judged.network, scenario),
          source: sourceInWords(sourceOfFigure(inverter, "cutOffV")),
        };
        return [
          {
            subject: inverter.name,
            at: atPart(inverter, "surgeW"),
            ...(estimated && { severity: "info" as const }),
            values,
          },
        ];
      }),
    ),
  message({ surgeW, cutOffV, voltageV, estimated, scenario, source }) {
    const [gets, needs] = formatDistinctWithUnit(voltageV ?? 0, cutOffV, "V");
    const sags = voltageV === undefined ? "the voltage collapses" : `only ${gets} arrive`;
    const guess = estimated ? " (estimated: the internal resistance of the battery is not stated)" : "";
    return `At its surge of ${withUnit(surgeW, "W")} ${sags} with the battery as ${scenario}${guess}; it switches off below ${needs} (${source}): thicker supply, more batteries in parallel, or less at once.`;
  },
});

/** The solver's relative error is about 1e-9. */
const withinBlur = 1 - 1e-9;

interface Values {
  readonly surgeW: number;
  readonly cutOffV: number;
  /** Undefined: there is no voltage at which it could draw that power. */
  readonly voltageV: number | undefined;
  readonly estimated: boolean;
  readonly scenario: string;
  readonly source: string;
}
