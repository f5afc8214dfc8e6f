import { endsAt, mountedAt } from "../../analysis/network/topology/ends-at.ts";
import type { FusePanelPart, Network } from "../../model/network.ts";
import type { FuseFamily } from "../../plan/sizes.ts";
import { deviceFamilies } from "../../standards/device-ratings.ts";
import { atFamily } from "../fixes/chosen-device.ts";
import { type PlacedDevice, placedDevice, placedPart } from "../fixes/placed-device.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule, type Found, inNetwork } from "../rule.ts";
import { atPart, partInWords } from "../wording/part-in-words.ts";

export const fuseFamily = defineRule<Values>({
  id: "panel/fuse-family",
  title: "Fuse of another family than its panel takes",
  severity: "warning",
  why: "A fuse that does not fit its position is wired in beside it without a holder, or another one is bought in a hurry.",
  sources: [ownRequirement("A fuse is of the family that its position in the panel takes.")],
  fixable: true,
  acceptable: true,
  // Needs the devices at the branches of each panel that states a family. Silent on a panel that states none.
  check: (plan) =>
    inNetwork(plan, ({ network }) =>
      network.parts.flatMap((part) => (part.kind === "fusePanel" ? notFitting(network, part) : [])),
    ),
  message: ({ stated, panel, takes }) =>
    `${stated} does not fit ${panel}, whose branches take ${takes} (branchFamily): use one of that family, or correct the family of the panel.`,
});

interface Values {
  readonly stated: string;
  readonly panel: string;
  readonly takes: string;
}

function notFitting(network: Network, panel: FusePanelPart): Found<Values>[] {
  const { branchFamily } = panel;
  if (branchFamily === undefined) return [];
  return devicesIn(network, panel).flatMap((placed): Found<Values>[] => {
    const { family } = placed.protection;
    if (family === undefined || fits(family, branchFamily)) return [];
    // A part that is a breaker has no family to change.
    const isBreakerPart = placed.part?.kind === "breaker";
    const at = isBreakerPart ? placed.at : atFamily(placed);
    return [
      {
        subject: placed.subject,
        at,
        values: {
          stated: family === "circuit breaker" ? "A circuit breaker" : `A fuse of ${family}`,
          panel: partInWords(panel),
          takes: familiesInWords(branchFamily),
        },
        related: [{ at: atPart(panel, "branchFamily"), text: `Each branch, ${branchFamily}` }],
        fixes:
          isBreakerPart || (branchFamily === "circuit breaker" && placed.part)
            ? []
            : [
                {
                  title: `Use the family of the panel, ${branchFamily}`,
                  kind: "suggestion",
                  changes: [{ do: "set", ...at, value: branchFamily }],
                },
              ],
      },
    ];
  });
}

/** The devices in its positions: those of conductors that begin or end at a branch, and those mounted there. */
function devicesIn(network: Network, { terminals: { branch } }: FusePanelPart): readonly PlacedDevice[] {
  const inConductors = endsAt(network, branch).flatMap(({ from, near, far }) => {
    const device = from === branch ? near : far;
    return device ? [placedDevice(network, device.index)] : [];
  });
  const mounted = mountedAt(network, branch).map((part) => placedPart(network, part));
  return [...inConductors, ...mounted].filter((placed) => placed !== undefined);
}

/** Breakers are made in the form of blade fuses. */
function fits(family: FuseFamily, takes: FuseFamily): boolean {
  if (family === takes) return true;
  return family === "circuit breaker" && deviceFamilies[takes].form.startsWith("blade");
}

function familiesInWords(family: FuseFamily): string {
  return family === "circuit breaker" ? "circuit breakers" : `fuses of ${family}`;
}
