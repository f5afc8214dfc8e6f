import { repairSizing } from "../../analysis/repair-sizing.ts";
import { isDevice } from "../../model/part-roles.ts";
import type { ProposedFix } from "../finding.ts";
import { type Device, type JudgedDevice, perDevice, ratingFix, theDevice } from "../fixes/judged-devices.ts";
import { placedPart } from "../fixes/placed-device.ts";
import { runFixes } from "../fixes/sized-fix.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule, type JudgedPlan } from "../rule.ts";
import { exceeds, formatDistinctWithUnit } from "../wording/format-number.ts";
import { wayOut } from "../wording/way-out.ts";

export const holderRating = defineRule<Values>({
  id: "protection/holder-rating",
  title: "Fuse above the rating of its holder",
  severity: "error",
  why: "The contacts and wires of a fuse holder overheat above its rating: its plastic melts around a fuse that never blows.",
  sources: [ownRequirement("The maker of a fuse holder marks it with the largest fuse that it takes.")],
  fixable: true,
  acceptable: true,
  // Needs the rating of each fuse and that of its holder, as the plan states both. Silent on holders without a rating.
  check: (plan) =>
    perDevice(plan, (judged) => {
      const { device, protection, at } = judged;
      const { holderRatedA } = protection;
      if (holderRatedA === undefined || !exceeds(device.ratingA, holderRatedA)) return [];
      const fixes = lesserFuse(plan, judged);
      return [
        {
          at,
          values: { device, holderRatedA, isMended: fixes.length > 0, wayOut: wayOut(fixes, "") },
          fixes,
        },
      ];
    }),
  message({ device, holderRatedA, isMended, wayOut: way }) {
    const [rating, holder] = formatDistinctWithUnit(device.ratingA, holderRatedA, "A");
    const greater = `a holder rated ${rating} or more`;
    return `${theDevice(device)} is in a holder rated ${holder} (holderRatedA): ${isMended ? `${way}, or` : "use"} ${greater}.`;
  },
});

interface Values {
  readonly device: Device;
  readonly holderRatedA: number;
  readonly isMended: boolean;
  readonly wayOut: string;
}

/** The rating that the run or part should have, if that is one that the holder takes. */
function lesserFuse(plan: JudgedPlan, { run, device, protection, properties }: JudgedDevice): ProposedFix[] {
  if (run) {
    const fixes = runFixes(plan, run.circuit, "protection/holder-rating");
    return fixes.filter(({ changes }) =>
      changes.some(({ path, ...change }) => path[0] === device.end && change.do === "set"),
    );
  }
  const { network } = plan.network ?? {};
  const part = network?.parts.find(({ record }) => record === properties.record);
  const placed = network && part && isDevice(part) ? placedPart(network, part) : undefined;
  const ratingA = placed && repairSizing(plan).ratingOf(placed.protection);
  return placed && ratingA !== undefined && ratingA <= (protection.holderRatedA ?? 0)
    ? [ratingFix(placed, ratingA)]
    : [];
}
