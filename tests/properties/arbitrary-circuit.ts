import fc from "fast-check";
import { madeRatings } from "../../library/analysis/made-ratings.ts";
import { madeSizes } from "../../library/analysis/made-sizes.ts";
import { sampleCircuit } from "../../library/analysis/sample-circuit.tester.ts";
import type { CircuitRun, Conductor, Measured } from "../../library/model/run.ts";
import { deviceFamilies } from "../../library/standards/device-ratings.ts";

/** Conductors of every made size, one to three wires in parallel. */
export const conductors: fc.Arbitrary<Conductor> = fc
  .record({ parallel: fc.integer({ min: 1, max: 3 }), system: fc.constantFrom("awg", "metric") })
  .chain(({ parallel, system }) => {
    const like: Conductor =
      system === "awg" ? { parallel, system: "awg", awg: 18 } : { parallel, system: "metric", mm2: 0.75 };
    return fc.constantFrom(...madeSizes(like));
  });

/** Circuits of every kind that a plan can state: sound, faulty and absurd ones. Numbers of up to three decimals. */
export const circuits: fc.Arbitrary<Measured<CircuitRun>> = fc
  .record({
    loadA: decimal(0.05, 400),
    systemV: fc.constantFrom(12, 24, 48, 50, 5),
    positiveM: decimal(0.05, 30),
    negativeM: decimal(0.05, 30),
    conductor: conductors,
    insulationC: fc.constantFrom(60, 70, 75, 80, 85, 90, 105, 125, 200),
    engineSpace: fc.boolean(),
    ambient: fc.option(decimal(-30, 130)),
    others: fc.integer({ min: 0, max: 30 }),
    sheathed: fc.boolean(),
    continuous: fc.boolean(),
    dropLimitPercent: fc.constantFrom(1, 3, 5, 10),
    minimum: fc.option(decimal(0.5, 1)),
    fedFromBothEnds: fc.boolean(),
    protection: protections(),
    protectionFarEnd: protections(),
  })
  .map(({ ambient, others, minimum, ...circuit }) =>
    sampleCircuit({
      ...(circuit as Partial<Measured<CircuitRun>>),
      ambientStated: ambient !== null,
      ambientC: ambient ?? 30,
      bundledWith: others + 2 * circuit.conductor.parallel - 1,
      ...(minimum === null ? {} : { minimumV: minimum * circuit.systemV }),
    }),
  );

function protections(): fc.Arbitrary<CircuitRun["protection"]> {
  const families = Object.keys(deviceFamilies) as (keyof typeof deviceFamilies)[];
  const rating = fc.oneof(fc.constantFrom(...madeRatings()), decimal(0.5, 600));
  return fc.oneof(
    fc.constant(null),
    rating.map((ratingA) => ({ ratingA, writtenAs: "number" as const })),
    fc
      .tuple(rating, fc.constantFrom(...families))
      .map(([ratingA, family]) => ({ ratingA, family, writtenAs: "object" as const })),
  );
}

/** A number with three decimals, which shrinks to round ones. */
export function decimal(min: number, max: number): fc.Arbitrary<number> {
  return fc.integer({ min: Math.ceil(min * 1000), max: Math.floor(max * 1000) }).map((n) => n / 1000);
}
