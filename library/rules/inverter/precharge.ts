import { bankOf, nominalOfBank } from "../../analysis/bank-voltage.ts";
import type { InverterPart } from "../../model/network.ts";
import { precharge as practice } from "../../standards/machine-practice.ts";
import { defineRule, inNetwork, type JudgedNetwork } from "../rule.ts";
import { exceeds, withUnit } from "../wording/format-number.ts";
import { atPart } from "../wording/part-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

export const inverterPrecharge = defineRule<Values>({
  id: "inverter/precharge",
  title: "Large inverter without precharge",
  severity: "info",
  why: "The empty capacitors of a large inverter are nearly a short for a moment: the spark pits switch contacts and can blow the fuse.",
  sources: [practice.source],
  fixable: false,
  acceptable: true,
  // Needs the nominal voltage of the bank that feeds each inverter. A plan does not state a precharge: it is accepted with a reason.
  check: (plan) =>
    inNetwork(plan, (judged) =>
      judged.network.parts.flatMap((part) => {
        if (part.kind !== "inverter" || exceeds(practice.fromW, part.continuousW)) return [];
        const nominalV = nominalOfSupply(judged, part);
        if (nominalV === undefined || exceeds(practice.fromNominalV, nominalV)) return [];
        const values: Values = {
          continuousW: part.continuousW,
          nominalV,
          source: sourceInWords(practice.source),
        };
        return [{ subject: part.name, at: atPart(part, "continuousW"), values }];
      }),
    ),
  message: ({ continuousW, nominalV, source }) =>
    `An inverter of ${withUnit(continuousW, "W")} on ${withUnit(nominalV, "V")} takes a large inrush when it is connected (${source}): charge its capacitors through a resistor first, if it does not do so itself.`,
});

interface Values {
  readonly continuousW: number;
  readonly nominalV: number;
  readonly source: string;
}

/** Undefined if no bank feeds it. */
function nominalOfSupply({ network, result }: JudgedNetwork, { index }: InverterPart): number | undefined {
  const battery = result.supplyPaths.find(({ part }) => part === index)?.battery;
  const bank = battery === undefined ? undefined : bankOf(result.topology, battery);
  return bank && nominalOfBank(network, bank);
}
