import { alarmsOnSharedDevices } from "../../analysis/device-uses.ts";
import { placedDevice, placedInWords, relatedDevice } from "../fixes/placed-device.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule, type Found, inNetwork } from "../rule.ts";
import { atPart, listInWords, partInWords, relatedPart } from "../wording/part-in-words.ts";

export const sharedAlarm = defineRule<Values>({
  id: "protection/shared-alarm",
  title: "Alarm on a shared fuse",
  severity: "info",
  why: "A fault in another device opens the fuse, and the alarm is silent when it is needed.",
  sources: [ownRequirement("An alarm has a fuse of its own.")],
  fixable: false,
  acceptable: true,
  // Needs the conductors behind the device that protects the alarm, up to the next device, and the devices that they feed.
  check: (plan) =>
    inNetwork(plan, ({ network, result }) =>
      alarmsOnSharedDevices(network, result.faults).flatMap(({ alarm, device, others }): Found<Values>[] => {
        const placed = placedDevice(network, device);
        if (!placed) return [];
        return [
          {
            subject: alarm.name,
            at: atPart(alarm),
            values: { device: placedInWords(placed), others: listInWords(others.map(partInWords), 3) },
            related: [
              relatedDevice(placed),
              ...others.slice(0, mostRelated).map((part) => relatedPart(part)),
            ],
          },
        ];
      }),
    ),
  message: ({ device, others }) =>
    `Shares ${device} with ${others}: a fault there silences it (common practice, no source). Give the alarm a fuse of its own.`,
});

const mostRelated = 8;

interface Values {
  /** "the 15 A fuse socket fuse" */
  readonly device: string;
  readonly others: string;
}
