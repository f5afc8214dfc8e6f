import { testRule } from "../rule.tester.ts";
import { unlikeBatteries } from "./unlike.ts";

/** Two batteries side by side on two bus bars. */
const sideBySide = (left: string, right: string, plus = "") => `
  const left = battery({ internalMilliohm: 5, ${left} });
  const right = battery({ internalMilliohm: 5, ${right} });
  const above = busBar({}), below = busBar({});
  cable({ from: left.positive, to: above.stud, lengthFt: 2, gauge: 2 });
  cable({ from: left.negative, to: below.stud, lengthFt: 2, gauge: 2 });
  ${plus || "cable({ from: right.positive, to: above.stud, lengthFt: 2, gauge: 2 });"}
  cable({ from: right.negative, to: below.stud, lengthFt: 2, gauge: 2 });`;

/** The right one is connected only while the relay is closed. */
const relayed = `
  const tie = relay({ ratedA: 150 });
  cable({ from: right.positive, to: tie.line, lengthFt: 2, gauge: 2 });
  cable({ from: tie.load, to: above.stud, lengthFt: 2, gauge: 2 });`;

const inSeries = (lower: string, upper: string) => `
  build({ voltage: 24 });
  const lower = battery({ nominalV: 12, internalMilliohm: 5, ${lower} });
  const upper = battery({ nominalV: 12, internalMilliohm: 5, ${upper} });
  cable({ from: lower.positive, to: upper.negative, lengthFt: 1, gauge: 2 });
  circuit({ name: "lamp", from: upper.positive, returnTo: lower.negative, load: 5, oneWayFt: 5, gauge: 12, protect: 10 });`;

const agm = `chemistry: "AGM", capacityAh: 100`;

// Common practice, no source: batteries of one kind, age and capacity in a bank.
testRule(unlikeBatteries, [
  { name: "two alike", plan: sideBySide(agm, agm), finds: "nothing" },
  {
    name: "12 V beside 24 V: the cause of everything else that is found",
    plan: sideBySide(agm, `${agm}, nominalV: 24`),
    finds: [
      {
        subject: "right",
        record: "right",
        on: "nominalV",
        severity: "error",
        message:
          "24 V in parallel with 12 V (the battery left): the difference drives about 1,200 A through both. Take them apart, and charge one from the other with a DC-DC charger.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "12 V and 12.8 V of LiFePO4 are the same four cells",
    plan: sideBySide(
      'chemistry: "LiFePO4", capacityAh: 100, nominalV: 12',
      'chemistry: "LiFePO4", capacityAh: 100, nominalV: 12.8',
    ),
    finds: "nothing",
  },
  {
    name: "lithium beside lead-acid",
    plan: sideBySide(agm, 'chemistry: "LiFePO4", capacityAh: 100'),
    finds: [
      {
        subject: "right",
        on: "chemistry",
        severity: "error",
        message:
          "LiFePO4 in parallel with AGM (the battery left): it rests at a higher voltage, and each is charged to the wrong one. Put a DC-DC charger between them.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "lithium and lead-acid that a relay joins: judged in its closed state",
    plan: sideBySide(agm, 'chemistry: "LiFePO4", capacityAh: 100', relayed),
    finds: [
      {
        on: "chemistry",
        severity: "warning",
        message: "LiFePO4 in parallel with AGM (the battery left)",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "two kinds of lead-acid that a relay joins, as a starter's and a house battery: usual",
    plan: sideBySide(agm, 'chemistry: "flooded lead-acid", capacityAh: 70', relayed),
    finds: "nothing",
  },
  {
    name: "two kinds of lead-acid in one bank",
    plan: sideBySide(agm, 'chemistry: "gel", capacityAh: 100'),
    finds: [
      {
        on: "chemistry",
        severity: "warning",
        message:
          "Gel in parallel with AGM (the battery left): one of them is always charged to the wrong voltage. Use batteries of one kind.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "capacities within 10 % are alike",
    plan: sideBySide(agm, 'chemistry: "AGM", capacityAh: 110'),
    finds: "nothing",
  },
  {
    name: "capacities in parallel that differ by more",
    plan: sideBySide(agm, 'chemistry: "AGM", capacityAh: 111'),
    finds: [
      {
        on: "capacityAh",
        severity: "warning",
        message:
          "111 Ah in parallel with 100 Ah (the battery left): they do not share the current by their capacity. Use batteries of one kind and age.",
        fixes: "no fix",
      },
    ],
  },
  { name: "a string of two alike", plan: inSeries(agm, agm), finds: "nothing" },
  {
    name: "unequal capacity in series",
    plan: inSeries(agm, 'chemistry: "AGM", capacityAh: 80'),
    finds: [
      {
        subject: "upper",
        on: "capacityAh",
        severity: "warning",
        message:
          "80 Ah in series with 100 Ah (the battery lower): the smaller one is empty first, and the others then drive it into reversal. Use batteries of one kind.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "accepted with a reason",
    plan: sideBySide(
      agm,
      `chemistry: "gel", capacityAh: 100, accept: { "battery/unlike": "both makers ask for 14.4 V" }`,
    ),
    finds: [
      {
        on: "chemistry",
        message: "Gel in parallel with AGM",
        accepted: "both makers ask for 14.4 V",
        fixes: "no fix",
      },
    ],
  },
]);
