import { fuseFamilies } from "../allowed-values.ts";
import { termination, torque } from "../bench-properties.ts";
import { largestConductorOf, largestGauge, largestMm2 } from "../largest-conductor.ts";
import { rating } from "../part-properties.ts";
import { count, oneOf, yesOrNo } from "../property.ts";
import { behaviourInShort, behaviourOf } from "../protection-properties.ts";
import type { Protection } from "../run.ts";
import { definePart, type Fastening, fasteningOf, type PartOf } from "./define-part.ts";
import { defaulted, input, optional, required } from "./part-property.ts";
import { ratingOfBusOrPanel } from "./silences.ts";
import { terminalRating } from "./terminal-rating.ts";

/** `feed` and `branch` are one piece of metal; the fuse of a branch belongs to the conductor that leaves it. */
export const fusePanel = definePart("fusePanel", {
  called: { word: "fuse panel", saidBy: /panel/i },
  role: "passes current on",
  terminals: {
    feed: { side: "positive", words: "the feed" },
    branch: { side: "positive", words: "the branches" },
    negative: { side: "negative", words: "the negative terminal" },
  },
  holdsDevices: true,
  collectsAt: ["feed", "branch"],
  poles: { positive: "feed", negative: "negative" },
  properties: {
    positions: required(count({ from: 1, upTo: 200 }), { words: "positions", summary: "positions" }),
    ratedA: optional(rating, {
      words: "rating",
      summary: "in all",
      limitOf: { current: "carries", words: "rating", judgedBy: "panel/rating" },
      silentWithout: ratingOfBusOrPanel,
    }),
    branchRatedA: optional(rating, {
      words: "rating of a branch",
      details: "a position",
      silentWithout: "Rating of a single branch of a fuse panel",
    }),
    branchFamily: optional(oneOf(fuseFamilies, "is not a family of fuses or breakers"), {
      words: "family of its fuses",
      details: true,
    }),
    ...terminalRating,
    negativeBus: defaulted(yesOrNo(), true, {
      words: "negative bus of its own",
      assumed: { words: "negative bus", as: ["there is one"] },
    }),
    testedBehind: input(behaviourInShort.testedBehind),
    branchTermination: input(termination),
    branchTorqueNm: input(torque),
    branchLargestGauge: optional(largestGauge, {
      words: "largest AWG that its branches take",
      details: "AWG a branch",
    }),
    branchLargestMm2: optional(largestMm2, {
      words: "largest mm² that its branches take",
      details: "mm² a branch",
    }),
  },
  choices: [{ ways: [["branchLargestGauge"], ["branchLargestMm2"]] }],
  figures: ({ testedBehind }): Pick<Protection, "testedBehind"> =>
    behaviourOf(testedBehind ? { testedBehind } : {}),
  inside: () => [{ between: ["feed", "branch"], ohm: 0 }],
  fastening({ termination, torqueNm, branchTermination, branchTorqueNm, branchFamily, ...sizes }) {
    const largest = largestConductorOf(sizes.largestGauge, sizes.largestMm2);
    const largestOfBranch = largestConductorOf(sizes.branchLargestGauge, sizes.branchLargestMm2);
    const all = fasteningOf(termination, torqueNm, largest);
    // A screw of another size has another torque than the stud of the feed.
    const torqueOfFeed = branchTermination === undefined ? torqueNm : undefined;
    const branches: Fastening = {
      ...fasteningOf(
        branchTermination ?? termination,
        branchTorqueNm ?? torqueOfFeed,
        largestOfBranch ?? largest,
      ),
      ...(branchFamily !== undefined && { fuseFamily: branchFamily }),
    };
    // The feeder's return is at the return bus too.
    const negative = fasteningOf(branches.termination, branches.torqueNm, largest);
    return (terminal) => (terminal === "feed" ? all : terminal === "negative" ? negative : branches);
  },
  details: ({ negativeBus }) => [[negativeBus ? "with negative bus" : "without negative bus"]],
});

export interface FusePanelPart extends PartOf<typeof fusePanel> {}
