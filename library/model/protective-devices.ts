import type { Network, NetworkConductor, ProtectiveDevice } from "./network.ts";
import type { Protection } from "./run.ts";

/** A conductor as its record states it: its devices have no place in the network yet. */
export type StatedConductor = Omit<NetworkConductor, "near" | "far"> & {
  readonly near: Protection | null;
  readonly far: Protection | null;
};

/** Numbers the devices in the order of their conductors, the one at the near end first. */
export function placeDevices(stated: readonly StatedConductor[]): Pick<Network, "conductors" | "devices"> {
  const devices: ProtectiveDevice[] = [];
  const place = (protection: Protection | null, conductor: number, end: "near" | "far") => {
    if (!protection) return null;
    const device = {
      ...protection,
      index: devices.length,
      place: { at: "conductor", conductor, end },
    } as const;
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
  return { conductors, devices };
}
