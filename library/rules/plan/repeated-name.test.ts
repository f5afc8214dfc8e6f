import { testRule } from "../rule.tester.ts";
import { repeatedName } from "./repeated-name.ts";

testRule(repeatedName, [
  {
    name: "each circuit has a name of its own",
    circuits: [{ name: "lamps" }, { name: "lamps, fore" }],
    finds: "nothing",
  },
  {
    name: "circuits without a name are called after their place",
    plan: `for (const load of [20, 30]) circuit({ load, oneWayFt: 5, gauge: 4, protect: 50 });`,
    finds: "nothing",
  },
  {
    name: "a circuit may be called like the part that it feeds",
    plan: `
      const bank = battery({ chemistry: "AGM", capacityAh: 100 });
      const pump = motor({ name: "pump", runningA: 5, startingA: 9 });
      circuit({ name: "pump", from: bank.positive, to: pump, oneWayFt: 5, gauge: 10, protect: 10 });`,
    finds: "nothing",
  },
  {
    name: "two circuits of one name",
    circuits: [{ name: "lamps" }, { name: "lamps", load: 30 }],
    finds: [
      {
        subject: "lamps",
        record: 1,
        on: "name",
        message:
          "Another circuit has this name: give each its own, so that labels, lists and findings tell them apart.",
        values: { others: 0 },
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a period may be called like a circuit",
    plan: `
      circuit({ name: "Summer", load: 20, oneWayFt: 5, gauge: 4, protect: 50 });
      period({ name: "Summer", place: "Tarifa, ES" });`,
    finds: "nothing",
  },
  {
    name: "two periods of one name",
    plan: `
      period({ name: "Summer", place: "Tarifa, ES", months: ["Jun"] });
      period({ name: "Summer", place: "Tarifa, ES", months: ["Jul"] });`,
    finds: [
      {
        subject: "Summer",
        record: 1,
        on: "name",
        message:
          "Another period has this name: give each its own, so that findings, tables and charts tell them apart.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "three make one finding",
    circuits: [{ name: "lamps" }, { name: "lamps", load: 30 }, { name: "lamps", load: 20 }],
    finds: [
      {
        subject: "lamps",
        record: 1,
        on: "name",
        message: "Another circuit has this name, and one more: give each its own",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a cable and a circuit of one name",
    plan: `
      const bank = battery({ chemistry: "AGM", capacityAh: 100 });
      const main = busBar({ side: "positive" });
      cable({ name: "feed", from: bank.positive, to: main.stud, lengthFt: 2, gauge: 2 });
      circuit({ name: "feed", from: main.stud, returnTo: bank.negative, load: 5, oneWayFt: 5, gauge: 10, protect: 10 });`,
    finds: [
      { subject: "feed", record: 3, on: "name", message: "A cable has this name: give", fixes: "no fix" },
    ],
  },
  {
    name: "accepted with a reason",
    circuits: [
      { name: "lamps" },
      { name: "lamps", load: 30, accept: { "plan/repeated-name": "one switch, two strings" } },
    ],
    finds: [
      {
        subject: "lamps",
        record: 1,
        on: "name",
        message: "Another circuit has this name",
        accepted: "one switch, two strings",
        fixes: "no fix",
      },
    ],
  },
]);
