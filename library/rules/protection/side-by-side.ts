import { summedDevices } from "../../analysis/network/faults/summed-devices.ts";
import { networkGraph } from "../../analysis/network/topology/network-graph.ts";
import { devicesInParallel, ratingBetweenLoadAndConductor } from "../../standards/protection-rules.ts";
import { runOf } from "../fixes/inserted-protection.ts";
import { placedDevice, placedInWords, relatedDevice } from "../fixes/placed-device.ts";
import { sizeInWords } from "../fixes/sized-fix.ts";
import { defineRule, inNetwork } from "../rule.ts";
import { formatDistinctWithUnit, withUnit } from "../wording/format-number.ts";
import { atConductor, listInWords } from "../wording/part-in-words.ts";
import { sizePath } from "../wording/property-paths.ts";
import { ampacitySourceInWords } from "../wording/source-in-words.ts";

export const sideBySide = defineRule<Values>({
  id: "protection/side-by-side",
  title: "Devices side by side exceed the conductor together",
  severity: "error",
  why: "Two fuses side by side let the sum of their ratings through, so the conductor behind them burns although each of them is small enough.",
  sources: [ratingBetweenLoadAndConductor, devicesInParallel],
  fixable: false,
  acceptable: true,
  ignoresLoads: "entirely",
  // Needs the devices that feed a conductor in parallel. A warning if each is the fuse of another battery.
  check: (plan) =>
    inNetwork(plan, ({ network, result }) =>
      summedDevices(networkGraph(network), result.topology).map(
        ({ conductor, ampacityA, devices, sumA, parallel }) => {
          const placed = devices.flatMap(({ index }) => placedDevice(network, index) ?? []);
          const values: Values = {
            size: sizeInWords(conductor.run.conductor),
            ampacityA,
            source: ampacitySourceInWords(runOf(plan, conductor.run).result.ampacity),
            devices: listInWords(placed.map(placedInWords), 2),
            sumA,
          };
          return {
            subject: conductor.name,
            at: atConductor(conductor, ...sizePath(conductor.run)),
            severity: parallel ? "error" : "warning",
            values,
            related: placed.slice(0, mostRelated).map((one) => relatedDevice(one)),
          };
        },
      ),
    ),
  message({ size, ampacityA, source, devices, sumA }) {
    const [allowed] = formatDistinctWithUnit(ampacityA, sumA, "A");
    return `Fed side by side by ${devices}, ${withUnit(sumA, "A")} together, and ${size} may carry ${allowed} here (${source}): put one device of at most that rating into it, or use a thicker conductor.`;
  },
});

interface Values {
  readonly size: string;
  readonly ampacityA: number;
  readonly source: string;
  readonly devices: string;
  readonly sumA: number;
}

const mostRelated = 8;
