import { testRule } from "../rule.tester.ts";
import { dischargeCurrent } from "./discharge-current.ts";

const bank = (rest: string, more = "") => `
  const house = battery({ chemistry: "LiFePO4", capacityAh: 100, internalMilliohm: 6, maxDischargeA: 100${more} });
  const out = (name, load) =>
    circuit({ name, from: house.positive, load, oneWayFt: 5, gauge: 1, protect: 150 });
  ${rest}`;

testRule(dischargeCurrent, [
  { name: "exactly what it may give", plan: bank(`out("oven", 60); out("pump", 40);`), finds: "nothing" },
  {
    name: "just above what it may give",
    plan: bank(`out("oven", 60); out("pump", 40.2);`),
    finds: [
      {
        subject: "house",
        record: "house",
        on: "maxDischargeA",
        message:
          'Gives 100.2 A in "everything on", its limit is 100 A (maxDischargeA): run less at once, or add a battery in parallel.',
        fixes: "no fix",
      },
    ],
  },
  {
    name: "one of two in series gives less than the other",
    plan: `
      build({ voltage: 24 });
      const lower = battery({ chemistry: "AGM", nominalV: 12, capacityAh: 100, internalMilliohm: 6, maxDischargeA: 100 });
      const upper = battery({ name: "upper", chemistry: "AGM", nominalV: 12, capacityAh: 100, internalMilliohm: 6, maxDischargeA: 50 });
      cable({ from: lower.positive, to: upper.negative, lengthFt: 1, gauge: 2 });
      circuit({ name: "oven", from: upper.positive, returnTo: lower.negative, load: 60, oneWayFt: 5, gauge: 1, protect: 80 });`,
    finds: [
      {
        subject: "upper",
        record: "upper",
        on: "maxDischargeA",
        severity: "error",
        message:
          'Gives 60 A in "everything on", its limit is 50 A (maxDischargeA): run less at once, or use one that gives as much as the others in its string, with a second string if need be.',
        fixes: "no fix",
      },
    ],
  },
  {
    name: "cranking takes more than lithium may give",
    plan: `
      const start = battery({ name: "start", chemistry: "LiFePO4", capacityAh: 60, internalMilliohm: 8, maxDischargeA: 100 });
      const starter = starterMotor({ name: "starter", crankingA: 220 });
      cable({ from: start.positive, to: starter.positive, lengthFt: 4, gauge: 1 });
      cable({ from: starter.negative, to: start.negative, lengthFt: 4, gauge: 1 });`,
    finds: [
      {
        subject: "start",
        record: "start",
        on: "maxDischargeA",
        severity: "warning",
        message:
          'Gives 220 A in "cranking the engine", its limit is 100 A (maxDischargeA), and its protection may cut off within the seconds that cranking takes',
        values: { isForSeconds: true },
        fixes: "no fix",
      },
    ],
  },
  {
    name: "lithium that may give as much",
    plan: `
      const start = battery({ name: "start", chemistry: "LiFePO4", capacityAh: 60, internalMilliohm: 8, maxDischargeA: 220 });
      const starter = starterMotor({ name: "starter", crankingA: 220 });
      cable({ from: start.positive, to: starter.positive, lengthFt: 4, gauge: 1 });
      cable({ from: starter.negative, to: start.negative, lengthFt: 4, gauge: 1 });`,
    finds: "nothing",
  },
  {
    name: "lead-acid is not cut off",
    plan: `
      const start = battery({ name: "start", chemistry: "AGM", capacityAh: 60, internalMilliohm: 8, maxDischargeA: 100 });
      const starter = starterMotor({ name: "starter", crankingA: 220 });
      cable({ from: start.positive, to: starter.positive, lengthFt: 4, gauge: 1 });
      cable({ from: starter.negative, to: start.negative, lengthFt: 4, gauge: 1 });`,
    finds: "nothing",
  },
  {
    name: "no limit is stated, exactly the usual rate of LiFePO4",
    plan: bank(`out("oven", 50);`).replace(", maxDischargeA: 100", ""),
    finds: "nothing",
  },
  {
    name: "no limit is stated, just above the usual rate: information",
    plan: bank(`out("oven", 50.2);`).replace(", maxDischargeA: 100", ""),
    finds: [
      {
        subject: "house",
        record: "house",
        on: "",
        severity: "info",
        message:
          'Gives 50.2 A in "everything on", and its limit is not stated; LiFePO4 of this capacity usually gives 50 A for hours, 0.5 A per Ah (common practice, no source). State maxDischargeA from its data sheet.',
        values: { stated: false },
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a charger helps while it runs, but not on the bank alone",
    plan: bank(`
      const shore = shoreCharger({ outputA: 30 });
      cable({ from: shore.positive, to: house.positive, lengthFt: 3, gauge: 4 });
      cable({ from: shore.negative, to: house.negative, lengthFt: 3, gauge: 4 });
      out("oven", 110);`),
    finds: [
      {
        on: "maxDischargeA",
        message: 'Gives 110 A in "on the bank alone", its limit is 100 A',
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a motor that starts is no lasting current",
    plan: bank(`
      const winch = motor({ runningA: 70, startingA: 200 });
      circuit({ from: house.positive, to: winch, oneWayFt: 5, gauge: 1, protect: 100 });
      scenario({ name: "start", starting: [winch] });
      scenario({ name: "run", on: [winch] });`),
    finds: "nothing",
  },
  {
    name: "two side by side give half each",
    plan: bank(`
      const second = battery({ chemistry: "LiFePO4", capacityAh: 100, internalMilliohm: 6, maxDischargeA: 100 });
      const plus = busBar({}), minus = busBar({});
      for (const one of [house, second]) {
        cable({ from: one.positive, to: plus.stud, lengthFt: 1, gauge: 1 });
        cable({ from: one.negative, to: minus.stud, lengthFt: 1, gauge: 1 });
      }
      circuit({ from: plus.stud, returnTo: minus.stud, load: 199, oneWayFt: 3, gauge: "2/0", protect: 250 });`),
    finds: "nothing",
  },
  {
    name: "accepted with a reason",
    plan: bank(
      `out("oven", 101);`,
      `, accept: { "battery/discharge-current": "150 A for 10 min, data sheet p. 2" }`,
    ),
    finds: [
      {
        on: "maxDischargeA",
        message: "Gives 101 A",
        accepted: "150 A for 10 min, data sheet p. 2",
        fixes: "no fix",
      },
    ],
  },
]);
