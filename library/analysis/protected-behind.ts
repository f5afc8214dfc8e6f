import type { Network } from "../model/network.ts";
import { workedOutOnce } from "../model/worked-out-once.ts";
import { ampacityOf } from "./ampacity.ts";
import type { FaultResult, NetworkResult } from "./network-result.ts";

interface Judged {
  readonly network: Network;
  readonly result: NetworkResult;
}

/**
 * The greatest rating with which a device still protects every conductor behind it that it protects now, up to the next device, A.
 * By its index in the network; infinity if it protects none, or if its faults are unknown. `except`: a conductor that counts not,
 * the device's own.
 */
export function greatestProtectingA(judged: Judged, device: number, except?: number): number {
  const { ampacities, ratingA } = limitsOf(judged.result.faults)(judged).get(device) ?? noLimits;
  return (
    ampacities.find(({ conductor, ampacityA }) => conductor !== except && ampacityA >= ratingA)?.ampacityA ??
    Number.POSITIVE_INFINITY
  );
}

const noLimits: Protecting = { ratingA: 0, ampacities: [] };

interface Protecting {
  readonly ratingA: number;
  /** Of the conductors behind the device, ascending. */
  readonly ampacities: readonly { readonly conductor: number; readonly ampacityA: number }[];
}

const limitsOf = workedOutOnce((_: FaultResult) => {
  let limits: ReadonlyMap<number, Protecting> | undefined;
  return (judged: Judged) => {
    limits ??= workOutLimits(judged);
    return limits;
  };
});

function workOutLimits({ network, result }: Judged): ReadonlyMap<number, Protecting> {
  // Devices of one zone have the same conductors behind them: these are looked at once.
  const known = new Map<readonly number[], Protecting["ampacities"]>();
  return new Map(
    result.faults.devices.map(({ device, behind }) => {
      const ampacities = known.get(behind) ?? ampacitiesOf(network, behind);
      known.set(behind, ampacities);
      return [device, { ratingA: network.devices[device]!.ratingA, ampacities }];
    }),
  );
}

function ampacitiesOf({ conductors }: Network, behind: readonly number[]): Protecting["ampacities"] {
  return behind
    .flatMap((conductor) => {
      const ampacity = ampacityOf(conductors[conductor]!.run);
      return ampacity.judged ? [{ conductor, ampacityA: ampacity.ampacityA }] : [];
    })
    .sort((one, other) => one.ampacityA - other.ampacityA);
}
