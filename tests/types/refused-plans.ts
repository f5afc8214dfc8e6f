/*
 * Plans that the compiler must refuse, and their neighbours that it must not. Nothing here is run: the compiler reports every
 * `@ts-expect-error` under which nothing is wrong. The words of its messages are held by compiler-messages.test.ts.
 */
import {
  type AwgSize,
  type BuildInput,
  build,
  type CircuitInput,
  type CircuitOptions,
  circuit,
  type LengthInput,
  type LoadInput,
  type Mm2Size,
  type PlannedCircuit,
  type ProtectionInput,
  type RuleId,
  type SizeInput,
} from "loomwright";

const rest = { load: 40, oneWayFt: 15 } as const;

// Every size that is made, and none beside it.
circuit({ ...rest, gauge: 18 });
circuit({ ...rest, gauge: 1 });
circuit({ ...rest, gauge: "1/0" });
circuit({ ...rest, gauge: "4/0" });
circuit({ ...rest, mm2: 0.75 });
circuit({ ...rest, mm2: 150 });
// @ts-expect-error: 20 is thinner than any table goes
circuit({ ...rest, gauge: 20 });
// @ts-expect-error: between two sizes
circuit({ ...rest, gauge: 5 });
// @ts-expect-error: 1/0 is written as text
circuit({ ...rest, gauge: 0 });
// @ts-expect-error: nothing is thicker than 4/0
circuit({ ...rest, gauge: "5/0" });
// @ts-expect-error: a size that is a number is not written as text
circuit({ ...rest, gauge: "4" });
// @ts-expect-error: below the thinnest
circuit({ ...rest, mm2: 0.5 });
// @ts-expect-error: between two sizes
circuit({ ...rest, mm2: 3 });
// @ts-expect-error: above the thickest
circuit({ ...rest, mm2: 185 });
// @ts-expect-error: any number is too wide
circuit({ ...rest, gauge: Number(4) });

// Exactly one of each.
circuit({ loadW: 480, oneWayM: 4.5, mm2: 25 });
circuit({ load: 40, positiveFt: 12, negativeFt: 3, gauge: 4 });
circuit({ load: 40, positiveM: 4, negativeM: 1, mm2: 25 });
// @ts-expect-error: both sizes
circuit({ ...rest, gauge: 4, mm2: 25 });
// @ts-expect-error: no size
circuit({ ...rest });
// @ts-expect-error: both loads
circuit({ load: 40, loadW: 480, oneWayFt: 15, gauge: 4 });
// @ts-expect-error: no load
circuit({ oneWayFt: 15, gauge: 4 });
// @ts-expect-error: no length
circuit({ load: 40, gauge: 4 });
// @ts-expect-error: two lengths
circuit({ load: 40, oneWayFt: 15, oneWayM: 4.5, gauge: 4 });
// @ts-expect-error: one way and both conductors
circuit({ load: 40, oneWayFt: 15, positiveFt: 12, negativeFt: 3, gauge: 4 });
// @ts-expect-error: the negative conductor is missing
circuit({ load: 40, positiveFt: 12, gauge: 4 });
// @ts-expect-error: conductors in two units
circuit({ load: 40, positiveFt: 12, negativeM: 1, gauge: 4 });
// @ts-expect-error: nothing at all
circuit({});
// @ts-expect-error: no argument
circuit();

// The rest of a circuit.
circuit({ ...rest, gauge: 4, voltage: 12 });
circuit({ ...rest, gauge: 4, voltage: 13.8 });
// @ts-expect-error: text
circuit({ ...rest, gauge: 4, voltage: "12" });
// @ts-expect-error: not a rating of the tables
circuit({ ...rest, gauge: 4, insulationC: 100 });
// @ts-expect-error: yes is not true
circuit({ ...rest, gauge: 4, critical: "yes" });
// @ts-expect-error: misspelt
circuit({ ...rest, gauge: 4, protekt: 50 });
// @ts-expect-error: a property of build
circuit({ ...rest, gauge: 4, dropPercent: 5 });
// @ts-expect-error: null says nothing
circuit({ ...rest, gauge: 4, protect: null });

// Protection.
circuit({ ...rest, gauge: 4, protect: { ratingA: 50 } });
circuit({
  ...rest,
  gauge: 4,
  protect: { ratingA: 50, distanceIn: 6 },
  protectFarEnd: { ratingA: 50, distanceMm: 150 },
});
// @ts-expect-error: no rating
circuit({ ...rest, gauge: 4, protect: {} });
// @ts-expect-error: both distances
circuit({ ...rest, gauge: 4, protect: { ratingA: 50, distanceIn: 6, distanceMm: 150 } });
// @ts-expect-error: not a family
circuit({ ...rest, gauge: 4, protect: { ratingA: 50, family: "glass" } });

// Accepted findings.
circuit({ ...rest, gauge: 4, accept: { "conductor/voltage-drop": "in summer only" } });
// @ts-expect-error: no such rule
circuit({ ...rest, gauge: 4, accept: { "conductor/voltage-drap": "in summer only" } });
// @ts-expect-error: a plan that cannot be read cannot be accepted
circuit({ ...rest, gauge: 4, accept: { "plan/invalid-value": "in summer only" } });
// @ts-expect-error: the reason is text
circuit({ ...rest, gauge: 4, accept: { "conductor/voltage-drop": true } });

// Build.
build({});
build({ voltage: 24, insulationC: 105, dropPercent: 5 });
// @ts-expect-error: findings are accepted where they are, in the circuit
build({ accept: { "conductor/voltage-drop": "in summer only" } });
// @ts-expect-error: misspelt
build({ ambient: 40 });

// What is given back is frozen.
const heater = circuit({ ...rest, gauge: 4 });
// @ts-expect-error: read only
heater.name = "Heater";
// @ts-expect-error: read only
build({}).voltage = 24;

// People's own functions.
const lamp = (name: string, length: LengthInput, size: SizeInput): PlannedCircuit =>
  circuit({ name, loadW: 6, protect: 5, ...length, ...size });
lamp("Reading lamp", { oneWayM: 3 }, { mm2: 1.5 });
lamp("Reading lamp", { positiveFt: 3, negativeFt: 1 }, { gauge: 16 });
// @ts-expect-error: both lengths
lamp("Reading lamp", { oneWayM: 3, oneWayFt: 9 }, { gauge: 16 });
const wired = (load: LoadInput, options: CircuitOptions) =>
  circuit({ ...load, ...options, oneWayFt: 3, gauge: 4 });
wired({ loadW: 60 }, { critical: true });
const inputs: readonly CircuitInput[] = [
  { ...rest, gauge: 4 },
  { loadW: 5, oneWayM: 2, mm2: 1 },
];
inputs.map(circuit);
const sizes: readonly [AwgSize, Mm2Size] = [4, 25];
circuit({ ...rest, gauge: sizes[0] });
const fuse: ProtectionInput = { ratingA: 5, distanceMm: 90 };
circuit({ ...rest, gauge: 4, protect: fuse });
const settings: BuildInput = { voltage: 12 };
build(settings);
const rule: RuleId = "conductor/ampacity";
circuit({ ...rest, gauge: 4, accept: { [rule]: "short bursts" } });
