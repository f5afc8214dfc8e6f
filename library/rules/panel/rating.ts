import { certainCurrentThrough } from "../../analysis/current-through.ts";
import { smallestRatingBetween } from "../../analysis/made-ratings.ts";
import { deviceLimiting } from "../../analysis/network/faults/thin-returns.ts";
import { endsAt, mountedAt } from "../../analysis/network/topology/ends-at.ts";
import type { FusePanelPart, NetworkConductor } from "../../model/network.ts";
import { type AboveRating, isAbove, severityAbove, statedRating } from "../current-through.ts";
import type { ProposedFix } from "../finding.ts";
import { placedDevice, relatedDevice } from "../fixes/placed-device.ts";
import { deviceInWords, deviceKind, setFarEndRating, setRating } from "../fixes/sized-fix.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule, type Found, inNetwork, type JudgedNetwork, type JudgedPlan } from "../rule.ts";
import { estimateInWords } from "../wording/estimate-in-words.ts";
import { exceeds, formatDistinctWithUnit, withUnit } from "../wording/format-number.ts";
import {
  atConductor,
  atPart,
  occasionInWords,
  partInWords,
  relatedConductor,
  relatedPart,
} from "../wording/part-in-words.ts";
import { farEndRatingPath, ratingPath } from "../wording/property-paths.ts";
import { wayOut } from "../wording/way-out.ts";

export const panelRating = defineRule<Values>({
  id: "panel/rating",
  title: "Fuse panel rating exceeded",
  formerTitles: ["More than the fuse panel is made for"],
  severity: "warning",
  why: "A panel's bus and its fuse holders overheat beyond their rating: plastic melts around fuses that never blow.",
  sources: [
    statedRating,
    ownRequirement("The feed of a panel has a device of at most the rating of the panel."),
  ],
  fixable: true,
  acceptable: true,
  restsOn: "currents",
  // Needs the current through each panel in every scenario, and its branch devices. Silent on values that the plan does not
  // state. An error from twice the heat of the rating, and if a fuse does not protect the position that it is in.
  check: (plan) =>
    inNetwork(plan, (judged) =>
      judged.network.parts.flatMap((part) =>
        part.kind === "fusePanel"
          ? [
              ...overItsBus(judged, part),
              ...behindGreaterDevice(judged, part),
              ...overItsPositions(judged, part),
              ...overItsBranches(plan, judged, part),
            ]
          : [],
      ),
    ),
  message(values) {
    if (values.what === "positions")
      return `${values.used} circuits leave this panel, it has ${values.positions} positions: use a panel with more, or a second one.`;
    if (values.what === "bus") {
      const [carries, rated] = formatDistinctWithUnit(values.currentA, values.ratedA, "A");
      return `Carries ${carries} ${values.scenario}${values.estimate}, its rating is ${rated} (ratedA): use a panel with a higher one, or move some circuits with their returns to a bus bar.`;
    }
    if (values.what === "feed") {
      const [rating, rated] = formatDistinctWithUnit(values.ratingA, values.ratedA, "A");
      return `No device below ${rating} protects this panel, and its rating is ${rated} (ratedA): further loads could overload its bus (common practice, no source). Put a fuse of at most ${rated} into its feed.`;
    }
    const [rating, branch] = formatDistinctWithUnit(values.ratingA, values.branchRatedA, "A");
    return `The ${values.device} of ${rating} is in ${values.panel}, whose branches are rated ${branch}: ${values.wayOut}.`;
  },
});

type Values =
  | ({ readonly what: "bus" } & Omit<AboveRating, "kind">)
  | { readonly what: "feed"; readonly ratingA: number; readonly ratedA: number }
  | { readonly what: "positions"; readonly used: number; readonly positions: number }
  | {
      readonly what: "branch";
      readonly device: string;
      readonly ratingA: number;
      readonly branchRatedA: number;
      readonly panel: string;
      readonly wayOut: string;
    };

function overItsBus({ network, result }: JudgedNetwork, panel: FusePanelPart): Found<Values>[] {
  const worst = panel.ratedA === undefined ? undefined : certainCurrentThrough(result, panel);
  if (!worst || panel.ratedA === undefined || !isAbove(worst.currentA, panel.ratedA)) return [];
  const values: Values = {
    what: "bus",
    currentA: worst.currentA,
    ratedA: panel.ratedA,
    estimate: estimateInWords(worst.estimate),
    scenario: occasionInWords(network, worst),
  };
  const severity = severityAbove(worst.currentA, panel.ratedA);
  return [{ subject: panel.name, at: atPart(panel, "ratedA"), severity, values }];
}

