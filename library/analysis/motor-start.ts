import type { LoadPart, Network, ProtectiveDevice } from "../model/network.ts";
import type { Citation } from "../standards/citation.ts";
import { motorStart } from "../standards/device-practice.ts";
import { networkGraph, reachedFrom } from "./network/topology/network-graph.ts";
import type { NetworkResult } from "./network-result.ts";
import { earliestOpening, openingTime } from "./opening-time.ts";

/** A motor. */
type Motor = LoadPart & { readonly draws: { readonly as: "motor" } };

/** The greatest current of a starting motor through a device. */
export interface StartThroughDevice {
  readonly device: ProtectiveDevice;
  readonly motor: Motor;
  /** The starting current of the motor alone, or that of a scenario in which it starts and others run, A. */
  readonly currentA: number;
  /** Index of that scenario. */
  readonly scenario?: number;
}

/**
 * For every device with motors behind it, seen from the banks: the greatest starting current of a single motor, and the greatest
 * current through the device in a scenario in which a motor behind it starts.
 */
export function startsThroughDevices(network: Network, result: NetworkResult): readonly StartThroughDevice[] {
  const graph = networkGraph(network);
  const banks = graph.sources.filter(({ limitA }) => limitA === Number.POSITIVE_INFINITY);
  const reached = reachedFrom(
    graph,
    banks.map(({ positive }) => positive),
  );
  const worst = new Map<number, Motor>();
  const motorAt = new Map(
    network.parts.flatMap((part) => (isMotor(part) ? [[part.terminals.positive, part] as const] : [])),
  );
  const byDevice = new Map<ProtectiveDevice, Motor>();
  const devicesInParts = new Map(
    network.devices.flatMap((device) =>
      device.place.at === "part" ? [[device.place.part, device] as const] : [],
    ),
  );
  const greater = (one: Motor | undefined, other: Motor) =>
    one && one.draws.startingA >= other.draws.startingA ? one : other;
  // From the last terminal of the walk to the first: the terminals behind one are known before it.
  for (const [terminal, step] of [...reached].reverse()) {
    const own = motorAt.get(terminal);
    const behind = worst.get(terminal);
    const motor = own ? greater(behind, own) : behind;
    if (!motor || !step) continue;
    worst.set(step.from, greater(worst.get(step.from), motor));
    const { near, far } = network.conductors[step.edge.conductor] ?? {};
    const inPart = devicesInParts.get(step.edge.part);
    for (const device of [near, far, inPart])
      if (device) byDevice.set(device, greater(byDevice.get(device), motor));
  }
  return [...byDevice].map(([device, motor]) => ({
    device,
    motor,
    ...greatestStart(network, result, device, motor),
  }));
}

function isMotor(part: Network["parts"][number]): part is Motor {
  return part.kind === "load" && part.draws.as === "motor";
}

function greatestStart(
  network: Network,
  result: NetworkResult,
  { place }: ProtectiveDevice,
  motor: Motor,
): Pick<StartThroughDevice, "currentA" | "scenario"> {
  let worst: Pick<StartThroughDevice, "currentA" | "scenario"> = { currentA: motor.draws.startingA };
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
  /** The time within which it has opened, or before which it does not open, s. */
  readonly openingS: number;
  /** The time that the motor needs, s. */
  readonly startS: number;
  readonly source: Citation;
}

/**
 * Undefined if it does not open, or if its gates are not known. If the plan does not state how long the motor needs, only the
 * longest time of a gate counts: the shortest one of a fuse is far below the time that an ordinary one takes.
 */
export function opensAtStart(start: StartThroughDevice): OpensAtStart | undefined {
  const { device, motor, currentA } = start;
  const { startingS } = motor.draws;
  const startS = startingS ?? motorStart.seconds;
  const opens = openingTime(device, currentA);
  if (opens.judged && opens.openingS <= startS)
    return { ...start, certain: true, openingS: opens.openingS, startS, source: opens.source };
  const earliest = startingS === undefined ? undefined : earliestOpening(device, currentA);
  return earliest && earliest.notBeforeS < startS
    ? { ...start, certain: false, openingS: earliest.notBeforeS, startS, source: earliest.source }
    : undefined;
}

/** The same current in two scenarios differs in its last digits. */
const moreThanRounding = 1 + 1e-9;
