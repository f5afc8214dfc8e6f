import { isMadeRating } from "../../analysis/made-ratings.ts";
import { type Sizing, thinnestWithHeadroom } from "../../analysis/sizing.ts";
import { protectionAtEachSource } from "../../standards/protection-rules.ts";
import type { ProposedFix } from "../finding.ts";
import {
  addingFixes,
  type Device,
  type ProtectedEnd,
  protectedEnds,
  statedWithUnit,
  whyNoRating,
} from "../protected-ends.ts";
import { atProperty, defineRule, type JudgedCircuit, perCircuit } from "../rule.ts";
import { sourceInWords } from "../source-in-words.ts";
import { wayOut } from "../way-out.ts";

export const bothEnds = defineRule<Values>({
  id: "protection/both-ends",
  title: "Fed from both ends, protected at one",
  severity: "error",
  why: "When the fuse at one end blows, the source at the other end goes on feeding the short.",
  sources: [protectionAtEachSource],
  fixable: true,
  acceptable: true,
  // Needs the range of ratings. Without any protection at all it is protection/missing that speaks, for both ends.
  check: (plan) =>
    perCircuit(plan, (judged) => {
      const { circuit, result } = judged;
      if (!circuit.fedFromBothEnds || circuit.protectionFarEnd) return [];
      const [near] = protectedEnds(judged);
      if (!near) return [];
      const fixes = fixesFor(judged, near);
      const values: Values = {
        device: near.device,
        source: sourceInWords(protectionAtEachSource),
        wayOut: wayOut(fixes, whyNoRating(result, near.protection)),
      };
      return [{ at: atProperty(circuit, "fedFromBothEnds"), values, fixes }];
    }),
  message: ({ device, source, wayOut: way }) =>
    `Current can come from both ends, but only the ${statedWithUnit(device.ratingA, "A")} ${device.kind} where the circuit starts is given; each source needs its own (${source}): ${way}.`,
});

interface Values {
  /** The one that is there. */
  readonly device: Device;
  readonly source: string;
  readonly wayOut: string;
}

/** The same device again where it is in order; else the best rating, on a thicker conductor where none fits this one. */
function fixesFor({ circuit }: JudgedCircuit, near: ProtectedEnd): ProposedFix[] {
  const { protection, range } = near;
  const ratingFarEndA = inOrder(near) ? protection.ratingA : range.bestRatingA;
  const sizing: Sizing | undefined =
    ratingFarEndA === undefined
      ? thinnestWithHeadroom(circuit)
      : { conductor: circuit.conductor, ratingA: protection.ratingA, ratingFarEndA };
  return addingFixes(circuit, sizing, { ends: ["protectFarEnd"], like: protection });
}

function inOrder({ protection: { ratingA, family }, range: { aimA, maxA } }: ProtectedEnd): boolean {
  return isMadeRating(ratingA, family) && maxA !== undefined && aimA <= ratingA && ratingA <= maxA;
}
