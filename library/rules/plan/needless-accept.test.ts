import { testRule } from "../rule.tester.ts";
import { needlessAccept } from "./needless-accept.ts";

const accepting = (rule: string, reason = "measured") => ({ accept: { [rule]: reason } });

testRule(needlessAccept, [
  {
    name: "a finding that is there",
    circuits: [{ gauge: 8, protect: 40, load: 30, oneWayFt: 60, ...accepting("conductor/voltage-drop") }],
    finds: "nothing",
  },
  {
    name: "a finding that is not there",
    circuits: [accepting("conductor/voltage-drop")],
    finds: [
      {
        on: "accept.conductor/voltage-drop",
        message:
          "There is no finding of conductor/voltage-drop here, so its reason accepts none. Take the line out.",
        values: { found: [] },
        fixes: "no fix",
      },
    ],
  },
  {
    name: "another finding is there",
    circuits: [{ protect: 45, ...accepting("conductor/voltage-drop") }],
    finds: [
      {
        on: "accept.conductor/voltage-drop",
        message:
          "There is no finding of conductor/voltage-drop here, so its reason accepts none; found here: protection/headroom. Take the line out.",
        values: { found: ["protection/headroom"] },
        fixes: "no fix",
      },
    ],
  },
  {
    name: "one reason for several circuits, found at one of them",
    plan: `
      const accept = { "protection/headroom": "breakers for 100 % continuous use" };
      for (const load of [20, 45])
        circuit({ load, oneWayFt: 5, gauge: 4, insulationC: 75, protect: 50, accept });`,
    finds: "nothing",
  },
  {
    name: "one reason for several circuits, found at none of them",
    plan: `
      const accept = { "protection/headroom": "breakers for 100 % continuous use" };
      for (const name of ["fan", "lamp"])
        circuit({ name, load: 20, oneWayFt: 5, gauge: 4, insulationC: 75, protect: 50, accept });`,
    finds: [
      {
        subject: "fan",
        on: "accept.protection/headroom",
        message: "There is no finding of protection/headroom here",
        fixes: "no fix",
      },
      {
        subject: "lamp",
        on: "accept.protection/headroom",
        message: "There is no finding of protection/headroom here",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a part without the finding",
    plan: `
      const bank = battery({ chemistry: "AGM", capacityAh: 100, accept: { "battery/unlike": "of one kind" } });
      circuit({ name: "lamp", from: bank.positive, load: 5, oneWayFt: 5, gauge: 10, protect: 10 });`,
    finds: [
      {
        subject: "bank",
        record: "bank",
        on: "accept.battery/unlike",
        message: "There is no finding of battery/unlike here",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "an empty reason accepts nothing anyway, and is reported by another rule",
    circuits: [accepting("conductor/voltage-drop", " ")],
    finds: "nothing",
  },
  {
    name: "a refused value that only lists show leaves every finding judged",
    circuits: [{ colour: 5, ...accepting("conductor/voltage-drop") }],
    finds: [
      {
        on: "accept.conductor/voltage-drop",
        message: "There is no finding of conductor/voltage-drop here",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a plan with a refused value may have the finding where it was not judged",
    circuits: [{ gauge: 5, ...accepting("conductor/voltage-drop") }],
    finds: "nothing",
  },
]);
