import { testRule } from "../rule.tester.ts";
import { busRating } from "./rating.ts";

/** A bank on a bus bar for 100 A, and the loads on the bus. */
const bus = (rest: string, options = "ratedA: 100") => `
  const house = battery({ chemistry: "AGM", capacityAh: 200, internalMilliohm: 3 });
  const main = busBar({ ${options} });
  cable({ from: house.positive, to: main.stud, lengthFt: 2, gauge: "2/0" });
  const out = (name, load) =>
    circuit({ name, from: main.stud, returnTo: house.negative, load, oneWayFt: 5, gauge: 4, protect: 80 });
  ${rest}`;

testRule(busRating, [
  {
    name: "two loads that add up to the rating exactly",
    plan: bus(`out("oven", 60); out("pump", 40);`),
    finds: "nothing",
  },
  {
    name: "two loads that add up to just above it",
    plan: bus(`out("oven", 60); out("pump", 40.1);`),
    finds: [
      {
        subject: "main",
        record: "main",
        on: "ratedA",
        message:
          'Carries 100.1 A in "everything on", its rating is 100 A (ratedA): use a bus bar with a higher one, or move loads to another.',
        values: { ratedA: 100 },
        fixes: "no fix",
      },
    ],
  },
  {
    name: "just below twice the heat of its rating",
    plan: bus(`out("oven", 75); out("pump", 66);`),
    finds: [{ severity: "warning", on: "ratedA", message: "Carries 141 A", fixes: "no fix" }],
  },
  {
    name: "just above twice the heat of its rating",
    plan: bus(`out("oven", 75); out("pump", 67);`),
    finds: [{ severity: "error", on: "ratedA", message: "Carries 142 A", fixes: "no fix" }],
  },
  {
    name: "behind a device above its rating, and devices behind it that add up to more",
    plan: bus(`out("oven", 30); out("pump", 30);`).replace('gauge: "2/0" }', 'gauge: "2/0", protect: 150 }'),
    finds: [
      {
        subject: "main",
        on: "ratedA",
        severity: "warning",
        message:
          "No device below 150 A protects this bus bar, its rating is 100 A (ratedA), and the devices behind it let more through together: further loads could overload it (common practice, no source). Put a fuse of at most 100 A before it, or use a bus bar with a higher rating.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "behind the rating that a continuous load of its rating asks for",
    plan: bus(`out("oven", 30); out("pump", 30);`).replace('gauge: "2/0" }', 'gauge: "2/0", protect: 125 }'),
    finds: [{ on: "ratedA", severity: "info", message: "No device below 125 A", fixes: "no fix" }],
  },
  {
    name: "the devices behind it let no more through",
    plan: bus(`out("oven", 30);`).replace('gauge: "2/0" }', 'gauge: "2/0", protect: 150 }'),
    finds: "nothing",
  },
  { name: "no rating is stated", plan: bus(`out("oven", 160);`, "studs: 4"), finds: "nothing" },
  {
    name: "never both at once in the plan's own scenarios",
    plan: bus(`
      const oven = out("oven", 60), pump = out("pump", 60);
      scenario({ name: "baking", on: [oven] });
      scenario({ name: "pumping", on: [pump] });`),
    finds: "nothing",
  },
  {
    name: "in the one scenario in which both are on",
    plan: bus(`
      const oven = out("oven", 60), pump = out("pump", 60);
      scenario({ name: "baking", on: [oven] });
      scenario({ name: "Sunday", on: [oven, pump] });`),
    finds: [
      {
        subject: "main",
        on: "ratedA",
        message: 'Carries 120 A in "Sunday", its rating is 100 A (ratedA)',
        fixes: "no fix",
      },
    ],
  },
  {
    name: "what a charger brings goes on to the loads: the bus carries it once, not twice",
    plan: bus(`
      const shore = shoreCharger({ outputA: 90 });
      cable({ from: shore.positive, to: main.stud, lengthFt: 3, gauge: 4 });
      cable({ from: shore.negative, to: house.negative, lengthFt: 3, gauge: 4 });
      out("oven", 90);`),
    finds: "nothing",
  },
  {
    name: "a motor that starts is no lasting current",
    plan: bus(`
      const windlass = motor({ runningA: 70, startingA: 180 });
      circuit({ from: main.stud, returnTo: house.negative, to: windlass, oneWayFt: 5, gauge: 1, protect: 100 });
      scenario({ name: "start", starting: [windlass] });
      scenario({ name: "run", on: [windlass] });`),
    finds: "nothing",
  },
  {
    name: "accepted with a reason",
    plan: bus(`out("oven", 110);`, `ratedA: 100, accept: { "bus/rating": "ten minutes a day" }`),
    finds: [{ on: "ratedA", message: "Carries 110 A", accepted: "ten minutes a day", fixes: "no fix" }],
  },
]);
