import { spanner } from "../../standards/placement-distances.ts";
import { bodyInWords, type OfFault, onSurface, perBodyFault } from "../board.ts";
import { moveFixes } from "../fixes/moved-body.ts";
import { defineRule } from "../rule.ts";

export const placementBusBars = defineRule<Values>({
  id: "placement/bus-bars",
  title: "Bus bars of both polarities within a spanner",
  severity: "warning",
  why: "A spanner that touches both bars shorts the bank: it welds itself on, glows, and burns the hand that holds it.",
  sources: [spanner.source],
  fixable: true,
  acceptable: true,
  // Needs the places of two bus bars, and their polarity from the connections. Covered terminals of one of them are enough.
  check: (plan) =>
    perBodyFault(plan, "bus bars", ({ fault, body }) => ({
      other: fault.other,
      severity: fault.isBare ? "warning" : "info",
      values: {
        other: bodyInWords(plan, fault.other),
        is: onSurface(body, fault.isMm),
        spanner: onSurface(body, spanner.lengthMm),
        isBare: fault.isBare,
      },
    })),
  whenAsked: moveFixes,
  message: ({ other, is, spanner, isBare }) =>
    `${is} from ${other}, which has the other polarity: a spanner of ${spanner} reaches both (common practice, no source). ${isBare ? "Cover one of them, or move them apart." : "State terminalsCovered if one of them has a cover; else move them apart."}`,
});

interface Values extends OfFault {
  readonly other: string;
  readonly is: string;
  readonly spanner: string;
  readonly isBare: boolean;
}
