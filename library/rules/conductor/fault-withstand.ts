import { suitableDevices } from "../../analysis/choose-device.ts";
import { opensInTime } from "../../analysis/clearing.ts";
import {
  type ConductorHeating,
  faultHeatings,
  isCarried,
  standsShorts,
} from "../../analysis/fault-heating.ts";
import { sizesAbove, sizesFrom } from "../../analysis/made-sizes.ts";
import { mostAboveNeed } from "../../analysis/repair-sizing.ts";
import { mayBecome } from "../../analysis/terminal-size.ts";
import type { NetworkConductor } from "../../model/network.ts";
import { adiabaticCopper, finalTemperatures } from "../../standards/short-circuit-copper.ts";
import { timeCurrentGates } from "../../standards/time-current-gates.ts";
import { chosenChanges, chosenInWords } from "../fixes/chosen-device.ts";
import { type PlacedDevice, placedDevice, placedInWords, relatedDevice } from "../fixes/placed-device.ts";
import { deviceKind, sizedFixes, sizeInWords } from "../fixes/sized-fix.ts";
import { defineRule, inNetwork, type JudgedNetwork } from "../rule.ts";
import { timesApart, withUnit } from "../wording/format-number.ts";
import { atConductor } from "../wording/part-in-words.ts";
import { sizePath } from "../wording/property-paths.ts";
import { unconfirmed } from "../wording/source-in-words.ts";
import { type FixToUse, toUse, wayOut } from "../wording/way-out.ts";

export const faultWithstand = defineRule<Values>({
  id: "conductor/fault-withstand",
  title: "Conductor does not withstand a fault",
  formerTitles: ["A short heats the conductor too far"],
  severity: "error",
  why: "A short heats a conductor until its insulation melts off in the seconds that a slow fuse takes to open.",
  sources: [
    adiabaticCopper.source,
    finalTemperatures.source,
    ...timeCurrentGates.map(({ source }) => source),
  ],
  fixable: true,
  acceptable: true,
  ignoresLoads: "entirely",
  // Needs the least and the greatest fault current in each conductor, and the devices that protect it. An error if a gate that
  // was read, or the builder's own, carries it; else information.
  check: (plan) =>
    inNetwork(plan, (judged) =>
      faultHeatings(judged).flatMap((heating) => {
        const { conductor, device, heat, estimated } = heating;
        const placed = placedDevice(judged.network, device.device);
        if (!placed || isCrankingFeed(judged, conductor)) return [];
        const carried = isCarried(heat);
        const fixes = fixesFor(heating, placed, carried);
        const values: Values = {
          size: sizeInWords(conductor.run.conductor),
          device: placedInWords(placed),
          shortA: heat.currentA,
          justUnder: heat.justUnder ?? false,
          estimated,
          gate: carried ? "certain" : heat.source.confirmed === "memory" ? "recalled" : "between",
          lastsS: heat.lastsS,
          bearsS: heat.bearsS,
          finalC: heat.finalC,
          wayOut: waysOut(fixes, deviceKind(placed.protection)),
        };
        return [
          {
            subject: conductor.name,
            at: atConductor(conductor, ...sizePath(conductor.run)),
            severity: carried ? (estimated ? "warning" : "error") : "info",
            values,
            related: [relatedDevice(placed)],
            fixes,
          },
        ];
      }),
    ),
  message({ size, device, shortA, justUnder, estimated, gate, lastsS, bearsS, finalC, wayOut: way }) {
    const [lasts, bears] = timesApart(lastsS, bearsS);
    const guessed = estimated ? " (estimated: no internal resistance is stated)" : "";
    return `A short of ${justUnder ? "just under " : ""}${withUnit(shortA, "A")}${guessed} may last ${lasts} until ${device} opens${gatesInWords[gate]}; after ${bears} ${size} is at ${withUnit(finalC, "°C")}, the most its insulation withstands: ${way}.`;
  },
});

const gatesInWords = {
  certain: "",
  recalled: ` (${unconfirmed})`,
  between: " (its standard states no shorter time)",
};

interface Values {
  readonly size: string;
  /** "the 80 A fuse in the cable feed" */
  readonly device: string;
  /** The current of the worst fault in it, A. */
  readonly shortA: number;
  /** At this very current the device opens sooner. */
  readonly justUnder: boolean;
  /** It follows from an internal resistance that is not stated. */
  readonly estimated: boolean;
  /** How far the time to open is known. */
  readonly gate: keyof typeof gatesInWords;
  /** Times until the device has opened, and until the insulation is at its maximum temperature, s. */
  readonly lastsS: number;
  readonly bearsS: number;
  readonly finalC: number;
  readonly wayOut: string;
}

/** A conductor that may not be a repair is not the only way out that is named. */
function waysOut(fixes: readonly FixToUse[], device: "fuse" | "breaker"): string {
  const faster = `use a faster ${device}`;
  const [first] = fixes;
  return first?.otherDevices === undefined
    ? wayOut(fixes, `${faster}, or a thicker conductor`)
    : `${faster}, or ${first.noun}`;
}

/**
 * A thicker conductor, or a fuse of the same rating that is fast enough. Suggestions, if no confirmed gate carries the finding:
 * copper that may be needless is the builder's decision. So is a conductor more than two made sizes thicker; a faster device comes first then.
 */
function fixesFor(
  { range, device: { greatestA: shortA }, conductor: { run, record } }: ConductorHeating,
  placed: PlacedDevice,
  carried: boolean,
): FixToUse[] {
  const { protection, conductor, systemV } = placed;
  const { ratingA, family } = protection;
  const thicker = sizesFrom(run.conductor).find(
    (size) => mayBecome(run, size) && standsShorts({ ...run, conductor: size }, protection, range),
  );
  const isFar = thicker !== undefined && sizesAbove(thicker, run.conductor) > mostAboveNeed;
  const sized = thicker
    ? sizedFixes(run, {
        conductor: thicker,
        ratingA: run.protection?.ratingA,
        ratingFarEndA: run.protectionFarEnd?.ratingA,
      }).map((fix): FixToUse => {
        if (isFar) return { ...fix, kind: "suggestion", otherDevices: 0 };
        return carried ? fix : { ...fix, kind: "suggestion" };
      })
    : [];
  const need = { ratingA, systemV, interruptA: shortA };
  const quicker = suitableDevices(need).find(
    (chosen) =>
      chosen.family !== family && opensInTime(chosen, range.leastA) && standsShorts(run, chosen, range),
  );
  // A device with opening times of its own is one that the builder has; theirs would stay behind.
  if (!quicker || protection.opening) return sized;
  const faster: FixToUse = {
    ...toUse(chosenInWords(quicker)),
    // Changing another conductor's fuse is the builder's decision.
    kind: carried && conductor?.record === record ? "repair" : "suggestion",
    changes: chosenChanges(quicker, placed),
  };
  return isFar ? [faster, ...sized] : [...sized, faster];
}

/** No device is asked for there, so one that is there is not held to the conductor. */
function isCrankingFeed({ network, result }: JudgedNetwork, conductor: NetworkConductor): boolean {
  const { crankingFeeds } = result.topology;
  return crankingFeeds.size > 0 && crankingFeeds.has(network.conductors.indexOf(conductor));
}
