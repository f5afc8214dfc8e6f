import fc from "fast-check";
import { expect, test } from "vitest";
import { sampledRuns } from "../tests/setup/sampled.ts";
import { type Judgement, judge } from "./judge.ts";
import type { PlanRecord } from "./model/record.ts";
import { recordsOf } from "./model/sample-plan.tester.ts";
import { battery } from "./plan/battery.ts";
import { build } from "./plan/build.ts";
import { busBar } from "./plan/bus-bar.ts";
import { cable } from "./plan/cable.ts";
import { circuit } from "./plan/circuit.ts";
import { disconnect } from "./plan/disconnect.ts";
import { fusePanel } from "./plan/fuse-panel.ts";
import { inverter } from "./plan/inverter.ts";
import { load } from "./plan/load.ts";
import { continueNumberingAt } from "./plan/numbering.ts";
import { runExample } from "./rules/page.tester.ts";

/** Everything that one keystroke may change, by record: what is drawn, sizes, devices, names, ways, and what is refused. */
const edits: readonly { readonly record: number; readonly property: string; readonly values: unknown[] }[] = [
  { record: 0, property: "insulationC", values: [75, 105, undefined] },
  { record: 0, property: "name", values: ["boat", "hut"] },
  { record: 1, property: "internalMilliohm", values: [2, 5] },
  { record: 1, property: "capacityAh", values: [100, 200] },
  { record: 3, property: "ratedA", values: [20, 200] },
  { record: 4, property: "ratedA", values: [15, 100] },
  { record: 6, property: "protect", values: [undefined, 30, 60] },
  { record: 6, property: "gauge", values: [2, 16] },
  { record: 7, property: "lengthFt", values: [2, 40] },
  { record: 10, property: "load", values: [2, 4, 15, -1] },
  { record: 10, property: "load", values: [3, 5] },
  { record: 10, property: "minimumV", values: [undefined, 11.5] },
  { record: 10, property: "maximumV", values: [undefined, 11.9, 32] },
  { record: 10, property: "dropLimitPercent", values: [undefined, 1] },
  { record: 10, property: "name", values: ["lamp", "pump"] },
  { record: 10, property: "continuous", values: [true, false] },
  { record: 11, property: "loadW", values: [20, 150] },
  { record: 11, property: "protect", values: [10, { ratingA: 25, distanceIn: 3 }] },
  { record: 11, property: "oneWayFt", values: [4, 60] },
  { record: 12, property: "loadW", values: [100, 900] },
  { record: 13, property: "currentA", values: [1, 30] },
  { record: 2, property: "largestGauge", values: [undefined, 10] },
  { record: 12, property: "maxFuseA", values: [undefined, 20] },
  { record: 13, property: "name", values: ["fan", "bilge pump"] },
  { record: 14, property: "gauge", values: [10, 16] },
  { record: 14, property: "accept", values: [undefined, { "protection/missing": "short" }] },
  // A circuit outside of the network, which no edit of it changes.
  { record: 18, property: "largestGauge", values: [undefined, 14] },
  { record: 18, property: "maxFuseA", values: [undefined, 5] },
  { record: 18, property: "gauge", values: [12, 18] },
  { record: 18, property: "protect", values: [10, undefined, { ratingA: 10, interruptingA: 50 }] },
];

function startingPlan(): PlanRecord[] {
  continueNumberingAt(0);
  const settings = build({ voltage: 12 });
  const bank = battery({ chemistry: "AGM", capacityAh: 100 });
  const positive = busBar({ side: "positive" });
  const isolator = disconnect({ ratedA: 100 });
  const panel = fusePanel({ positions: 4 });
  const negative = busBar({ side: "negative" });
  const heavy = { gauge: 2, lengthFt: 2 } as const;
  const main = cable({ ...heavy, from: bank.positive, to: isolator.line, protect: 60 });
  const onwards = cable({ ...heavy, from: isolator.load, to: positive.stud });
  const home = cable({ ...heavy, from: bank.negative, to: negative.stud });
  const feeder = circuit({
    from: positive.stud,
    returnTo: negative.stud,
    to: panel,
    oneWayFt: 3,
    gauge: 8,
    protect: 40,
  });
  const lamp = circuit({ from: panel.branch, load: 4, oneWayFt: 12, gauge: 14, protect: 10 });
  const heater = circuit({ from: panel.branch, loadW: 60, oneWayFt: 8, gauge: 12, protect: 10 });
  const mains = inverter({ continuousW: 300, loadW: 200 });
  const fan = load({ currentA: 2 });
  const toFan = cable({ from: positive.stud, to: fan.positive, lengthFt: 5, gauge: 14 });
  const fromFan = cable({ from: fan.negative, to: negative.stud, lengthFt: 5, gauge: 14 });
  const toMains = cable({ ...heavy, from: positive.stud, to: mains.positive, protect: 50 });
  const fromMains = cable({ ...heavy, from: mains.negative, to: negative.stud });
  const lone = circuit({ load: 5, oneWayFt: 6, gauge: 12, protect: 10 });
  const made = [settings, bank, positive, isolator, panel, negative, main, onwards, home, feeder];
  return [...recordsOf([...made, lamp, heater, mains, fan, toFan, fromFan, toMains, fromMains, lone])];
}

