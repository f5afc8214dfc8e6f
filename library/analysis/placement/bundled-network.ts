import type { Network } from "../../model/network.ts";
import type { NetworkResult } from "../network-result.ts";
import type { Placement } from "./placement.ts";
import { bundledRun, bundlesOf } from "./shared-channels.ts";

/**
 * The network with the conductors that share channels counted as bundled there, as 33 CFR 183.435(b) counts them from 50 V, and a builder who asks
 * for it at any voltage. A number that the plan states for a run stays. The same network if no run changes.
 */
export function bundledNetwork(
  network: Network,
  scenarios: NetworkResult["scenarios"],
  placement: Placement,
): Network {
  const bundles = bundlesOf(placement, network, scenarios);
  const greatest = new Map<number, number>();
  for (const { record, index } of placement.layout.leads)
    greatest.set(record, Math.max(greatest.get(record) ?? 0, bundles[index]!.others));
  const conductors = network.conductors.map((conductor) => {
    const others = greatest.get(conductor.record) ?? 0;
    const { run } = conductor;
    return run.bundledWithStated || others <= run.bundledWith
      ? conductor
      : { ...conductor, run: bundledRun(run, others) };
  });
  return conductors.every((conductor, index) => conductor === network.conductors[index])
    ? network
    : { ...network, conductors };
}
