import type { ConductorDevice, Network, NetworkConductor, Part, ProtectiveDevice } from "./network.ts";
import { type DevicePart, isDevice } from "./part-roles.ts";
import type { Protection } from "./run.ts";

/** A conductor as its record states it: its devices have no place in the network yet. */
export type StatedConductor = Omit<NetworkConductor, "near" | "far"> & {
  readonly near: StatedDevice | null;
  readonly far: StatedDevice | null;
};

/** A device of a network has a place already, and would keep it. */
type StatedDevice = Protection & { readonly index?: never; readonly place?: never };

/**
 * Numbers the devices: first those of conductors, in the order of the conductors and the one at the near end first; then the
 * parts that are a device.
 */
export function placeDevices(
  stated: readonly StatedConductor[],
  parts: readonly Part[],
): Pick<Network, "conductors" | "devices"> {
  const devices: ProtectiveDevice[] = [];
  const conductors = Array.from(stated, (conductor, index) => {
    const placed = placedConductor(conductor, index, devices.length);
    for (const device of [placed.near, placed.far]) if (device) devices.push(device);
    return placed;
  });
  for (const part of parts) {
    if (!isDevice(part)) continue;
    const place = { at: "part", part: part.index } as const;
    devices.push({ index: devices.length, place, ...protectionIn(part) });
  }
  return { conductors, devices };
}

/** The same object for the same conductor at the same place. @param first The index that its first device gets. */
function placedConductor(stated: StatedConductor, index: number, first: number): NetworkConductor {
  const before = placedBefore.get(stated);
  if (before?.index === index && before.first === first) return before.conductor;
  const place = (
    protection: StatedDevice | null,
    end: "near" | "far",
    device: number,
  ): ConductorDevice | null =>
    protection && { index: device, place: { at: "conductor", conductor: index, end }, ...protection };
  const conductor = {
    ...stated,
    near: place(stated.near, "near", first),
    far: place(stated.far, "far", stated.near ? first + 1 : first),
  };
  placedBefore.set(stated, { index, first, conductor });
  return conductor;
}

const placedBefore = new WeakMap<
  StatedConductor,
  { readonly index: number; readonly first: number; readonly conductor: NetworkConductor }
>();

function protectionIn(part: DevicePart): Protection {
  const { ratingA, writtenAs, family, familyStatedAt, interruptingA, ratedV, ambientC, price } = part;
  const { interruptingAtV, opening, letThroughA2s, withstandA2s, testedBehind } = part;
  return {
    ratingA,
    writtenAs,
    ...(family !== undefined && { family }),
    ...(familyStatedAt !== undefined && { familyStatedAt }),
    ...(interruptingA !== undefined && { interruptingA }),
    ...(interruptingAtV !== undefined && { interruptingAtV }),
    ...(ratedV !== undefined && { ratedV }),
    ...("holderRatedA" in part && part.holderRatedA !== undefined && { holderRatedA: part.holderRatedA }),
    ...(ambientC !== undefined && { ambientC }),
    ...(price !== undefined && { price }),
    ...(opening && { opening }),
    ...(letThroughA2s !== undefined && { letThroughA2s }),
    ...(withstandA2s !== undefined && { withstandA2s }),
    ...(testedBehind && { testedBehind }),
  };
}