/** All that is told, with the ways written out, which a function tells. */
function told({ network, ...judgement }: Judgement) {
  if (!network) return judgement;
  const { topology, ...result } = network.result;
  const { wayFromSource, ...hangsTogether } = topology;
  const ways = network.network.terminals.map((_, terminal) => wayFromSource(terminal));
  return { ...judgement, network: { network: network.network, result, hangsTogether, ways } };
}

test("an earlier judgement makes no difference to what is told", () => {
  let borrowed = 0;
  const anyEdits = fc.array(fc.record({ edit: fc.constantFrom(...edits), choice: fc.nat() }), {
    minLength: 1,
    maxLength: 12,
  });
  fc.assert(
    fc.property(anyEdits, (steps) => {
      const records = startingPlan();
      let before = judge(records, []);
      for (const {
        edit: { record, property, values },
        choice,
      } of steps) {
        const edited = records[record]!;
        const input = { ...(edited.input as object), [property]: values[choice % values.length] };
        records[record] = { ...edited, input };
        const after = judge(records, [], before);
        // Of copies: nothing that is remembered by its identity is known of them.
        expect(told(after)).toEqual(told(judge(structuredClone(records), [])));
        if (after.network && after.network.result.topology === before.network?.result.topology) borrowed++;
        before = after;
      }
    }),
    { numRuns: sampledRuns(40) },
  );
  expect(borrowed).toBeGreaterThan(10);
});

test("a judgement of another plan makes no difference either", () => {
  const records = startingPlan();
  const other = judge(records.slice(0, -2), []);
  expect(told(judge(records, [], other))).toEqual(told(judge(structuredClone(records), [])));
});

test("an edit of what a load draws leaves what hangs together as it was; one of a size does not", () => {
  const records = startingPlan();
  const before = judge(records, []);
  const edited = (record: number, change: object) =>
    judge(
      records.map((one, index) =>
        index === record ? { ...one, input: { ...(one.input as object), ...change } } : one,
      ),
      [],
      before,
    ).network!.result;
  const { topology, faults } = before.network!.result;
  expect(edited(10, { load: 5 }).topology).toBe(topology);
  expect(edited(10, { load: 5 }).faults).toBe(faults);
  expect(edited(13, { currentA: 5 }).faults).toBe(faults);
  expect(edited(10, { gauge: 10 }).topology).not.toBe(topology);
  expect(edited(1, { internalMilliohm: 9 }).faults).not.toBe(faults);
});

test("judges a circuit by the conductor of the two that carries more", () => {
  const { circuits } = judge(
    runExample(`
build({ insulationC: 105 });
const bank = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 5 });
const panel = fusePanel({ positions: 4 });
circuit({ name: "feeder", from: bank.positive, to: panel, oneWayFt: 5, gauge: 10, protect: 40 });
circuit({ name: "lamp", from: panel.branch, load: 4, oneWayFt: 5, gauge: 12, protect: 5 });
circuit({ name: "heater", from: bank.positive, returnTo: panel.negative, load: 25, oneWayFt: 5, gauge: 10, protect: 40 });`)
      .records,
    [],
  );
  // The heater is fed past the panel, but its current comes back through the panel's feeder.
  const feeder = circuits.find(({ circuit }) => circuit.name === "feeder");
  expect(feeder?.circuit.loadA).toBeCloseTo(29, 6);
});
