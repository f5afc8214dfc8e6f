import fc from "fast-check";
import { test } from "vitest";
import { becameWorse } from "../../library/documents/difference/compared-plan.ts";
import { describeDiff } from "../../library/documents/difference/difference-in-words.ts";
import {
  isSame,
  type PlanDifference,
  planDifference,
} from "../../library/documents/difference/plan-difference.ts";
import { type Judgement, judge } from "../../library/judge.ts";
import { type Made, recordsOf } from "../../library/model/sample-plan.tester.ts";
import { battery } from "../../library/plan/battery.ts";
import { busBar } from "../../library/plan/bus-bar.ts";
import { cable } from "../../library/plan/cable.ts";
import { circuit } from "../../library/plan/circuit.ts";
import { continueNumberingAt } from "../../library/plan/numbering.ts";
import { sampledRuns } from "../setup/sampled.ts";

/** One circuit of a random plan. Few names and few values: many are alike. */
interface Some {
  readonly name: string;
  readonly load: number;
  readonly oneWayFt: number;
  readonly gauge: 16 | 12 | 8;
  readonly protect: number;
  readonly lone: boolean;
  readonly accepted: boolean;
}

const some: fc.Arbitrary<Some> = fc.record({
  name: fc.constantFrom("lamp", "pump", "fan", "line 3", "a|b\n<c>"),
  load: fc.constantFrom(0.5, 2, 9, 40),
  oneWayFt: fc.constantFrom(3, 12, 55),
  gauge: fc.constantFrom(16, 12, 8),
  protect: fc.constantFrom(5, 10, 40),
  lone: fc.boolean(),
  accepted: fc.boolean(),
});
const plans = fc.array(some, { maxLength: 7 });

function judged(circuits: readonly Some[]): Judgement {
  continueNumberingAt(0);
  const bank = battery({ name: "bank", chemistry: "LiFePO4", capacityAh: 100, internalMilliohm: 5 });
  const plus = busBar({ name: "plus", ratedA: 50 });
  const minus = busBar({ name: "minus" });
  const heavy = { lengthFt: 3, gauge: 4, sheathed: true } as const;
  const made: Made[] = [bank, plus, minus];
  made.push(cable({ ...heavy, name: "out", from: bank.positive, to: plus.stud, protect: 80 }));
  made.push(cable({ ...heavy, name: "back", from: minus.stud, to: bank.negative }));
  for (const { lone, accepted, ...values } of circuits) {
    const accept = accepted ? { accept: { "conductor/voltage-drop": "seldom on" } } : {};
    const ends = lone ? {} : { from: plus.stud, returnTo: minus.stud };
    made.push(circuit({ ...values, ...accept, ...ends } as Parameters<typeof circuit>[0]));
  }
  const { findings, ...judgement } = judge(recordsOf(made), []);
  // Of two circuits of one name, the second one gets a finding: there the order is a difference.
  return { ...judgement, findings: findings.filter(({ rule }) => rule !== "plan/repeated-name") };
}

/** Each run solves two networks in three scenarios. */
const runs = { numRuns: sampledRuns(50) };

const named = (subjects: PlanDifference["added"]) =>
  subjects.map(({ subject }) => `${subject.kind} ${subject.name}`).sort();

test("a plan does not differ from itself, read twice", () => {
  fc.assert(
    fc.property(plans, (circuits) => isSame(planDifference(judged(circuits), judged(circuits)))),
    runs,
  );
});

test("the order in which circuits are made is no difference", () => {
  const shuffled = plans.chain((circuits) =>
    fc.shuffledSubarray(circuits, { minLength: circuits.length }).map((other) => [circuits, other] as const),
  );
  const fan: Some = {
    ...{ name: "fan", load: 9, oneWayFt: 55, gauge: 16, protect: 40 },
    ...{ lone: false, accepted: true },
  };
  const other = { ...fan, accepted: false };
  fc.assert(
    fc.property(shuffled, ([one, other]) => isSame(planDifference(judged(one), judged(other)))),
    {
      ...runs,
      examples: [
        [
          [
            [fan, other],
            [other, fan],
          ],
        ],
      ],
    },
  );
});

test("swapped, what was added was removed, what came went, and figures go the other way", () => {
  fc.assert(
    fc.property(plans, plans, (one, other) => {
      const [there, back] = [
        planDifference(judged(one), judged(other)),
        planDifference(judged(other), judged(one)),
      ];
      const same = (first: unknown, second: unknown) => JSON.stringify(first) === JSON.stringify(second);
      const purchases = (difference: PlanDifference) => difference.purchases.map(({ what }) => what).sort();
      return (
        same(named(there.added), named(back.removed)) &&
        same(named(there.removed), named(back.added)) &&
        there.changed.length === back.changed.length &&
        there.findings.came.length === back.findings.went.length &&
        there.findings.went.length === back.findings.came.length &&
        same(purchases(there), purchases(back))
      );
    }),
    runs,
  );
});

test("every circuit of both plans is a pair, was added or was removed", () => {
  fc.assert(
    fc.property(plans, plans, (one, other) => {
      const { added, removed } = planDifference(judged(one), judged(other));
      return one.length - removed.length === other.length - added.length;
    }),
    runs,
  );
});

test("whatever is told is told in rows as wide as their columns, and of no figure that was not worked out", () => {
  fc.assert(
    fc.property(plans, plans, (one, other) => {
      const plan = { path: "plan.ts", movedFrom: undefined, state: "compared" } as const;
      const compared = { ...plan, difference: planDifference(judged(one), judged(other)) };
      becameWorse(compared);
      const { blocks, summary } = describeDiff(compared, { before: "one", after: "other" }, { all: false });
      const cells = blocks.flatMap(({ columns, rows, folded }) =>
        [...rows, ...(folded?.rows ?? [])].map(
          (row) => row.length === columns.length && !/NaN|undefined|Infinity/.test(row.join()),
        ),
      );
      return summary !== "" && cells.every(Boolean);
    }),
    runs,
  );
});
