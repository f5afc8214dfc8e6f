import type { Network, ProtectiveDevice } from "../model/network.ts";
import type { TestedBehind } from "../model/run.ts";
import { workedOutOnce } from "../model/worked-out-once.ts";
import { greatestVoltage } from "./charging-voltages.ts";
import { interruptsA } from "./choose-device.ts";
import { withstandOf } from "./fault-withstand.ts";
import { groupedBy } from "./grouped-by.ts";
import type { NetworkTopology } from "./network/topology/network-topology.ts";
import type { NetworkResult } from "./network-result.ts";
import { earliestOpening } from "./opening-time.ts";

/**
 * Whether every device upstream protects a device in a short that is above its own interrupting rating: as a combination that
 * the makers tested, or because it lets through no more than the device and its conductor withstand.
 *
 * IEC 60364-4-43, 434.5.1. Only what the builder states counts; the upstream device itself must interrupt the short.
 *
 * @param tested The combination stated for the device, or for the panel that it is in.
 */
export function isBackedUp(
  { network, result }: { readonly network: Network; readonly result: NetworkResult },
  device: ProtectiveDevice,
  shortA: number,
  tested: TestedBehind | undefined = device.testedBehind,
): boolean {
  const pairs = pairsByDownstream(result.topology).get(device.index) ?? [];
  const upstream = pairs.flatMap((pair) => network.devices[pair.upstream] ?? []);
  return (
    upstream.length > 0 &&
    upstream.every((above) => {
      if ((interruptsA(above, greatestVoltage(network, above)) ?? 0) < shortA) return false;
      const combined =
        tested !== undefined &&
        above.family === tested.family &&
        above.ratingA <= tested.ratingA &&
        shortA <= tested.interruptingA;
      return (
        combined || (above.letThroughA2s ?? Number.POSITIVE_INFINITY) <= withstands(network, device, shortA)
      );
    })
  );
}

/** By device: its pairs with the devices directly upstream. */
const pairsByDownstream = workedOutOnce(({ devicePairs }: NetworkTopology) =>
  groupedBy(devicePairs, ({ downstream }) => downstream),
);

/** The least I²t that a device and its conductor withstand, A²·s: stated, else that at which the device itself begins to open. */
function withstands({ conductors }: Network, device: ProtectiveDevice, shortA: number): number {
  const { place, withstandA2s } = device;
  const opening = earliestOpening(device, shortA);
  const ownA2s = withstandA2s ?? (opening ? opening.notBeforeS * shortA ** 2 : 0);
  const conductor = place.at === "conductor" ? conductors[place.conductor] : undefined;
  return conductor ? Math.min(ownA2s, withstandOf(conductor.run).withstandA2s) : ownA2s;
}
