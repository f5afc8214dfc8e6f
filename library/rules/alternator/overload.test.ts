import { testRule } from "../rule.tester.ts";
import { alternatorOverload } from "./overload.ts";

const second = `
    const other = alternator({ ratedA: 100 });
    cable({ name: "other alternator", from: other.positive, to: start.positive, lengthFt: 3, gauge: "2/0", protectFarEnd: 200 });
    cable({ name: "other return", from: other.negative, to: start.negative, lengthFt: 3, gauge: "2/0" });`;

// 80 % of 100 A are 80 A. A constant-current load draws its stated current at any voltage.
testRule(alternatorOverload, [
  { name: "exactly what it gives for hours", plan: planWith({ load: 80 }), finds: "nothing" },
  {
    name: "a little more than it gives for hours, in a scenario of the plan",
    plan: planWith({ load: 80.1 }),
    finds: [
      {
        subject: "engine",
        record: "engine",
        on: "ratedA",
        severity: "warning",
        message:
          'Must supply 80.1 A in "under way" (lights), its continuous limit is 80 A, 80 % of 100 A (FAA AC 43.13-1B 11-35a): charge with less, or run less at once.',
        values: { demandA: 80.1, allowedA: 80 },
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a continuous share that is stated",
    plan: planWith({ load: 80.1, alternator: "ratedA: 100, continuousPercent: 90" }),
    finds: "nothing",
  },
  {
    name: "a load that does not run for hours",
    plan: planWith({ load: 200, loadIs: "continuous: false" }),
    finds: "nothing",
  },
  {
    name: "a heater that a circuit for minutes ends at",
    plan: planWith({
      load: 1,
      more: `
        const heater = load({ name: "heater", currentA: 200 });
        circuit({ name: "heater feed", from: start.positive, to: heater, oneWayFt: 3, gauge: "4/0", protect: 300, continuous: false });`,
    }),
    finds: "nothing",
  },
  {
    name: "an inverter that a circuit for minutes ends at",
    plan: planWith({
      load: 1,
      more: `
        const drill = inverter({ name: "drill", continuousW: 2_000 });
        circuit({ name: "drill feed", from: start.positive, to: drill, oneWayFt: 3, gauge: "4/0", protect: 300, continuous: false });`,
    }),
    finds: "nothing",
  },
  {
    name: "the engine is off in the scenario",
    plan: planWith({ load: 90, scenario: 'scenario({ name: "at anchor" });' }),
    finds: "nothing",
  },
  {
    name: "only the built-in scenario switches everything on: information",
    plan: planWith({ load: 90, scenario: "" }),
    finds: [
      {
        on: "ratedA",
        severity: "info",
        message: 'Must supply 90 A in "everything on" (lights), its continuous limit is',
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a DC-DC charger counts with what it takes at its input, whatever the scenario",
    plan: planWith({ load: 1, scenario: "", more: charger(60) }),
    finds: "nothing",
  },
  {
    name: "a DC-DC charger that takes more than the alternator gives for hours",
    plan: planWith({ load: 1, scenario: "", more: charger(90) }),
    finds: [
      {
        on: "ratedA",
        severity: "warning",
        message:
          'Must supply 111 A (estimated: 12 V at rest) in "everything on" (the charger), its continuous limit is',
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a LiFePO4 battery takes all that the alternator gives, for hours",
    plan: planWith({ load: 1, chemistry: "LiFePO4", scenario: "" }),
    finds: [
      {
        on: "ratedA",
        severity: "warning",
        message: 'Must supply 100 A in "everything on" (the battery start), its continuous limit is',
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a LiFePO4 battery takes all of it beside a lead-acid battery, which is full after some minutes",
    plan: planWith({ load: 1, scenario: "", more: lithium("") }),
    finds: [
      {
        on: "ratedA",
        severity: "warning",
        message: 'Must supply 100 A in "everything on" (the battery house), its continuous limit is 80 A',
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a LiFePO4 battery whose charge limit is what the alternator gives for hours",
    plan: planWith({ load: 1, loadIs: "continuous: false", scenario: "", more: lithium("maxChargeA: 80") }),
    finds: "nothing",
  },
  {
    name: "a LiFePO4 battery whose charge limit is a little more",
    plan: planWith({ load: 1, loadIs: "continuous: false", scenario: "", more: lithium("maxChargeA: 80.1") }),
    finds: [{ on: "ratedA", severity: "warning", message: "Must supply 80.1 A", fixes: "no fix" }],
  },
  {
    name: "two LiFePO4 batteries: the one with a lower limit leaves more to the other, and a load comes on top",
    plan: planWith({
      load: 10,
      more: `${lithium("maxChargeA: 30")} ${lithium("maxChargeA: 200", "second")}`,
    }),
    finds: [
      {
        on: "ratedA",
        severity: "warning",
        message: 'Must supply 110 A in "under way" (the battery second, the battery house and lights)',
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a LiFePO4 battery behind a switch that is open in the scenario",
    plan: planWith({
      load: 1,
      scenario: 'scenario({ name: "under way", engine: true, off: [combiner] });',
      more: `const combiner = disconnect({ ratedA: 200 });
        ${lithium("", "house", "combiner.load")}
        cable({ name: "to the combiner", from: start.positive, to: combiner.line, lengthFt: 3, gauge: "2/0", protect: 200 });`,
    }),
    finds: "nothing",
  },
  {
    name: "two alternators share",
    plan: planWith({ load: 150, more: second }),
    finds: "nothing",
  },
  {
    name: "too much for two alternators together is told once",
    plan: planWith({ load: 170, more: second }),
    finds: [
      {
        subject: "engine",
        on: "ratedA",
        message:
          'Must supply 170 A in "under way" (lights), its continuous limit is 160 A, 80 % of 200 A together (FAA AC 43.13-1B 11-35a)',
        fixes: "no fix",
      },
    ],
  },
  {
    name: "accepted with a reason",
    plan: planWith({
      load: 90,
      alternator: 'ratedA: 100, accept: { "alternator/overload": "a fan cools it" }',
    }),
    finds: [{ on: "ratedA", message: "Must supply 90 A", accepted: "a fan cools it", fixes: "no fix" }],
  },
]);

interface Changes {
  /** A. */
  readonly load: number;
  readonly loadIs?: string;
  readonly alternator?: string;
  readonly chemistry?: string;
  readonly scenario?: string;
  readonly more?: string;
}

/** An alternator on a starting battery, and lights connected to both. */
function planWith({
  load,
  loadIs = "",
  alternator = "ratedA: 100",
  chemistry = "flooded lead-acid",
  scenario = 'scenario({ name: "under way", engine: true });',
  more = "",
}: Changes): string {
  return `
    build({ insulationC: 105 });
    const start = battery({ chemistry: "${chemistry}", capacityAh: 90, internalMilliohm: 4 });
    const engine = alternator({ ${alternator} });
    cable({ name: "alternator", from: engine.positive, to: start.positive, lengthFt: 3, gauge: "2/0", protectFarEnd: 200 });
    cable({ name: "alternator return", from: engine.negative, to: start.negative, lengthFt: 3, gauge: "2/0" });
    circuit({ name: "lights", from: start.positive, load: ${load}, oneWayFt: 3, gauge: "4/0", protect: 300, ${loadIs} });
    ${more}
    ${scenario}`;
}

/** A lithium battery beside the starting battery, with no charger between. */
function lithium(properties: string, name = "house", at = "start.positive"): string {
  return `
    const ${name} = battery({ chemistry: "LiFePO4", capacityAh: 200, internalMilliohm: 4, ${properties} });
    cable({ name: "${name}", from: ${at}, to: ${name}.positive, lengthFt: 3, gauge: "2/0", protect: 200, protectFarEnd: 200 });
    cable({ name: "${name} return", from: start.negative, to: ${name}.negative, lengthFt: 3, gauge: "2/0" });`;
}

function charger(outputA: number): string {
  return `
    const house = battery({ chemistry: "LiFePO4", capacityAh: 200, internalMilliohm: 2 });
    const dc = dcDcCharger({ name: "charger", outputA: ${outputA}, isolated: true });
    circuit({ name: "charger input", from: start.positive, to: dc, oneWayFt: 6, gauge: 1, protect: 150 });
    cable({ name: "charger output", from: dc.outputPositive, to: house.positive, lengthFt: 3, gauge: 1, protectFarEnd: 150 });
    cable({ name: "charger return", from: dc.outputNegative, to: house.negative, lengthFt: 3, gauge: 1 });`;
}
