import { suitableDevices } from "../../analysis/choose-device.ts";
import type { ProtectionRange } from "../../analysis/circuit-result.ts";
import { opensInTime, type SlowClearing, slowClearing } from "../../analysis/clearing.ts";
import { madeRatings } from "../../analysis/made-ratings.ts";
import { sharesShorts } from "../../analysis/network/faults/fed-at-device.ts";
import type { DeviceFault } from "../../analysis/network-result.ts";
import { protectionRangeOfPart } from "../../analysis/protection-range.ts";
import { clearingTime } from "../../standards/protection-rules.ts";
import { timeCurrentGates } from "../../standards/time-current-gates.ts";
import type { ProposedFix } from "../finding.ts";
import { chosenChanges, chosenInWords } from "../fixes/chosen-device.ts";
import { runOf } from "../fixes/inserted-protection.ts";
import { type Device, ratingFix, theDevice } from "../fixes/judged-devices.ts";
import { type PlacedDevice, placedDevice } from "../fixes/placed-device.ts";
import { defineRule, inNetwork, type JudgedNetwork, type JudgedPlan } from "../rule.ts";
import { formatExact, formatRounded, withUnit } from "../wording/format-number.ts";
import { conductorInWords, relatedConductor } from "../wording/part-in-words.ts";
import { sourceInWords, unconfirmedAmong } from "../wording/source-in-words.ts";
import { wayOut } from "../wording/way-out.ts";

export const doesNotClear = defineRule<Values>({
  id: "protection/does-not-clear",
  title: "Far-end fault not cleared in time",
  formerTitles: ["Short at the far end opens nothing soon"],
  severity: "warning",
  why: "A long thin conductor lets so little current into a short at its end that the fuse takes it for a load, and the conductor glows.",
  sources: [clearingTime.source, ...timeCurrentGates.map(({ source }) => source)],
  fixable: true,
  acceptable: true,
  ignoresLoads: "except repairs",
  // Needs the minimum fault current of each device, for a fault at the far end of its conductors.
  check: (plan) =>
    inNetwork(plan, (judged) =>
      judged.result.faults.devices.flatMap((fault) => {
        const placed = placedDevice(judged.network, fault.device);
        const { least } = fault;
        const end = least && judged.network.conductors[least.conductor];
        if (!placed || !end || judged.result.topology.crankingFeeds.has(least.conductor)) return [];
        const { currentA } = least;
        const opens = slowClearing(placed.protection, currentA);
        // Checked last, because it walks over the network.
        if (!opens || sharesShorts(judged.network, fault.device)) return [];
        const fixes = fixesFor(plan, judged, placed, fault);
        const values: Values = {
          device: placed.device,
          ...(end === placed.conductor ? {} : { end: conductorInWords(end) }),
          shortA: currentA,
          ...(least.isAtMost && { orLess: true as const }),
          opens,
          source: sourceInWords(clearingTime.source),
          wayOut: wayOut(fixes, "shorten the path there, or use thicker conductors"),
        };
        return [
          {
            subject: placed.subject,
            at: placed.at,
            values,
            related: [relatedConductor(end, `${conductorInWords(end)}, with the short at its far end`)],
            fixes,
          },
        ];
      }),
    ),
  message({ device, end, shortA, orLess, opens, source, wayOut: way }) {
    const where = end ? `the far end of ${end}` : "its far end";
    const short = `A short at ${where} may draw only ${withUnit(shortA, "A")}${orLess ? " or less, because a length is not known" : ""}`;
    const which = theDevice(device).replace("The", "the");
    const recalled = opens.source ? unconfirmedAmong([opens.source]) : "";
    if (opens.openingS === undefined) {
      return `${short}, at which ${which} need not open at all${recalled}: ${way}.`;
    }
    return `${short}, at which ${which} may take up to ${formatExact(opens.openingS)} s${recalled}, and the limit is ${formatRounded(clearingTime.maxS)} s (${source}): ${way}.`;
  },
});

interface Values {
  readonly device: Device;
  /** The conductor with the fault at its far end; absent if it is the device's own. */
  readonly end?: string;
  /** The minimum current that such a fault draws through the device, A. */
  readonly shortA: number;
  /** A length is not known: the real one may be less. */
  readonly orLess?: true;
  readonly opens: SlowClearing;
  readonly source: string;
  readonly wayOut: string;
}

/** First a smaller rating of the same family, which suits every conductor; then the same rating of a faster family. */
function fixesFor(
  plan: JudgedPlan,
  judged: JudgedNetwork,
  placed: PlacedDevice,
  fault: DeviceFault,
): ProposedFix[] {
  const shortA = fault.least?.currentA ?? 0;
  // Without a stated family, the device's speed is unknown, and so is a faster one.
  if (!placed.protection.family) return [];
  return [
    ...lesserRating(rangeOf(plan, judged, placed), placed, shortA),
    ...quickerFamily(placed, fault, shortA),
  ];
}

/** The ratings that carry its load. */
function rangeOf(
  plan: JudgedPlan,
  judged: JudgedNetwork,
  { conductor, part }: PlacedDevice,
): ProtectionRange {
  return part ? protectionRangeOfPart(judged, part) : runOf(plan, conductor!.run).result.protection;
}

function lesserRating({ aimA }: ProtectionRange, placed: PlacedDevice, shortA: number): ProposedFix[] {
  const { protection } = placed;
  // The largest that will do: the one with the most headroom over its load lasts longest.
  const ratingA = madeRatings(protection.family).findLast(
    (lesser) =>
      lesser >= aimA &&
      lesser < protection.ratingA &&
      opensInTime({ ...protection, ratingA: lesser }, shortA),
  );
  return ratingA === undefined ? [] : [ratingFix(placed, ratingA)];
}

function quickerFamily(
  { systemV, protection, device, properties }: PlacedDevice,
  fault: DeviceFault,
  shortA: number,
) {
  const { ratingA } = protection;
  if (device.kind === "breaker") return [];
  const need = { ratingA, systemV, interruptA: fault.greatestA };
  const quicker = suitableDevices(need).find((chosen) => opensInTime(chosen, shortA));
  return quicker
    ? [
        {
          title: `Use ${chosenInWords(quicker)}`,
          kind: "repair" as const,
          changes: chosenChanges(quicker, { protection, properties }),
        },
      ]
    : [];
}
