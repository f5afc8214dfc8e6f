import { isMotor, type MotorPart } from "../model/motor-starts.ts";
import type { Network, ProtectiveDevice } from "../model/network.ts";
import { isStarterMotor } from "../model/part-roles.ts";
import type { Citation } from "../standards/citation.ts";
import { groupedBy } from "./grouped-by.ts";
import { portsOf } from "./network/topology/ports.ts";
import { greatestAlone } from "./network/worst-alone.ts";
import type { NetworkResult } from "./network-result.ts";
import { earliestOpening, middleOpening, openingTime, slowestMiddle } from "./opening-time.ts";
import type { SingleDraw } from "./single-draw.ts";
import { startTimeS } from "./start-time.ts";

/** The greatest current of a starting motor at a place. */
export interface Start {
  readonly motor: MotorPart;
  /** The starting current of the motor alone, or that of a scenario in which it starts and others run, A. */
  readonly currentA: number;
  /** Index of that scenario. */
  readonly scenario?: number;
}

interface StartThroughDevice extends Start {
  readonly device: ProtectiveDevice;
}

/** For every device with motors behind it: {@link greatestStarts}. Motors that need another time to start count apart. */
export function startsThroughDevices(network: Network, result: NetworkResult): readonly StartThroughDevice[] {
  return motorsByTime(network).flatMap((motors) => {
    const startAt = greatestStarts(network, result, motors);
    return network.devices.flatMap((device): StartThroughDevice[] => {
      const start = startAt(device.place);
      return start ? [{ device, ...start }] : [];
    });
  });
}

/**
 * By place, seen from the banks: the greatest starting current of a single motor behind it, and the greatest current there in a
 * scenario in which that motor starts.
 */
export function greatestStarts(
  network: Network,
  result: NetworkResult,
  motors: readonly MotorPart[],
): (place: StartPlace) => Start | undefined {
  const starts = motors.flatMap(startOf).sort((one, other) => other.currentA - one.currentA);
  const alone = greatestAlone(network, result.topology, starts);
  return (place) => {
    const own = place.at === "part" ? alone.feeds[place.part] : alone.conductors[place.conductor];
    const motor = own && network.parts[own.worst.alone];
    if (!own || !motor || !isMotor(motor)) return undefined;
    const start = { motor, currentA: own.worst.currentA };
    return { ...start, ...greaterInScenario(network, result, place, start) };
  };
}

type StartPlace =
  | { readonly at: "part"; readonly part: number }
  | { readonly at: "conductor"; readonly conductor: number };

/** The motors that need the same time to start, the quickest first. */
function motorsByTime({ parts }: Network): readonly (readonly MotorPart[])[] {
  const groups = groupedBy(parts.filter(isMotor), startTimeS);
  const inOrder = [...groups].sort(([one], [other]) => one - other).map(([, motors]) => motors);
  const apart = inOrder.slice(0, mostTimes - 1);
  const others = inOrder.slice(mostTimes - 1).flat();
  return others.length > 0 ? [...apart, others] : apart;
}

/** Our choice, to bound the work: each takes a walk of the network. The longest ones count together. */
const mostTimes = 8;

function startOf(motor: MotorPart): SingleDraw[] {
  const { startingA } = motor.draws;
  return portsOf(motor).map((port) => ({ ...port, currentA: startingA, designA: startingA }));
}

function greaterInScenario(
  network: Network,
  result: NetworkResult,
  place: StartPlace,
  { motor, currentA }: Start,
): Pick<Start, "currentA" | "scenario"> {
  let worst: Pick<Start, "currentA" | "scenario"> = { currentA };
  for (const solved of result.scenarios) {
    if (solved.state !== "solved" || !network.scenarios[solved.scenario]?.starting[motor.index]) continue;
    const through = place.at === "part" ? solved.partA[place.part] : solved.conductorA[place.conductor];
    const currentA = Math.abs(through ?? 0);
    if (currentA > worst.currentA * moreThanRounding) worst = { currentA, scenario: solved.scenario };
  }
  return worst;
}

/** A device that opens while a motor starts. */
export interface OpensAtStart extends StartThroughDevice {
  /** True: its gates demand it. False: they permit it, within a time that the plan states. */
  readonly certain: boolean;
  /** An ordinary one of its family opens well before the start is over; if its own gates do not reach the current, one of the slowest family. */
  readonly usual?: boolean;
  /** The time within which it has opened, or before which it does not open, s. */
  readonly openingS: number;
  /** The time that the motor needs, s. */
  readonly startS: number;
  readonly source: Citation;
}

/** Whether a device must open, or an ordinary one would. */
export function isExpected(opens: OpensAtStart | undefined): boolean {
  return opens !== undefined && (opens.certain || opens.usual === true);
}

/** The devices that open while a motor behind them starts, one motor for each: one at whose start the device must open, if there is one. */
export function devicesOpenedByStarts(network: Network, result: NetworkResult): readonly OpensAtStart[] {
  const opened = startsThroughDevices(network, result).flatMap((start) => opensAtStart(start) ?? []);
  return [...groupedBy(opened, ({ device }) => device).values()].map(
    (starts) => starts.find(({ certain }) => certain) ?? starts[0]!,
  );
}

/**
 * Undefined if it does not open, or if its gates are not known. The shortest time of a fuse's gate is far below the time that an
 * ordinary one takes: if the plan does not state how long the motor needs, it counts only where the middle of the gates is near the
 * usual time of a start.
 */
export function opensAtStart(start: StartThroughDevice): OpensAtStart | undefined {
  const { device, motor, currentA } = start;
  const { startingS } = motor.draws;
  const startS = startTimeS(motor);
  const opens = openingTime(device, currentA);
  if (opens.judged && opens.openingS <= startS)
    return { ...start, certain: true, openingS: opens.openingS, startS, source: opens.source };
  const isTimeKnown = startingS !== undefined || isStarterMotor(motor);
  const middle = isTimeKnown ? middleOfItsFamily(device, currentA) : undefined;
  if (middle && middle.openingS * wellBefore <= startS)
    return { ...start, certain: false, usual: true, ...middle, startS };
  const isLikely = startingS !== undefined || isNear(middleOpening(device, currentA)?.openingS, startS);
  const earliest = isLikely ? earliestOpening(device, currentA) : undefined;
  return earliest && earliest.notBeforeS < startS
    ? { ...start, certain: false, openingS: earliest.notBeforeS, startS, source: earliest.source }
    : undefined;
}

/** A breaker whose times are not stated may well be slower than every fuse. */
function middleOfItsFamily(device: ProtectiveDevice, currentA: number) {
  const isFuse = device.family !== "circuit breaker";
  return middleOpening(device, currentA) ?? (isFuse ? slowestMiddle(device, currentA) : undefined);
}

/** Our choice: the middle of the gates is at most half of the start. */
const wellBefore = 2;

function isNear(openingS: number | undefined, startS: number): boolean {
  return openingS !== undefined && openingS < startS * slowStart;
}

/** Our choice: a start that takes half as long again as usual is not rare. */
const slowStart = 1.5;

/** The same current in two scenarios differs in its last digits. */
const moreThanRounding = 1 + 1e-9;
