import { testRule } from "../rule.tester.ts";
import { chargeCurrent } from "./charge-current.ts";

/** A 100 Ah bank with only a charger on it. */
const charged = (outputA: number, options: string) => `
  const house = battery({ capacityAh: 100, ${options} });
  const shore = shoreCharger({ outputA: ${outputA} });
  cable({ from: shore.positive, to: house.positive, lengthFt: 3, gauge: 4 });
  cable({ from: shore.negative, to: house.negative, lengthFt: 3, gauge: 4 });`;

const agm = `chemistry: "AGM", internalMilliohm: 4`;

testRule(chargeCurrent, [
  { name: "exactly what it may take", plan: charged(30, `${agm}, maxChargeA: 30`), finds: "nothing" },
  {
    name: "just above what it may take",
    plan: charged(30.2, `${agm}, maxChargeA: 30`),
    finds: [
      {
        subject: "house",
        record: "house",
        on: "maxChargeA",
        message:
          'Takes 30.2 A in "everything on", its limit is 30 A (maxChargeA): set the chargers to give less, or add a battery in parallel.',
        values: { stated: true, limitA: 30 },
        fixes: "no fix",
      },
    ],
  },
  {
    name: "stated above what is usual: the statement counts",
    plan: charged(80, `${agm}, maxChargeA: 100`),
    finds: "nothing",
  },
  { name: "not stated, exactly what is usual for AGM", plan: charged(40, agm), finds: "nothing" },
  {
    name: "not stated, just above what is usual for AGM: information",
    plan: charged(40.2, agm),
    finds: [
      {
        subject: "house",
        record: "house",
        on: "",
        severity: "info",
        message:
          'Takes 40.2 A in "everything on"; AGM of this capacity usually takes up to 40 A, 0.4 A per Ah (common practice, no source). State maxChargeA from its data sheet.',
        values: { stated: false },
        fixes: "no fix",
      },
    ],
  },
  {
    name: "gel takes less",
    plan: charged(20.2, `chemistry: "gel", internalMilliohm: 4`),
    finds: [
      {
        on: "",
        severity: "info",
        message:
          'Takes 20.2 A in "everything on"; gel of this capacity usually takes up to 20 A, 0.2 A per Ah (common',
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a starter battery on an alternator, with a stated limit: information",
    plan: cranked("cranks", 30),
    finds: [
      {
        subject: "start",
        record: "start",
        on: "maxChargeA",
        severity: "info",
        message: "May take 90 A",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "the only battery on an alternator, which cranks nothing",
    plan: cranked("", 30),
    finds: [
      {
        subject: "start",
        record: "start",
        on: "maxChargeA",
        severity: "warning",
        message: "Takes 90 A",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "on an alternator, which holds its voltage: silent unless a limit is stated",
    plan: `
      const starter = battery({ chemistry: "flooded lead-acid", capacityAh: 70, internalMilliohm: 5 });
      const engine = alternator({ ratedA: 90 });
      cable({ from: engine.positive, to: starter.positive, lengthFt: 3, gauge: 2 });
      cable({ from: engine.negative, to: starter.negative, lengthFt: 3, gauge: 2 });`,
    finds: "nothing",
  },
  {
    name: "a starter battery that a charging relay connects with another one",
    plan: joined(""),
    finds: [
      { subject: "start", on: "maxChargeA", severity: "info", message: "May take 90 A", fixes: "no fix" },
    ],
  },
  {
    name: "the same, with a lamp on it: it is not kept full",
    plan: joined(
      'circuit({ name: "lamp", from: start.positive, load: 1, oneWayFt: 3, gauge: 12, protect: 3 });',
    ),
    finds: [
      { subject: "start", on: "maxChargeA", severity: "warning", message: "Takes 90 A", fixes: "no fix" },
    ],
  },
  {
    name: "accepted with a reason",
    plan: charged(45, `${agm}, accept: { "battery/charge-current": "data sheet: 50 A" }`),
    finds: [
      { on: "", severity: "info", message: "Takes 45 A", accepted: "data sheet: 50 A", fixes: "no fix" },
    ],
  },
  ...inPeriods(),
]);

function cranked(cranks: string, maxChargeA: number): string {
  const starter = `
    const starter = starterMotor({ name: "starter", crankingA: 200 });
    cable({ name: "crank", from: start.positive, to: starter.positive, lengthFt: 2, gauge: "1/0" });
    cable({ name: "crank return", from: starter.negative, to: start.negative, lengthFt: 2, gauge: "1/0" });`;
  return `
    build({ insulationC: 105 });
    const start = battery({ chemistry: "AGM", capacityAh: 90, internalMilliohm: 4, maxChargeA: ${maxChargeA} });
    const engine = alternator({ ratedA: 90 });
    cable({ name: "alternator", from: engine.positive, to: start.positive, lengthFt: 3, gauge: 4, protectFarEnd: 125 });
    cable({ name: "alternator return", from: engine.negative, to: start.negative, lengthFt: 3, gauge: 4 });
    ${cranks ? starter : ""}`;
}

function joined(more: string): string {
  return `
    build({ insulationC: 105 });
    const start = battery({ name: "start", chemistry: "AGM", capacityAh: 90, internalMilliohm: 4, maxChargeA: 60 });
    const back = battery({ name: "back", chemistry: "AGM", capacityAh: 200, internalMilliohm: 2, maxChargeA: 100 });
    const engine = alternator({ ratedA: 90 });
    cable({ name: "alternator", from: engine.positive, to: start.positive, lengthFt: 3, gauge: 4, protectFarEnd: 125 });
    cable({ name: "alternator return", from: engine.negative, to: start.negative, lengthFt: 3, gauge: 4 });
    const combiner = relay({ ratedA: 140 });
    cable({ name: "front", from: start.positive, to: combiner.line, lengthFt: 3, gauge: 4, protect: 125 });
    cable({ name: "rear", from: combiner.load, to: back.positive, lengthFt: 3, gauge: 4, protectFarEnd: 125 });
    cable({ name: "return", from: back.negative, to: start.negative, lengthFt: 3, gauge: 4 });
    ${more}`;
}

/** With a period. */
function inPeriods(): Parameters<typeof testRule>[1] {
  const year = (more = "") => `period({ name: "year", latitudeDeg: 45, longitudeDeg: 5 ${more} });`;
  const driven = (ratedA: number, more: string) => `
    const house = battery({ capacityAh: 100, ${agm} });
    const engine = alternator({ ratedA: ${ratedA}, continuousPercent: 100 });
    cable({ from: engine.positive, to: house.positive, lengthFt: 3, gauge: "2/0" });
    cable({ from: engine.negative, to: house.negative, lengthFt: 3, gauge: "2/0" });
    circuit({ name: "lamp", from: house.positive, returnTo: house.negative, load: 1, oneWayFt: 3, gauge: 10, use: { hoursPerDay: 1 } });
    ${more}`;
  const lamp =
    'circuit({ name: "lamp", from: house.positive, returnTo: house.negative, load: 1, oneWayFt: 3, gauge: 10, use: { hoursPerDay: 1 } });';
  const pump = lamp.replace("load: 1,", "load: 9.8,").replace("hoursPerDay: 1 ", "hoursPerDay: 24 ");
  return [
    {
      name: "the hours of a period in which the sources offer more",
      plan: `${charged(50, `${agm}, maxChargeA: 30`)} ${lamp} ${year(", shore: { fromHour: 8, untilHour: 10 }")}`,
      finds: [
        {
          on: "maxChargeA",
          message:
            'Takes 50 A in "charging, nothing on", its limit is 30 A (maxChargeA): set the chargers to give less, or add a battery in parallel. In year its sources offer more than that for about 730 h.',
          fixes: "no fix",
        },
      ],
    },
    {
      name: "a bank on an alternator, without driving hours",
      plan: driven(90, year()),
      finds: "nothing",
    },
    {
      name: "a bank on an alternator, an hour of driving a day",
      plan: driven(90, year(", driving: { fromHour: 8, untilHour: 9 }")),
      finds: [
        {
          on: "",
          severity: "info",
          message:
            "In year its sources offer up to about 90 A while the engine drives the alternator, too much for about 370 h; AGM of this capacity usually takes up to 40 A, 0.4 A per Ah (common",
          fixes: "no fix",
        },
      ],
    },
    {
      name: "a bank on an alternator that gives as much as is usual",
      plan: driven(40, year(", driving: { fromHour: 8, untilHour: 9 }")),
      finds: "nothing",
    },
    {
      name: "a slow charge of lead-acid that is never full",
      plan: `${charged(20, agm)} ${pump} ${year(", shore: { fromHour: 8, untilHour: 9 }")}`,
      finds: [
        {
          on: "",
          severity: "info",
          message:
            "In year its sources charge it with at most about 10 A; AGM of this capacity usually takes at least 20 A, 0.2 A per Ah (common practice, no source). In Jan, Feb, Mar, Apr, May, Jun, Jul, Aug, Sep, Oct, Nov and Dec it is never full: add",
          fixes: "no fix",
        },
      ],
    },
    {
      name: "a slow charge that makes it full",
      plan: `${charged(10, agm)} ${lamp} ${year(", shore: { hoursPerDay: 24 }")}`,
      finds: "nothing",
    },
    {
      name: "LiFePO4 does not mind a slow charge",
      plan: `${charged(20, agm.replace("AGM", "LiFePO4"))} ${pump} ${year(", shore: { fromHour: 8, untilHour: 9 }")}`,
      finds: "nothing",
    },
    {
      name: "the least usual charge, in too few hours",
      plan: `${charged(31, agm)} ${pump} ${year(", shore: { fromHour: 8, untilHour: 9 }")}`,
      finds: "nothing",
    },
  ];
}
