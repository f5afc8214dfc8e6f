import { testRule } from "../rule.tester.ts";
import { noLength } from "./no-length.ts";

const house = `const house = battery({ name: "house", chemistry: "AGM", capacityAh: 200, internalMilliohm: 5 });
  const bus = busBar({});
  const minus = busBar({});`;
const back = `cable({ name: "back", from: minus.stud, to: house.negative, lengthFt: 2, gauge: 4 });`;
const lamp = (more: string) =>
  `circuit({ name: "lamp", from: bus.stud, returnTo: minus.stud, load: 5, gauge: 14, protect: 10, ${more} });`;

testRule(noLength, [
  {
    name: "every length is stated",
    plan: `${house} ${back}
      cable({ name: "feed", from: house.positive, to: bus.stud, lengthFt: 2, gauge: 4, protect: 50 });
      ${lamp("oneWayFt: 15")}`,
    finds: "nothing",
  },
  {
    name: "a circuit without a length",
    plan: `${house} ${back}
      cable({ name: "feed", from: house.positive, to: bus.stud, lengthFt: 2, gauge: 4, protect: 50 });
      ${lamp("")}`,
    finds: [
      {
        subject: "lamp",
        on: "",
        severity: "info",
        message:
          "No length is stated, so its drop and the least short-circuit current are not judged: state oneWayFt or oneWayM.",
        values: { word: "circuit", devices: 1, shares: false, least: true },
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a cable without a length, with two devices behind it",
    plan: `${house} ${back}
      cable({ name: "feed", from: house.positive, to: bus.stud, gauge: 4, protect: 50 });
      ${lamp("oneWayFt: 15")} ${lamp('oneWayFt: 5, name: "fan"')}`,
    finds: [
      {
        subject: "feed",
        on: "",
        message:
          "No length is stated, so its drop, that of 2 devices and the least short-circuit current are not judged: state lengthFt or lengthM.",
        values: { word: "cable", devices: 2 },
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a drop that exceeds its limit all the same is not among those that are not judged",
    plan: `${house} ${back}
      cable({ name: "feed", from: house.positive, to: bus.stud, gauge: 4, protect: 50 });
      ${lamp("oneWayFt: 150")}`,
    finds: [
      { subject: "feed", on: "", message: "No length is stated, so its drop and the least", fixes: "no fix" },
    ],
  },
  {
    name: "in a plan with a period",
    plan: `${house} ${back}
      cable({ name: "feed", from: house.positive, to: bus.stud, gauge: 4, protect: 50 });
      ${lamp("oneWayFt: 15, use: { hoursPerDay: 2 }")}
      period({ name: "trip", place: "Tarifa, ES", months: ["Jul"] });`,
    finds: [
      {
        subject: "feed",
        on: "",
        message:
          'No length is stated, so its drop, that of 1 device and the least short-circuit current are not judged, and the verdicts on its periods are "at best", without its loss: state lengthFt or lengthM.',
        values: { balance: true },
        fixes: "no fix",
      },
    ],
  },
  {
    name: "in a plan with a board, without the places of its parts",
    plan: `${house} ${back} surface({ size: { widthMm: 500, heightMm: 500 } });
      cable({ name: "feed", from: house.positive, to: bus.stud, gauge: 4, protect: 50 });
      ${lamp("oneWayFt: 15")}`,
    finds: [
      {
        subject: "feed",
        on: "",
        message:
          "No length is stated, so its drop, that of 1 device and the least short-circuit current are not judged: state lengthFt or lengthM, or the place (at) of the parts at its ends.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "not used in the period",
    plan: `${house} ${back}
      cable({ name: "feed", from: house.positive, to: bus.stud, lengthFt: 2, gauge: 4, protect: 50 });
      const lamp = ${lamp("use: { hoursPerDay: 2 }")}
      ${lamp('oneWayFt: 5, name: "fan", use: { hoursPerDay: 2 }')}
      period({ name: "trip", place: "Tarifa, ES", months: ["Jul"], notUsed: [lamp] });`,
    finds: [
      {
        subject: "lamp",
        on: "",
        message: "No length is stated",
        values: { balance: false },
        fixes: "no fix",
      },
    ],
  },
  {
    name: "side by side with another cable",
    plan: `${house} ${back}
      cable({ name: "feed", from: house.positive, to: bus.stud, gauge: 4, protect: 50 });
      cable({ name: "second", from: house.positive, to: bus.stud, lengthFt: 3, gauge: 4, protect: 50 });
      ${lamp("oneWayFt: 15")}`,
    finds: [
      {
        subject: "feed",
        on: "",
        message:
          "No length is stated, so its drop, that of 1 device and the least short-circuit current are not judged; of the ways beside it, each counts as if it carried everything: state lengthFt or lengthM.",
        values: { shares: true },
        fixes: "no fix",
      },
    ],
  },
]);
