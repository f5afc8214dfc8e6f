import type { Network } from "../../model/network.ts";
import type { DevicePlace } from "../network-result.ts";
import { feedingOf, protectedZones } from "./protected-zones.ts";
import type { UnprotectedPath } from "./topology.ts";
import { wiringOf } from "./wiring.ts";

/**
 * Whether a conductor that a source reaches at one end has its device at the other, with a source there too: two sources
 * ask for two devices, and one of them is there.
 */
export function isProtectedAtOtherEnd(network: Network, { conductor, ends }: UnprotectedPath): boolean {
  const { near, far } = network.conductors[conductor] ?? {};
  const other = near ? "near" : far ? "far" : undefined;
  return (
    other !== undefined && !ends.includes(other) && isFedFromTerminal(network, { conductor, end: other })
  );
}

/**
 * Whether any source feeds a device from the terminal at its end of the conductor, and not only through the conductor:
 * a device that none feeds from there protects against nothing that comes from there.
 */
function isFedFromTerminal(network: Network, { conductor, end }: DevicePlace): boolean {
  let fed = known.get(network);
  if (!fed) {
    fed = fedFromTerminals(network);
    known.set(network, fed);
  }
  return fed.has(keyOf({ conductor, end }));
}

const known = new WeakMap<Network, ReadonlySet<string>>();

function fedFromTerminals(network: Network): ReadonlySet<string> {
  const wiring = wiringOf(network);
  const zones = protectedZones(wiring);
  const sides = feedingOf(wiring, zones, wiring.sources);
  return new Set(zones.devices.filter((_, device) => sides[device]?.fromTerminal).map(keyOf));
}

function keyOf({ conductor, end }: DevicePlace): string {
  return `${conductor} ${end}`;
}
