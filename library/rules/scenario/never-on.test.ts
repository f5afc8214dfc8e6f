import { testRule } from "../rule.tester.ts";
import { neverOn } from "./never-on.ts";

const shed = (rest: string) => `
  const bank = battery({ chemistry: "AGM", capacityAh: 200, internalMilliohm: 3 });
  const main = busBar({ side: "positive" });
  cable({ name: "feed", from: bank.positive, to: main.stud, lengthFt: 2, gauge: 2 });
  const out = (name, more) =>
    circuit({ name, from: main.stud, returnTo: bank.negative, load: 5, oneWayFt: 5, gauge: 10, protect: 10, ...more });
  ${rest}`;

testRule(neverOn, [
  {
    name: "the plan names no scenario: the usual ones have everything on",
    plan: shed(`out("lamp"); out("fan");`),
    finds: "nothing",
  },
  {
    name: "each device is on in one of the scenarios",
    plan: shed(`
      const [lamp, fan] = [out("lamp"), out("fan")];
      scenario({ name: "evening", on: [lamp] });
      scenario({ name: "noon", on: [fan] });`),
    finds: "nothing",
  },
  {
    name: "one device is left out",
    plan: shed(`
      const lamp = out("lamp");
      out("fan");
      scenario({ name: "evening", on: [lamp] });`),
    finds: [
      {
        subject: "the plan",
        record: "fan",
        on: "",
        message:
          "fan is on in no scenario that lasts. Conductors, fuses and ratings on its supply path are judged with it alone; voltage drop and low voltage are not judged. Add a scenario with it on.",
        values: { devices: ["fan"] },
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a motor that only starts, and an alternator without an engine",
    plan: shed(`
      const lamp = out("lamp");
      const winch = motor({ runningA: 40, startingA: 120 });
      const source = alternator({ ratedA: 60 });
      cable({ from: source.positive, to: main.stud, lengthFt: 6, gauge: 2 });
      cable({ from: bank.negative, to: source.negative, lengthFt: 6, gauge: 2 });
      circuit({ name: "winch", from: main.stud, returnTo: bank.negative, to: winch, oneWayFt: 5, gauge: 6, protect: 60 });
      scenario({ name: "evening", on: [lamp] });
      scenario({ name: "hauling", starting: [winch] });`),
    finds: [
      {
        record: "winch",
        on: "",
        message: "winch and the alternator source are on in no scenario that lasts.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "accepted with a reason at the first of them",
    plan: shed(`
      const lamp = out("lamp");
      out("fan", { accept: { "scenario/never-on": "taken out in winter" } });
      scenario({ name: "evening", on: [lamp] });`),
    finds: [{ on: "", message: "fan is on", accepted: "taken out in winter", fixes: "no fix" }],
  },
]);
