import { awgSizes, duplexCables, mm2Sizes, terminations } from "./allowed-values.ts";
import { amount, count, listOf, listsOnly, ofPlaces, oneOf, shortText, yesOrNo } from "./property.ts";
import { propertyTable } from "./property-table.ts";

/*
 * Allowed values of the properties that serve only lists and labels. None of them prevents a check. The maxima catch slips
 * (a decimal point, another unit). For a build that really needs more, raise the number here and in the manual in
 * `library/plan`.
 */

export const colour = shortText("a colour", 40);
export const label = shortText("a label", 40);
export const termination = listsOnly(oneOf(terminations, "is not one of the terminations"));
/** The maximum is well above the torque for a stud of 12 mm. */
export const torque = listsOnly(amount("a torque", "N·m", { above: 0, upTo: 200 }));
export const price = listsOnly(amount("a price", "", { from: 0, upTo: 1_000_000 }));

const spool = propertyTable(
  {
    gauge: oneOf(awgSizes, "is not one of the sizes"),
    mm2: oneOf(mm2Sizes, "is not one of the sizes"),
    lengthFt: amount("a length", "ft", { above: 0, upTo: 10_000 }),
    lengthM: amount("a length", "m", { above: 0, upTo: 3_000 }),
    sheathed: oneOf(duplexCables, "is not one of the two-conductor cables"),
    colour,
    price,
  },
  {
    unknown: "is not a property of a spool",
    choices: [
      { ways: [["lengthFt"], ["lengthM"]], needed: "a length" },
      { ways: [["gauge"], ["mm2"]], needed: "a size" },
    ],
  },
);

/** Properties of `build`. */
export const ofBench = {
  slackPercent: ofPlaces(amount("a share of the length", "%", { from: 0, upTo: 100 })),
  endSlackMm: listsOnly(amount("a length", "mm", { from: 0, upTo: 1_000 })),
  endSlackIn: listsOnly(amount("a length", "in", { from: 0, upTo: 40 })),
  spareFuses: listsOnly(count({ from: 0, upTo: 100 })),
  positiveColour: colour,
  negativeColour: colour,
  currency: shortText("a currency", 10),
  wireByLength: listsOnly(yesOrNo()),
  spools: listsOnly(
    listOf(spool, {
      allowed: "a list of up to 200 spools, such as [{ gauge: 10, lengthFt: 100 }]",
      most: 200,
    }),
  ),
};
