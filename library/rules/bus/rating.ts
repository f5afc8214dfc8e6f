import { certainCurrentThrough } from "../../analysis/current-through.ts";
import { deviceLimiting } from "../../analysis/network/faults/thin-returns.ts";
import { endsAt, mountedAt } from "../../analysis/network/topology/ends-at.ts";
import type { Part } from "../../model/network.ts";
import { ratingOverContinuousLoad } from "../../standards/protection-rules.ts";
import {
  type AboveRating,
  aboveStatedRating,
  isAbove,
  severityBehind,
  statedRating,
} from "../current-through.ts";
import { placedDevice, relatedDevice } from "../fixes/placed-device.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule, type Found, inNetwork, type JudgedNetwork } from "../rule.ts";
import { exceeds, formatDistinctWithUnit } from "../wording/format-number.ts";
import { atPart } from "../wording/part-in-words.ts";

export const busRating = defineRule<AboveRating | BehindGreaterDevice>({
  id: "bus/rating",
  title: "Bus bar rating exceeded",
  formerTitles: ["More current than the bus is rated for"],
  severity: "warning",
  why: "A bus bar that carries more than its rating heats its studs, and the nuts on them work loose.",
  sources: [
    statedRating,
    ownRequirement(
      "The devices before or behind a bus bar let no more through it for hours than its rating.",
    ),
    ratingOverContinuousLoad.source,
  ],
  fixable: false,
  acceptable: true,
  restsOn: "currents",
  // An error from twice the heat of the rating. Needs the current through each bus in every scenario, and the devices before and
  // behind it. Silent if the plan states no rating.
  check: (plan) => [
    ...aboveStatedRating(plan, "bus/rating"),
    ...inNetwork(plan, (judged) =>
      judged.network.parts.flatMap((part) =>
        part.kind === "busBar" ? behindGreaterDevice(judged, part) : [],
      ),
    ),
  ],
  message(values) {
    if ("ratingA" in values) {
      const [rating, rated] = formatDistinctWithUnit(values.ratingA, values.ratedA, "A");
      return `No device below ${rating} protects this bus bar, its rating is ${rated} (ratedA), and the devices behind it let more through together: further loads could overload it (common practice, no source). Put a fuse of at most ${rated} before it, or use a bus bar with a higher rating.`;
    }
    const { currentA, estimate, ratedA, scenario } = values;
    const [carries, rated] = formatDistinctWithUnit(currentA, ratedA, "A");
    return `Carries ${carries} ${scenario}${estimate}, its rating is ${rated} (ratedA): use a bus bar with a higher one, or move loads to another.`;
  },
});

type BusBarPart = Extract<Part, { kind: "busBar" }>;

/** A device of a higher rating is all that protects a bus bar. */
interface BehindGreaterDevice {
  readonly ratingA: number;
  readonly ratedA: number;
}

/** No current of the plan exceeds the rating yet. */
function behindGreaterDevice(
  { network, result }: JudgedNetwork,
  bus: BusBarPart,
): Found<BehindGreaterDevice>[] {
  const { ratedA, terminals } = bus;
  const device = ratedA === undefined ? undefined : deviceLimiting(network, terminals.stud);
  if (ratedA === undefined || !device || !exceeds(device.ratingA, ratedA)) return [];
  const placed = placedDevice(network, device.index);
  if (!placed || !exceeds(leavingA({ network, result }, bus), ratedA)) return [];
  const current = certainCurrentThrough(result, bus);
  if (current && isAbove(current.currentA, ratedA)) return [];
  return [
    {
      subject: bus.name,
      at: atPart(bus, "ratedA"),
      severity: severityBehind(device, ratedA),
      values: { ratingA: device.ratingA, ratedA },
      related: [relatedDevice(placed)],
    },
  ];
}

/** The current that may leave a bus bar for hours, by the devices of its conductors except that from the bank, A. */
function leavingA({ network, result }: JudgedNetwork, { terminals: { stud } }: BusBarPart): number {
  const way = result.topology.wayFromSource(stud)?.conductors ?? [];
  const feeds = new Set(way.map((index) => network.conductors[index]));
  const inConductors = endsAt(network, stud).map((conductor) => {
    if (feeds.has(conductor)) return 0;
    const ratings = [conductor.near, conductor.far].flatMap((device) => (device ? [device.ratingA] : []));
    return Math.min(Number.POSITIVE_INFINITY, ...ratings);
  });
  const mounted = mountedAt(network, stud).map(({ ratingA }) => ratingA);
  return [...inConductors, ...mounted].reduce((sum, oneA) => sum + oneA, 0);
}
