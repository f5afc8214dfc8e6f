import { testRule } from "../rule.tester.ts";
import { disconnectRating } from "./rating.ts";

const behind = (rest: string, more = "") => `
  const house = battery({ chemistry: "LiFePO4", capacityAh: 200, internalMilliohm: 3 });
  const off = disconnect({ ratedA: 100${more} });
  cable({ from: house.positive, to: off.line, lengthFt: 2, gauge: "2/0" });
  const out = (name, load) =>
    circuit({ name, from: off.load, returnTo: house.negative, load, oneWayFt: 5, gauge: 1, protect: 150 });
  ${rest}`;

testRule(disconnectRating, [
  { name: "exactly its rating", plan: behind(`out("oven", 100);`), finds: "nothing" },
  {
    name: "just above its rating",
    plan: behind(`out("oven", 60); out("pump", 40.2);`),
    finds: [
      {
        subject: "off",
        record: "off",
        on: "ratedA",
        message:
          'Carries 100.2 A in "everything on", its rating is 100 A (ratedA): use a disconnect with a higher one, or split its loads.',
        fixes: "no fix",
      },
    ],
  },
  {
    name: "current that goes the other way, into the bank, counts as well",
    plan: behind(`
      const shore = shoreCharger({ outputA: 120 });
      cable({ from: shore.positive, to: off.load, lengthFt: 3, gauge: 1 });
      cable({ from: shore.negative, to: house.negative, lengthFt: 3, gauge: 1 });`),
    finds: [{ on: "ratedA", message: "Carries 120 A in ", fixes: "no fix" }],
  },
  {
    name: "open in the plan's only scenario",
    plan: behind(`out("oven", 130); scenario({ name: "laid up", off: [off] });`),
    finds: [{ on: "ratedA", message: "Carries 130 A with oven alone, its rating is 100 A", fixes: "no fix" }],
  },
  {
    name: "a motor that starts is no lasting current",
    plan: behind(`
      const windlass = motor({ runningA: 70, startingA: 200 });
      circuit({ from: off.load, returnTo: house.negative, to: windlass, oneWayFt: 5, gauge: 1, protect: 100 });
      scenario({ name: "start", starting: [windlass] });
      scenario({ name: "run", on: [windlass] });`),
    finds: "nothing",
  },
  {
    name: "accepted with a reason",
    plan: behind(`out("oven", 101);`, `, accept: { "disconnect/rating": "rated 120 A for an hour" }`),
    finds: [{ on: "ratedA", message: "Carries 101 A", accepted: "rated 120 A for an hour", fixes: "no fix" }],
  },
]);
