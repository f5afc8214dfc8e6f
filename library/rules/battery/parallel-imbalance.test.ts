import { testRule } from "../rule-tester.ts";
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
  { name: "one positive lead of 6 ft: within 10 %", plan: pair(5), finds: "nothing" },
  {
    name: "one positive lead of 9 ft",
    plan: pair(9),
    finds: [
      {
        subject: "left",
        record: "left",
        on: "",
        message: "Gives ",
        values: { charging: false, fairA: 40, scenario: 'in "everything on"' },
        fixes: [
          {
            title: "Use 9 ft of 4 AWG for each positive lead",
            kind: "suggestion",
            gives: { "left plus": { lengthFt: 9 }, "right plus": { lengthFt: 9 } },
          },
        ],
      },
    ],
  },
]);
