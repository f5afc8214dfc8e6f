import { suitableDevices } from "../../analysis/choose-device.ts";
import { type FaultHeating, faultHeating, standsShort } from "../../analysis/fault-heating.ts";
import { sizesFrom } from "../../analysis/made-sizes.ts";
import type { NetworkConductor } from "../../model/network.ts";
import { adiabaticCopper, finalTemperatures } from "../../standards/short-circuit-copper.ts";
import { timeCurrentGates } from "../../standards/time-current-gates.ts";
import type { ProposedFix } from "../finding.ts";
import { chosenChanges, chosenInWords } from "../fixes/chosen-device.ts";
import { type PlacedDevice, placedDevice, placedInWords, relatedDevice } from "../fixes/placed-device.ts";
import { sizedFixes, sizeInWords } from "../fixes/sized-fix.ts";
import { defineRule, inNetwork } from "../rule.ts";
import { timesApart, withUnit } from "../wording/format-number.ts";
import { atConductor } from "../wording/part-in-words.ts";
import { sizePath } from "../wording/property-paths.ts";
import { unconfirmed } from "../wording/source-in-words.ts";
import { wayOut } from "../wording/way-out.ts";

export const faultWithstand = defineRule<Values>({
  id: "conductor/fault-withstand",
  title: "Conductor does not withstand a fault",
  formerTitles: ["A short heats the conductor too far"],
  severity: "warning",
  why: "A short heats a conductor until its insulation melts off in the seconds that a slow fuse takes to open.",
  sources: [
    adiabaticCopper.source,
    finalTemperatures.source,
    ...timeCurrentGates.map(({ source }) => source),
  ],
  fixable: true,
  acceptable: true,
  // Needs the maximum fault current in each conductor, and the devices that protect it.
  check: (plan) =>
    inNetwork(plan, (judged) =>
      judged.network.conductors.flatMap((conductor, index) => {
        if (conductor.role === "return") return [];
        const heating = faultHeating(judged, index);
        const placed = heating && placedDevice(judged.network, heating.device.device);
        if (!placed) return [];
        const { heat } = heating;
        const fixes = fixesFor(conductor, heating, placed);
        const values: Values = {
          size: sizeInWords(conductor.run.conductor),
          device: placedInWords(placed),
          shortA: heat.currentA,
          lastsS: heat.lastsS,
          bearsS: heat.bearsS,
          finalC: heat.finalC,
          wayOut: wayOut(fixes, "use a faster fuse, or a thicker conductor"),
        };
        return [
          {
            subject: conductor.name,
            at: atConductor(conductor, ...sizePath(conductor.run)),
            values,
            related: [relatedDevice(placed)],
            fixes,
          },
        ];
      }),
    ),
  message({ size, device, shortA, lastsS, bearsS, finalC, wayOut: way }) {
    const [lasts, bears] = timesApart(lastsS, bearsS);
    return `A short of ${withUnit(shortA, "A")} may last ${lasts} until ${device} opens (${unconfirmed}); after ${bears} ${size} is at ${withUnit(finalC, "°C")}, the most its insulation withstands: ${way}.`;
  },
});

interface Values {
  readonly size: string;
  /** "the 80 A fuse in the cable feed" */
  readonly device: string;
  /** The maximum current that a fault in it draws through the device, A. */
  readonly shortA: number;
  /** Times until the device has opened, and until the insulation is at its maximum temperature, s. */
  readonly lastsS: number;
  readonly bearsS: number;
  readonly finalC: number;
  readonly wayOut: string;
}

/** A thicker conductor, or a fuse of the same rating that is fast enough. */
function fixesFor(
  { run, record }: NetworkConductor,
  { heat: { currentA }, device: { greatestA: shortA } }: FaultHeating,
  placed: PlacedDevice,
): ProposedFix[] {
  const { protection, conductor, systemV } = placed;
  const { ratingA, family } = protection;
  const thicker = sizesFrom(run.conductor).find((size) =>
    standsShort({ ...run, conductor: size }, protection, currentA),
  );
  const sized = thicker
    ? sizedFixes(run, {
        conductor: thicker,
        ratingA: run.protection?.ratingA,
        ratingFarEndA: run.protectionFarEnd?.ratingA,
      })
    : [];
  const need = { ratingA, systemV, interruptA: shortA };
  const quicker = suitableDevices(need).find(
    (chosen) => chosen.family !== family && standsShort(run, chosen, currentA),
  );
  if (!quicker) return sized;
  return [
    ...sized,
    {
      title: `Use ${chosenInWords(quicker)}`,
      // Changing another conductor's fuse is the builder's decision.
      kind: conductor?.record === record ? "repair" : "suggestion",
      changes: chosenChanges(quicker, placed.properties),
    },
  ];
}
