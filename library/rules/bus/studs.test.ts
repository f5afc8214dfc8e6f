import { testRule } from "../rule.tester.ts";
import { busStuds } from "./studs.ts";

const bus = (options: string, rest: string) => `
  const house = battery({ chemistry: "AGM", capacityAh: 200, internalMilliohm: 3 });
  const main = busBar({ ${options} });
  cable({ name: "feed", from: house.positive, to: main.stud, lengthFt: 2, gauge: "2/0" });
  const out = (name, more) =>
    circuit({ name, from: main.stud, returnTo: house.negative, load: 5, oneWayFt: 5, gauge: 10, protect: 10, ...more });
  ${rest}`;

testRule(busStuds, [
  {
    name: "as many conductors as studs",
    plan: bus("studs: 3", `out("lamp"); out("fan");`),
    finds: "nothing",
  },
  {
    name: "one conductor more than studs",
    plan: bus("studs: 3", `out("lamp"); out("fan"); out("pump");`),
    finds: [
      {
        subject: "main",
        record: "main",
        on: "studs",
        message:
          "4 conductors end here, on 3 studs: use a bus bar with more, or share them between two (common practice, no source).",
        values: { wires: 4, studs: 3 },
        fixes: "no fix",
      },
    ],
  },
  { name: "no studs are stated", plan: bus("ratedA: 100", `out("lamp"); out("fan");`), finds: "nothing" },
  {
    name: "wires in parallel need a stud each",
    plan: bus("studs: 3", `out("lamp"); out("fan", { parallel: 2 });`),
    finds: [
      {
        on: "studs",
        message: "4 conductors end here (parallel wires counted individually), on 3 studs",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a bar for one lug",
    plan: bus("studs: 1", `out("lamp");`),
    finds: [{ on: "studs", message: "2 conductors end here, on 1 stud: use", fixes: "no fix" }],
  },
  {
    name: "accepted with a reason",
    plan: bus(`studs: 2, accept: { "bus/studs": "two small lugs share one" }`, `out("lamp"); out("fan");`),
    finds: [{ on: "studs", message: "3 conductors", accepted: "two small lugs share one", fixes: "no fix" }],
  },
]);
