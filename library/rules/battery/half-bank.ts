import { tappedStrings } from "../../analysis/half-bank.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule, inNetwork } from "../rule.ts";
import { withUnit } from "../wording/format-number.ts";
import { atPart, atStart, listInWords, partInWords, relatedPart } from "../wording/part-in-words.ts";

const wholeBank = ownRequirement(
  "Everything is connected across the whole of a series bank, unless an equaliser keeps its batteries alike.",
);

export const halfBank = defineRule<Values>({
  id: "battery/half-bank",
  title: "Load or charger on part of a bank",
  formerTitles: ["Load on part of a series bank"],
  severity: "warning",
  why: "The batteries that feed the load are emptied first; the charger, which sees only the sum, then overcharges the others. A charger on a part leaves the rest with less charge or none: the load empties it first, and may reverse its polarity.",
  sources: [wholeBank],
  fixable: false,
  acceptable: true,
  // Needs the strings of batteries, and the devices between their terminals. Chargers may serve single
  // batteries, if each battery has one: that keeps them alike. An error if one of them is never charged.
  check: (plan) =>
    inNetwork(plan, ({ network, result }) =>
      tappedStrings(network, result.topology.banks).map(({ does, ports, partV, wholeV }) => {
        const [{ part: first }] = ports as readonly [(typeof ports)[number]];
        const values: Values = {
          does,
          devices: ports.map(({ part }) => partInWords(part)),
          areInverters: ports.every(({ part }) => part.kind === "inverter"),
          partV,
          wholeV,
        };
        const others = ports.slice(1, mostRelated).map(({ part }) => relatedPart(part));
        return {
          subject: first.name,
          at: atPart(first),
          ...(does === "feeds" && { severity: "error" as const }),
          values,
          related: others,
        };
      }),
    ),
  message({ does, devices, areInverters, partV, wholeV }) {
    if (does === "feeds") {
      const charges = devices.length > 1 ? "charge" : "charges";
      return `${atStart(listInWords(devices))} ${charges} ${withUnit(partV, "V")} of a bank of ${withUnit(wholeV, "V")}: the rest gets less charge or none, is emptied first, and may be reversed. Charge the whole bank, or each battery with a charger of its own.`;
    }
    const [draw, them] = devices.length > 1 ? ["draw", "them"] : ["draws", "it"];
    const way = areInverters
      ? `Use an inverter for ${withUnit(wholeV, "V")} on the whole bank.`
      : `Feed ${them} from the whole bank through a DC-DC converter.`;
    return `${atStart(listInWords(devices))} ${draw} from ${withUnit(partV, "V")} of a bank of ${withUnit(wholeV, "V")}: that part is emptied first, and the charger then overcharges the rest. ${way}`;
  },
});

const mostRelated = 8;

interface Values {
  readonly does: "draws" | "feeds";
  readonly devices: readonly string[];
  /** All of them are inverters, which are made for the voltage of a bank. */
  readonly areInverters: boolean;
  readonly partV: number;
  readonly wholeV: number;
}
