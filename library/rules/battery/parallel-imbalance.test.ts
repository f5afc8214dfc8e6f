import { testRule } from "../rule.tester.ts";
import { parallelImbalance } from "./parallel-imbalance.ts";

/**
 * Two batteries of 6 mΩ on two bus bars. Leads of 4 AWG: 0.8152 · 1.02 mΩ/m at 20 °C. With leads of 1 ft each on the left
 * and of the given length on the right, the left one gets (6 + r_right) / (12 + r_left + r_right) of the current.
 */
const pair = (rightFt: number, { right = "gauge: 4", options = "", rest = "" } = {}) => `
  const kind = { chemistry: "LiFePO4", capacityAh: 100, internalMilliohm: 6 };
  const left = battery({ ...kind, name: "left"${options} });
  const right = battery({ ...kind, name: "right" });
  const plus = busBar({ name: "plus" }), minus = busBar({ name: "minus" });
  cable({ name: "left plus", from: left.positive, to: plus.stud, lengthFt: 1, gauge: 4 });
  cable({ name: "left minus", from: left.negative, to: minus.stud, lengthFt: 1, gauge: 4 });
  cable({ name: "right plus", from: right.positive, to: plus.stud, lengthFt: ${rightFt}, ${right} });
  cable({ name: "right minus", from: right.negative, to: minus.stud, lengthFt: 1, ${right} });
  circuit({ name: "oven", from: plus.stud, returnTo: minus.stud, load: 80, oneWayFt: 5, gauge: 2, protect: 110 });
  ${rest}`;

