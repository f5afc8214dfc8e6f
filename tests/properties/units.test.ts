import fc from "fast-check";
import { expect, test } from "vitest";
import { analyseCircuit } from "../../library/analysis/analyse-circuit.ts";
import { thinnestSufficient } from "../../library/analysis/sizing.ts";
import { readModel } from "../../library/model/read-model.ts";
import type { Measured } from "../../library/model/run.ts";
import { decimal } from "./arbitrary-circuit.ts";

/** The other properties of a plan, besides its lengths. */
const rest = fc.record({
  load: decimal(0.1, 200),
  gauge: fc.constantFrom(16, 12, 8, 4, 1, "2/0"),
  protect: fc.constantFrom(5, 15, 30, 50, 100, 200),
  critical: fc.boolean(),
});

test("feet and metres, one way and both conductors apart, come out the same", () => {
  fc.assert(
    fc.property(rest, decimal(0.5, 100), (input, feet) => {
      const metres = feet * 0.3048;
      const lengths = [
        { oneWayFt: feet },
        { oneWayM: metres },
        { positiveFt: feet, negativeFt: feet },
        { positiveM: metres, negativeM: metres },
        { positiveFt: 0.5 * feet, negativeFt: 1.5 * feet },
      ];
      const [first, ...others] = lengths.map((length) => judged({ ...input, ...length }));
      for (const other of others) {
        expect(other.dropV / first!.dropV).toBeCloseTo(1, 12);
        expect(other.conductor).toEqual(first!.conductor);
        expect(other.ampacity).toEqual(first!.ampacity);
      }
    }),
  );
});

test("watts and the amperes that they are come out the same", () => {
  fc.assert(
    fc.property(rest, decimal(0.5, 30), fc.constantFrom(12, 24, 48), (input, oneWayM, voltage) => {
      const { load, ...others } = input;
      const inAmperes = judged({ ...others, oneWayM, voltage, load });
      const inWatts = judged({ ...others, oneWayM, voltage, loadW: load * voltage });
      expect(inWatts.dropV / inAmperes.dropV).toBeCloseTo(1, 12);
      expect(inWatts.conductor).toEqual(inAmperes.conductor);
    }),
  );
});

test("circuits written in another order come out the same", () => {
  fc.assert(
    fc.property(fc.array(rest, { minLength: 2, maxLength: 6 }), (inputs) => {
      const dropsV = (list: typeof inputs) =>
        results(list.map((input) => ({ ...input, oneWayFt: 10 }))).map(({ dropV }) => dropV);
      expect(dropsV([...inputs].reverse()).reverse()).toEqual(dropsV(inputs));
    }),
  );
});

function judged(input: object) {
  return results([input])[0]!;
}

function results(inputs: readonly object[]) {
  const records = inputs.map((input) => ({ word: "circuit" as const, input, fallbackName: "a circuit" }));
  const { circuits, invalid } = readModel(records);
  expect(invalid).toEqual([]);
  expect(circuits).toHaveLength(inputs.length);
  return circuits.map((circuit) => {
    const { ampacity, drop } = analyseCircuit(circuit as Measured);
    return { ampacity, dropV: drop.dropV, conductor: thinnestSufficient(circuit)?.conductor };
  });
}