/** Information: no current of the plan exceeds the rating, which {@link overItsBus} reports. */
function behindGreaterDevice({ network, result }: JudgedNetwork, panel: FusePanelPart): Found<Values>[] {
  const { ratedA } = panel;
  const device = ratedA === undefined ? undefined : deviceLimiting(network, panel.terminals.feed);
  if (ratedA === undefined || !device || !exceeds(device.ratingA, ratedA)) return [];
  const placed = placedDevice(network, device.index);
  if (!placed) return [];
  const current = certainCurrentThrough(result, panel);
  if (current && isAbove(current.currentA, ratedA)) return [];
  return [
    {
      subject: panel.name,
      at: atPart(panel, "ratedA"),
      severity: "info",
      values: { what: "feed", ratingA: device.ratingA, ratedA },
      related: [relatedDevice(placed)],
    },
  ];
}

/** One position for each conductor; parallel wires share their fuse. */
function overItsPositions({ network }: JudgedNetwork, panel: FusePanelPart): Found<Values>[] {
  const { positions } = panel;
  const leaving = endsAt(network, panel.terminals.branch);
  const mounted = mountedAt(network, panel.terminals.branch);
  const used = leaving.length + mounted.length;
  if (used <= positions) return [];
  return [
    {
      subject: panel.name,
      at: atPart(panel, "positions"),
      values: { what: "positions", used, positions },
      related: [
        ...leaving.map((conductor) => relatedConductor(conductor)),
        ...mounted.map((device) => relatedPart(device)),
      ].slice(positions, positions + mostRelated),
    },
  ];
}

const mostRelated = 4;

function overItsBranches(
  plan: JudgedPlan,
  { network }: JudgedNetwork,
  panel: FusePanelPart,
): Found<Values>[] {
  const { branchRatedA } = panel;
  if (branchRatedA === undefined) return [];
  const mounted = mountedAt(network, panel.terminals.branch)
    .filter(({ ratingA }) => exceeds(ratingA, branchRatedA))
    .map(
      (device): Found<Values> => ({
        subject: device.name,
        at: atPart(device, "ratingA"),
        severity: "error",
        values: {
          what: "branch",
          device: deviceKind(device),
          ratingA: device.ratingA,
          branchRatedA,
          panel: partInWords(panel),
          wayOut: "feed this circuit from a bus bar, with a fuse there",
        },
        related: [{ at: atPart(panel, "branchRatedA"), text: `Each branch, ${withUnit(branchRatedA, "A")}` }],
      }),
    );
  const inConductors = endsAt(network, panel.terminals.branch).flatMap((conductor): Found<Values>[] => {
    const leaves = conductor.from === panel.terminals.branch;
    const device = leaves ? conductor.near : conductor.far;
    if (!device || !exceeds(device.ratingA, branchRatedA)) return [];
    const fixes = fixesFor(plan, conductor, leaves, branchRatedA);
    const path = leaves ? ratingPath(conductor.run) : farEndRatingPath(conductor.run);
    return [
      {
        subject: conductor.name,
        at: atConductor(conductor, ...path),
        severity: "error",
        values: {
          what: "branch",
          device: deviceKind(device),
          ratingA: device.ratingA,
          branchRatedA,
          panel: partInWords(panel),
          wayOut: wayOut(fixes, "feed this circuit from a bus bar, with a fuse there"),
        },
        related: [{ at: atPart(panel, "branchRatedA"), text: `Each branch, ${withUnit(branchRatedA, "A")}` }],
        fixes,
      },
    ];
  });
  return [...inConductors, ...mounted];
}

/** The smallest made rating of the same family that carries the load and fits the branch, if there is one. */
function fixesFor(
  { circuits }: JudgedPlan,
  conductor: NetworkConductor,
  leaves: boolean,
  branchRatedA: number,
): ProposedFix[] {
  const judged = circuits.find(({ circuit }) => circuit.record === conductor.record);
  const { aimA, maxA } = judged?.result.protection ?? {};
  if (!judged || aimA === undefined || maxA === undefined) return [];
  const device = leaves ? conductor.near : conductor.far;
  const ratingA = smallestRatingBetween(aimA, Math.min(maxA, branchRatedA), device?.family);
  if (ratingA === undefined) return [];
  const change = leaves ? setRating(judged.circuit, ratingA) : setFarEndRating(judged.circuit, ratingA);
  return [{ title: `Use ${deviceInWords(device, ratingA)}`, kind: "repair", changes: [change] }];
}
