import { afterAll, describe, expect, it } from "vitest";
import { checkFiles, closeCheckers, filesOf } from "../provenance/marked-plan.ts";

afterAll(closeCheckers);

/** This tests size, not speed: on a slow machine such a plan may well need more than the usual second. */
const limits = { timeMs: 60_000 };

async function checked(text: string) {
  const { plan } = await checkFiles(filesOf(text), undefined, { limits });
  return plan;
}

const words = 'import { battery, busBar, cable, circuit, load, scenario } from "loomwright";\n';

/** Networks far larger than any build, and other senseless ones: each is checked to its end. */
const plans: Readonly<Record<string, { readonly plan: string; readonly parts: number }>> = {
  "two thousand loads on one stud": {
    plan: `const house = battery({ chemistry: "AGM", capacityAh: 100 });
const [plus, minus] = [busBar({ side: "positive" }), busBar({ side: "negative" })];
cable({ from: house.positive, to: plus.stud, lengthM: 1, gauge: "4/0", protect: 300 });
cable({ from: minus.stud, to: house.negative, lengthM: 1, gauge: "4/0" });
for (let i = 0; i < 2000; i++)
  circuit({ from: plus.stud, returnTo: minus.stud, load: 0.05, oneWayM: 1, gauge: 16, protect: { ratingA: 5, distanceIn: 1 } });`,
    parts: 2_003,
  },
  "a chain of two thousand bus bars": {
    plan: `const house = battery({ chemistry: "AGM", capacityAh: 100 });
let end: any = house.positive;
for (let i = 0; i < 2000; i++) {
  const next = busBar({});
  cable({ from: end, to: next.stud, lengthM: 0.01, gauge: "4/0", ...(i === 0 ? { protect: 200 } : {}) });
  end = next.stud;
}
circuit({ from: end, returnTo: house.negative, load: 5, oneWayM: 1, gauge: 16, protect: 10 });`,
    parts: 2_002,
  },
  "a thousand batteries side by side": {
    plan: `const first = battery({ chemistry: "AGM", capacityAh: 100 });
let before = first;
for (let i = 0; i < 1000; i++) {
  const next = battery({ chemistry: "AGM", capacityAh: 100 });
  cable({ from: before.positive, to: next.positive, lengthM: 0.1, gauge: 2 });
  cable({ from: before.negative, to: next.negative, lengthM: 0.1, gauge: 2 });
  before = next;
}`,
    parts: 1_001,
  },
  "a thousand cables between the same two terminals": {
    plan: `const [one, other] = [battery({ chemistry: "AGM", capacityAh: 100 }), battery({ chemistry: "gel", capacityAh: 100 })];
for (let i = 0; i < 1000; i++) cable({ from: one.positive, to: other.positive, lengthM: 1, gauge: 4 });`,
    parts: 2,
  },
  "every battery across the next one": {
    plan: `const all = Array.from({ length: 30 }, () => battery({ chemistry: "AGM", capacityAh: 100 }));
for (const one of all) for (const other of all)
  if (one !== other) cable({ from: one.positive, to: other.negative, lengthM: 1, gauge: 4 });`,
    parts: 30,
  },
  "three thousand islands": {
    plan: `for (let i = 0; i < 3000; i++) load({ powerW: 40 });`,
    parts: 3_000,
  },
};

describe("a network beyond all measure is checked to its end", () => {
  it.each(Object.entries(plans))("%s", { timeout: 120_000 }, async (_, { plan: text, parts }) => {
    const plan = await checked(words + text);
    const { network, model, problems } = plan.judgement;
    expect(problems).toEqual([]);
    expect(model.invalid).toEqual([]);
    expect(network?.network.parts).toHaveLength(parts);
    expect(network?.result.scenarios).toHaveLength(3);
    expect(plan.findings.every(({ place }) => place.end > place.start)).toBe(true);
  });
});

it("of more parts than any plan may have, those within the limit are known", {
  timeout: 120_000,
}, async () => {
  const plan = await checked(
    `${words}const house = battery({ chemistry: "AGM", capacityAh: 100 });
for (let i = 0; ; i++) load({ powerW: 1 + i / 1e6 });`,
  );
  const { model, problems } = plan.judgement;
  expect(problems).toEqual([{ rule: "plan/too-slow", limit: "records", allowed: 20_000 }]);
  expect(model.network?.parts).toHaveLength(20_000);
  expect(model.network?.parts.at(-1)?.record).toBe(19_999);
});
