import { pumpsBehindMainSwitches } from "../../analysis/device-uses.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule, inNetwork } from "../rule.ts";
import { atPart, partInWords, relatedPart } from "../wording/part-in-words.ts";

export const bilgePump = defineRule<Values>({
  id: "disconnect/bilge-pump",
  title: "Bilge pump behind the main switch",
  severity: "info",
  why: "On leaving the boat its owner turns the main switch off, and with it the pump that keeps the boat afloat.",
  sources: [
    ownRequirement(
      "An automatic bilge pump stays on when the boat is left: it is fed ahead of the main switch.",
    ),
  ],
  fixable: false,
  acceptable: true,
  ignoresLoads: "entirely",
  // Needs the switches that hands turn, and the devices that each of them turns off. A switch of the pump alone is no main switch.
  check: (plan) =>
    inNetwork(plan, ({ network }) =>
      pumpsBehindMainSwitches(network).map(({ pump, mainSwitch }) => ({
        subject: pump.name,
        at: atPart(pump),
        values: { mainSwitch: partInWords(mainSwitch) },
        related: [relatedPart(mainSwitch)],
      })),
    ),
  message: ({ mainSwitch }) =>
    `Is off as soon as ${mainSwitch} is (common practice, no source): feed an automatic bilge pump ahead of the switch, with a fuse of its own at the battery.`,
});

interface Values {
  /** "the main switch" */
  readonly mainSwitch: string;
}
