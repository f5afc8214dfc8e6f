import { groupedBy } from "../../analysis/grouped-by.ts";
import {
  devicesOpenedByStarts,
  isExpected,
  type OpensAtStart,
  opensAtStart,
  startsThroughDevices,
} from "../../analysis/motor-start.ts";
import { repairSizing } from "../../analysis/repair-sizing.ts";
import type { Network } from "../../model/network.ts";
import { isStarterMotor } from "../../model/part-roles.ts";
import { cranking, motorStart } from "../../standards/device-practice.ts";
import { timeCurrentGates } from "../../standards/time-current-gates.ts";
import type { ProposedFix } from "../finding.ts";
import { type Device, ratingFix, theDevice } from "../fixes/judged-devices.ts";
import { type PlacedDevice, placedDevice } from "../fixes/placed-device.ts";
import { sizedFixes } from "../fixes/sized-fix.ts";
import { defineRule, type Found, inNetwork, type JudgedPlan } from "../rule.ts";
import { formatExact, formatRounded, withUnit } from "../wording/format-number.ts";
import { atPart, partInWords, relatedPart, scenarioInWords } from "../wording/part-in-words.ts";
import { unconfirmedAmong } from "../wording/source-in-words.ts";
import { wayOut } from "../wording/way-out.ts";

export const startingCurrent = defineRule<Values>({
  id: "protection/starting-current",
  title: "Device may open when a motor starts",
  severity: "warning",
  why: "A fuse that opens when its motor starts is soon replaced by one that is too great for the conductor.",
  sources: [motorStart.source, cranking.source, ...timeCurrentGates.map(({ source }) => source)],
  fixable: true,
  acceptable: true,
  // Needs the greatest starting current through each device, and its gates. Information if the gates only permit it to open.
  check: (plan) =>
    inNetwork(plan, ({ network, result }) => {
      const opened = devicesOpenedByStarts(network, result);
      const timeUnknown = (opens: OpensAtStart) =>
        !isExpected(opens) && opens.motor.draws.startingS === undefined;
      const doubts = groupedBy(opened.filter(timeUnknown), ({ motor }) => motor);
      return [
        ...opened.flatMap((opens) => (timeUnknown(opens) ? [] : onDevice(plan, network, opens))),
        ...[...doubts.values()].flatMap((ofMotor) => onMotor(network, soonest(ofMotor))),
      ];
    }),
  message({ device, deviceOf, motor, opens, startStated, unconfirmed, scenario, wayOut: way }) {
    const { currentA, certain, usual, openingS, startS } = opens;
    const time = `${formatRounded(openingS)} s${unconfirmed}`;
    const does = certain
      ? `opens within ${time}`
      : usual
        ? `usually opens after ${time}`
        : `may open after ${time}`;
    const when = scenario ? `${withUnit(currentA, "A")} ${scenario}` : withUnit(currentA, "A");
    const start = `${formatExact(startS)} s${startStated ? "" : ", as usual"}`;
    const which = deviceOf === undefined ? "" : ` (${deviceOf})`;
    return `${theDevice(device)}${which} ${does} at ${when}, the start of ${motor} (${start}): ${way}.`;
  },
});

/** Certain, or possible within a time that the plan states; else it is the plan that leaves it open. */
function isOnDevice(opens: OpensAtStart | undefined): boolean {
  return opens !== undefined && (isExpected(opens) || opens.motor.draws.startingS !== undefined);
}

const slower = "use a slower family, or a greater rating on a conductor for it";

function onDevice(plan: JudgedPlan, network: Network, opens: OpensAtStart): Found<Values>[] {
  const placed = placedDevice(network, opens.device.index);
  if (!placed) return [];
  const isWarning = isExpected(opens);
  const fixes = isWarning ? fixesFor(plan, placed, opens) : [];
  return [
    {
      subject: placed.subject,
      at: placed.at,
      severity: isWarning ? "warning" : "info",
      values: { ...valuesOf(network, placed.device, opens), wayOut: wayOut(fixes, slower) },
      related: [relatedPart(opens.motor)],
      fixes,
    },
  ];
}

/** The plan leaves the time of the start open: the finding is on the motor that lacks it. */
function onMotor(network: Network, opens: OpensAtStart): Found<Values>[] {
  const placed = placedDevice(network, opens.device.index);
  if (!placed) return [];
  const { device, subject, at } = placed;
  const way = isStarterMotor(opens.motor) ? slower : `state how long it takes (startingS), ${slower}`;
  return [
    {
      subject: opens.motor.name,
      at: atPart(opens.motor, "startingA"),
      severity: "info",
      values: { ...valuesOf(network, device, opens), deviceOf: subject, wayOut: way },
      related: [{ at, text: theDevice(device) }],
    },
  ];
}

function soonest(opened: readonly OpensAtStart[]): OpensAtStart {
  return opened.reduce((first, one) => (one.openingS < first.openingS ? one : first));
}

function valuesOf(network: Network, device: Device, opens: OpensAtStart): Omit<Values, "wayOut"> {
  const { motor, scenario, source } = opens;
  return {
    device,
    motor: partInWords(motor),
    opens: pick(opens),
    startStated: motor.draws.startingS !== undefined,
    unconfirmed: unconfirmedAmong([source]),
    ...(scenario === undefined ? {} : { scenario: scenarioInWords(network, scenario) }),
  };
}

interface Values {
  readonly device: Device;
  /** The name of its conductor or its own, if the finding is elsewhere. */
  readonly deviceOf?: string;
  readonly motor: string;
  readonly opens: Pick<OpensAtStart, "currentA" | "certain" | "usual" | "openingS" | "startS">;
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
      device.index === opens.device.index &&
      isOnDevice(opensAtStart({ ...start, device: { ...device, ratingA } })),
  );
  if (isLeft) return [];
  return conductor ? sizedFixes(conductor.run, sizing.ofRun(conductor.run)) : [ratingFix(placed, ratingA)];
}

function pick({ currentA, certain, usual, openingS, startS }: OpensAtStart): Values["opens"] {
  return { currentA, certain, ...(usual && { usual }), openingS, startS };
}
