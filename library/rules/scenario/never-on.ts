import { isOnInNone } from "../../analysis/single-draw.ts";
import type { Part } from "../../model/network.ts";
import { isCharging, isConsumer } from "../../model/part-roles.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule, type Found, inNetwork } from "../rule.ts";
import { atPart, atStart, listInWords, partInWords, relatedPart } from "../wording/part-in-words.ts";

const everyDeviceInOne = ownRequirement(
  "Every device is on in at least one scenario: the voltage that reaches it, and its current beside others, follow from one.",
);

export const neverOn = defineRule<Values>({
  id: "scenario/never-on",
  title: "Device on in no scenario",
  severity: "info",
  why: "A device that is on in no scenario is switched on all the same, and neither its voltage nor its current beside others was looked at.",
  sources: [everyDeviceInOne],
  fixable: false,
  acceptable: true,
  // Needs only the scenarios. One finding names all such devices: a plan that is short of scenarios may have many.
  check: (plan) =>
    inNetwork(plan, ({ network }): Found<Values>[] => {
      const idle = network.parts.filter((part) => mayBeOn(part) && isOnInNone(network, part));
      const [first, ...others] = idle;
      if (!first) return [];
      return [
        {
          subject: "the plan",
          at: atPart(first),
          values: { devices: idle.map(partInWords) },
          related: others.slice(0, mostRelated).map((part) => relatedPart(part)),
        },
      ];
    }),
  message({ devices }) {
    const [is, its, alone, it] =
      devices.length === 1 ? ["is", "its", "it alone", "it"] : ["are", "their", "each alone", "them"];
    return `${atStart(listInWords(devices))} ${is} on in no scenario that lasts. Conductors, fuses and ratings on ${its} supply path are judged with ${alone}; voltage drop and low voltage are not judged. Add a scenario with ${it} on.`;
  },
});

interface Values {
  /** Never empty. */
  readonly devices: readonly string[];
}

const mostRelated = 16;

/** A controller is on with its array. */
function mayBeOn(part: Part): boolean {
  return isConsumer(part) || (isCharging(part) && part.kind !== "solarController");
}
