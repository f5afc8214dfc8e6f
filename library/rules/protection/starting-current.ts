import {
  devicesOpenedByStarts,
  type OpensAtStart,
  opensAtStart,
  startsThroughDevices,
} from "../../analysis/motor-start.ts";
import { repairSizing } from "../../analysis/repair-sizing.ts";
import { motorStart } from "../../standards/device-practice.ts";
import { timeCurrentGates } from "../../standards/time-current-gates.ts";
import type { ProposedFix } from "../finding.ts";
import { type Device, ratingFix, theDevice } from "../fixes/judged-devices.ts";
import { type PlacedDevice, placedDevice } from "../fixes/placed-device.ts";
import { sizedFixes } from "../fixes/sized-fix.ts";
import { defineRule, type Found, inNetwork, type JudgedPlan } from "../rule.ts";
import { formatExact, formatRounded, withUnit } from "../wording/format-number.ts";
import { partInWords, relatedPart, scenarioInWords } from "../wording/part-in-words.ts";
import { unconfirmedAmong } from "../wording/source-in-words.ts";
import { wayOut } from "../wording/way-out.ts";

export const startingCurrent = defineRule<Values>({
  id: "protection/starting-current",
  title: "Device may open when a motor starts",
  severity: "warning",
  why: "A fuse that opens when its motor starts is soon replaced by one that is too great for the conductor.",
  sources: [motorStart.source, ...timeCurrentGates.map(({ source }) => source)],
  fixable: true,
  acceptable: true,
  // Needs the greatest starting current through each device, and its gates. Information if the gates only permit it to open.
  check: (plan) =>
    inNetwork(plan, ({ network, result }) =>
      devicesOpenedByStarts(network, result).flatMap((opens): Found<Values>[] => {
        const placed = placedDevice(network, opens.device.index);
        if (!placed) return [];
        const { motor, scenario } = opens;
        const fixes = opens.certain ? fixesFor(plan, placed, opens) : [];
        const values: Values = {
          device: placed.device,
          motor: partInWords(motor),
          opens: pick(opens),
          startStated: motor.draws.startingS !== undefined,
          unconfirmed: unconfirmedAmong([opens.source]),
          wayOut: wayOut(fixes, "use a slower family, or a greater rating on a conductor for it"),
          ...(scenario === undefined ? {} : { scenario: scenarioInWords(network, scenario) }),
        };
        return [
          {
            subject: placed.subject,
            at: placed.at,
            severity: opens.certain ? "warning" : "info",
            values,
            related: [relatedPart(motor)],
            fixes,
          },
        ];
      }),
    ),
  message({ device, motor, opens, startStated, unconfirmed, scenario, wayOut: way }) {
    const { currentA, certain, openingS, startS } = opens;
    const time = `${formatRounded(openingS)} s${unconfirmed}`;
    const does = certain ? `opens within ${time}` : `may open after ${time}`;
    const when = scenario ? `${withUnit(currentA, "A")} ${scenario}` : withUnit(currentA, "A");
    const start = `${formatExact(startS)} s${startStated ? "" : ", as usual"}`;
    return `${theDevice(device)} ${does} at ${when}, the start of ${motor} (${start}): ${way}.`;
  },
});

interface Values {
  readonly device: Device;
  readonly motor: string;
  readonly opens: Pick<OpensAtStart, "currentA" | "certain" | "openingS" | "startS">;
  /** The plan states how long the motor needs to start. */
  readonly startStated: boolean;
  /** " (unconfirmed figure)", if the gate was not read. */
  readonly unconfirmed: string;
  /** The scenario with the current; absent for the motor alone. */
  readonly scenario?: string;
  readonly wayOut: string;
}

/** The rating that the device gets, if the motor can start behind it: that of its run, on the conductor for it. */
function fixesFor(
  plan: JudgedPlan,
  { conductor, part: _, ...placed }: PlacedDevice,
  opens: OpensAtStart,
): ProposedFix[] {
  const sizing = repairSizing(plan);
  const ratingA = sizing.ratingOf(placed.protection);
  if (ratingA === undefined || ratingA <= placed.protection.ratingA) return [];
  const { network: judged } = plan;
  const starts = judged ? startsThroughDevices(judged.network, judged.result) : [];
  const isLeft = starts.some(
    ({ device, ...start }) =>
      device.index === opens.device.index && opensAtStart({ ...start, device: { ...device, ratingA } }),
  );
  if (isLeft) return [];
  return conductor ? sizedFixes(conductor.run, sizing.ofRun(conductor.run)) : [ratingFix(placed, ratingA)];
}

function pick({ currentA, certain, openingS, startS }: OpensAtStart): Values["opens"] {
  return { currentA, certain, openingS, startS };
}
