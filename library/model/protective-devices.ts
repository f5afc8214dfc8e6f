import type { ConductorDevice, Network, NetworkConductor, Part, ProtectiveDevice } from "./network.ts";
import { type DevicePart, isDevice } from "./part-roles.ts";
import type { Protection } from "./run.ts";

/** A conductor as its record states it: its devices have no place in the network yet. */
export type StatedConductor = Omit<NetworkConductor, "near" | "far"> & {
  readonly near: Protection | null;
  readonly far: Protection | null;
};

/**
 * Numbers the devices: first those of conductors, in the order of the conductors and the one at the near end first; then the
 * parts that are a device.
 */
export function placeDevices(
  stated: readonly StatedConductor[],
  parts: readonly Part[],
): Pick<Network, "conductors" | "devices"> {
  const devices: ProtectiveDevice[] = [];
  const place = (protection: Protection | null, conductor: number, end: "near" | "far") => {
    if (!protection) return null;
    const device: ConductorDevice = {
      ...protection,
      index: devices.length,
      place: { at: "conductor", conductor, end },
    };
    devices.push(device);
    return device;
  };
  const conductors = stated.map(
    (conductor, index): NetworkConductor => ({
      ...conductor,
      near: place(conductor.near, index, "near"),
      far: place(conductor.far, index, "far"),
    }),
  );
  for (const part of parts) {
    if (!isDevice(part)) continue;
    const place = { at: "part", part: part.index } as const;
    devices.push({ index: devices.length, place, ...protectionIn(part) });
  }
  return { conductors, devices };
}

function protectionIn(part: DevicePart): Protection {
  const { ratingA, writtenAs, family, interruptingA, ratedV, price } = part;
  const { interruptingAtV, opening, letThroughA2s, withstandA2s, testedBehind } = part;
  return {
    ...{ ratingA, writtenAs },
    ...(family !== undefined && { family }),
    ...(interruptingA !== undefined && { interruptingA }),
    ...(interruptingAtV !== undefined && { interruptingAtV }),
    ...(ratedV !== undefined && { ratedV }),
    ...(price !== undefined && { price }),
    ...(opening && { opening }),
    ...(letThroughA2s !== undefined && { letThroughA2s }),
    ...(withstandA2s !== undefined && { withstandA2s }),
    ...(testedBehind && { testedBehind }),
  };
}