testRule(parallelImbalance, [
  { name: "leads alike", plan: pair(1), finds: "nothing" },
  { name: "one positive lead of 6.4 ft: just within 10 %", plan: pair(6.4), finds: "nothing" },
  {
    name: "one positive lead of 6.5 ft: just beyond 10 %",
    plan: pair(6.5),
    finds: [
      {
        subject: "left",
        record: "left",
        on: "",
        message:
          'Gives 44 A of the bank\'s 80 A in "everything on", 10.1 % above its share of 40 A; up to 10 % is common practice, no source: use 6.5 ft of 4 AWG for each positive lead.',
        values: { charging: false },
        fixes: [
          {
            title: "Use 6.5 ft of 4 AWG for each positive lead",
            kind: "suggestion",
            gives: { "left plus": { lengthFt: 6.5 }, "right plus": { lengthFt: 6.5 } },
          },
        ],
      },
    ],
  },
  {
    name: "what the fix asks for",
    plan: pair(6.5).replace("to: plus.stud, lengthFt: 1,", "to: plus.stud, lengthFt: 6.5,"),
    finds: "nothing",
  },
  {
    name: "leads of other lengths and other sizes: the longest of the thickest for each polarity",
    plan: pair(6.5, { right: "gauge: 6" }),
    finds: [
      {
        subject: "left",
        on: "",
        message: 'Gives 46.8 A of the bank\'s 80 A in "everything on", 16.9 % above its share of 40 A',
        fixes: [
          {
            title: "Use 6.5 ft of 4 AWG for each positive lead and 1 ft of 4 AWG for each negative lead",
            kind: "suggestion",
            gives: {
              "left plus": { lengthFt: 6.5 },
              "right plus": { lengthFt: 6.5, gauge: 4 },
              "right minus": { lengthFt: 1, gauge: 4 },
            },
          },
        ],
      },
    ],
  },
  {
    name: "while it is charged",
    plan: pair(9, {
      rest: `const shore = shoreCharger({ outputA: 90 });
        cable({ from: shore.positive, to: plus.stud, lengthFt: 2, gauge: 2 });
        cable({ from: shore.negative, to: minus.stud, lengthFt: 2, gauge: 2 });
        scenario({ name: "at the dock", on: [], shore: true });`,
    }),
    finds: [
      {
        subject: "left",
        on: "",
        message: 'Takes 51.3 A of the bank\'s 90 A in "at the dock", 14 % above its share of 45 A',
        values: { charging: true },
        fixes: [{ title: "Use 9 ft of 4 AWG for each positive lead", kind: "suggestion", gives: {} }],
      },
    ],
  },
  {
    name: "twice the capacity has twice the share: half the resistance and thick leads give it that",
    plan: pair(1, { right: 'gauge: "4/0", parallel: 4' }).replace(
      'name: "right" }',
      'name: "right", capacityAh: 200, internalMilliohm: 3.2 }',
    ),
    finds: "nothing",
  },
  {
    name: "twice the capacity with the same resistance is no help: it is the leads no more",
    plan: pair(1).replace('name: "right" }', 'name: "right", capacityAh: 200 }'),
    finds: [
      {
        subject: "left",
        on: "",
        message:
          'Gives 40 A of the bank\'s 80 A in "everything on", 50 % above its share of 26.7 A; up to 10 % is common practice, no source: use batteries of one kind and age, each with identical leads to a bus bar.',
        fixes: "no fix",
      },
    ],
  },
  {
    name: "one after the other, both loads taken at the first",
    plan: `
      const kind = { chemistry: "LiFePO4", capacityAh: 100, internalMilliohm: 2 };
      const first = battery({ ...kind, name: "first" });
      const second = battery({ ...kind, name: "second" });
      cable({ from: second.positive, to: first.positive, lengthFt: 2, gauge: 2 });
      cable({ from: second.negative, to: first.negative, lengthFt: 2, gauge: 2 });
      circuit({ name: "oven", from: first.positive, load: 80, oneWayFt: 5, gauge: 2, protect: 110 });`,
    finds: [
      {
        subject: "first",
        on: "",
        message: "Gives 45",
        values: {
          wayOut:
            "take the positive from one end of the row and the negative from the other, or give each battery its own identical leads to a bus bar",
        },
        fixes: "no fix",
      },
    ],
  },
  {
    name: "one after the other, the return taken at the second",
    plan: `
      const kind = { chemistry: "LiFePO4", capacityAh: 100, internalMilliohm: 2 };
      const first = battery({ ...kind, name: "first" });
      const second = battery({ ...kind, name: "second" });
      cable({ from: second.positive, to: first.positive, lengthFt: 2, gauge: 2 });
      cable({ from: second.negative, to: first.negative, lengthFt: 2, gauge: 2 });
      circuit({ name: "oven", from: first.positive, returnTo: second.negative, load: 80, oneWayFt: 5, gauge: 2, protect: 110 });`,
    finds: "nothing",
  },
  {
    name: "strings of two: the share of a string",
    plan: `
      const plus = busBar({});
      const minus = busBar({});
      for (const [name, lengthFt] of [["left", 1], ["right", 9]]) {
        const kind = { chemistry: "AGM", capacityAh: 100, internalMilliohm: 2 };
        const upper = battery({ ...kind, name: name + " upper" });
        const lower = battery({ ...kind, name: name + " lower" });
        cable({ from: lower.positive, to: upper.negative, lengthFt: 1, gauge: 4 });
        cable({ name, from: upper.positive, to: plus.stud, lengthFt, gauge: 4 });
        cable({ from: lower.negative, to: minus.stud, lengthFt: 1, gauge: 4 });
      }
      circuit({ from: plus.stud, returnTo: minus.stud, voltage: 24, load: 60, oneWayFt: 5, gauge: 2, protect: 80 });`,
    finds: [
      {
        subject: "left upper",
        on: "",
        message: "Gives ",
        fixes: [
          {
            title: "Use 9 ft of 4 AWG for each positive lead",
            kind: "suggestion",
            gives: { left: { lengthFt: 9 } },
          },
        ],
      },
    ],
  },
  {
    name: "accepted with a reason",
    plan: pair(9, { options: ', accept: { "battery/parallel-imbalance": "swapped every year" }' }),
    finds: [
      {
        on: "",
        message: "Gives 45.6 A",
        accepted: "swapped every year",
        fixes: [{ title: "Use 9 ft of 4 AWG for each positive lead", kind: "suggestion", gives: {} }],
      },
    ],
  },
]);
