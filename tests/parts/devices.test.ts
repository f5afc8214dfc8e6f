import { describe, expect, test } from "vitest";
import { type Judgement, judge } from "../../library/judge.ts";
import type { PlanRecord, Word } from "../../library/model/record.ts";

/*
 * A fuse or breaker of its own gives the verdicts of the same device in a conductor. Each plan is made twice: with `protect`, and
 * with a part.
 */

type Given = Readonly<Record<string, unknown>>;

class Plan {
  readonly records: PlanRecord[] = [];
  add(word: Word, input: Given): number {
    return this.records.push({ word, input, fallbackName: `${word} ${this.records.length}` }) - 1;
  }
  at(part: number, terminal: string) {
    return { kind: "terminal", part, of: this.records[part]!.word, terminal };
  }
  judged(): Judgement {
    return judge(this.records, []);
  }
}

const breakerFamily = "circuit breaker";

/** A bank, its device, a cable to a lamp and back. `place`: at the start of the cable, or a part on the bank's terminal. */
function lamp(
  place: "in the cable" | "fuseHolder" | "breaker",
  {
    device,
    cable = {},
    load = 20,
  }: { readonly device: Given; readonly cable?: Given; readonly load?: number },
): Judgement {
  const plan = new Plan();
  const bank = plan.add("battery", { chemistry: "LiFePO4", capacityAh: 200, internalMilliohm: 5 });
  const { family, ...withoutFamily } = device;
  const part =
    place === "in the cable"
      ? undefined
      : plan.add(place, {
          ...(place === "breaker" ? withoutFamily : device),
          on: plan.at(bank, "positive"),
        });
  const user = plan.add("load", { currentA: load });
  plan.add("cable", {
    from: part === undefined ? plan.at(bank, "positive") : plan.at(part, "load"),
    to: plan.at(user, "positive"),
    ...{ lengthM: 4, gauge: 6, insulationC: 105, ...cable },
    ...(part === undefined && { protect: { ...device, distanceIn: 4 } }),
  });
  plan.add("cable", {
    from: plan.at(user, "negative"),
    to: plan.at(bank, "negative"),
    ...{ lengthM: 4, gauge: 6, insulationC: 105, ...cable },
  });
  return plan.judged();
}

/** Rule and severity, sorted; a device that is too great for its conductor is reported by another rule if it is a part. */
function verdicts({ findings }: Judgement): readonly string[] {
  return findings
    .map(({ rule, severity }) =>
      rule === "protection/above-conductor" || rule === "protection/unprotected-path"
        ? `too great, ${severity}`
        : `${rule}, ${severity}`,
    )
    .filter((verdict) => !verdict.startsWith("disconnect/missing"))
    .sort();
}

describe.each([
  ["in order", { ratingA: 40, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 }],
  [
    "too great for the cable",
    { ratingA: 300, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 },
  ],
  ["below the load", { ratingA: 15, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 }],
  ["too close to the load", { ratingA: 20, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 }],
  ["of too little interrupting rating", { ratingA: 40, family: "ISO 8820-3 Type F", ratedV: 32 }],
  ["of an unknown interrupting rating", { ratingA: 40, family: breakerFamily, ratedV: 48 }],
  [
    "not made in this rating",
    { ratingA: 37, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 },
  ],
  ["rated below the voltage", { ratingA: 40, family: breakerFamily, interruptingA: 20_000, ratedV: 6 }],
] as const)("a device %s", (_, device) => {
  test("has the same verdicts as a part on the terminal", () => {
    const place = device.family === breakerFamily ? "breaker" : "fuseHolder";
    const asPart = lamp(place, { device });
    expect(verdicts(asPart)).toEqual(verdicts(lamp("in the cable", { device })));
    expect(asPart.network?.result.topology.unprotected.length).toBe(device.ratingA === 300 ? 1 : 0);
  });
});

test("a short behind it is worked out as behind a device in the cable", () => {
  const device = { ratingA: 40, family: "UL 248-15 Class T", interruptingA: 20_000 };
  const [asPart] = lamp("fuseHolder", { device }).network!.result.faults.devices;
  const [inCable] = lamp("in the cable", { device }).network!.result.faults.devices;
  expect(asPart?.greatestA).toBeCloseTo(inCable!.greatestA, 0);
  expect(asPart?.least?.currentA).toBeCloseTo(inCable!.least!.currentA, 0);
});

test("its resistance takes voltage, and its current is that of the cable behind it", () => {
  const device = { ratingA: 40 };
  const resistive = lamp("fuseHolder", { device: { ...device, milliohm: 10 } }).network!;
  const ideal = lamp("fuseHolder", { device }).network!;
  const voltage = ({ network, result }: typeof ideal) => {
    const [scenario] = result.scenarios;
    if (scenario?.state !== "solved") throw new Error("not solved");
    const at = (kind: string) => network.parts.findIndex((part) => part.kind === kind);
    return { lampV: scenario.partV[at("load")]!, throughA: scenario.partA[at("fuseHolder")]! };
  };
  // Ohm's law: 20 A through 10 mΩ.
  expect(voltage(ideal).lampV - voltage(resistive).lampV).toBeCloseTo(0.2, 6);
  expect(voltage(ideal).throughA).toBeCloseTo(20, 6);
});

describe("a lead from the battery to a holder", () => {
  const leading = (lengthIn: number, gauge: number) => {
    const plan = new Plan();
    const bank = plan.add("battery", { chemistry: "LiFePO4", capacityAh: 200, internalMilliohm: 5 });
    const holder = plan.add("fuseHolder", {
      ratingA: 60,
      family: "UL 248-15 Class T",
      interruptingA: 20_000,
    });
    const user = plan.add("load", { currentA: 20 });
    const join = (from: number, out: string, to: number, into: string, lengthFt: number, size: number) =>
      plan.add("cable", {
        ...{ from: plan.at(from, out), to: plan.at(to, into), lengthFt, gauge: size, insulationC: 105 },
      });
    join(bank, "positive", holder, "line", lengthIn / 12, gauge);
    join(holder, "load", user, "positive", 10, 6);
    join(user, "negative", bank, "negative", 10, 6);
    return plan.judged().findings.filter(({ rule }) => rule === "protection/unprotected-path");
  };

  // 33 CFR 183.460(a): within 72 inches of the battery's terminal.
  test("may be 72 in long", () => expect(leading(72, 6)).toEqual([]));
  test("is unprotected if it is longer", () => expect(leading(73, 6)).toHaveLength(1));
  test("is unprotected if the fuse at its end is rated above its ampacity", () =>
    expect(leading(12, 14)).toHaveLength(1));
});

test("a second source past the holder is not protected by it", () => {
  const plan = new Plan();
  const bank = plan.add("battery", { chemistry: "LiFePO4", capacityAh: 200, internalMilliohm: 5 });
  const other = plan.add("battery", { chemistry: "LiFePO4", capacityAh: 200, internalMilliohm: 5 });
  const holder = plan.add("fuseHolder", { ratingA: 40, on: plan.at(bank, "positive") });
  const user = plan.add("load", { currentA: 20 });
  const cable = (from: object, to: object, name: string) =>
    plan.add("cable", { name, from, to, lengthM: 2, gauge: 6, insulationC: 105 });
  cable(plan.at(holder, "load"), plan.at(user, "positive"), "feed");
  cable(plan.at(other, "positive"), plan.at(holder, "load"), "second");
  cable(plan.at(user, "negative"), plan.at(bank, "negative"), "return");
  cable(plan.at(other, "negative"), plan.at(bank, "negative"), "second return");
  const unprotected = plan.judged().findings.filter(({ rule }) => rule === "protection/unprotected-path");
  expect(unprotected.map(({ subject }) => subject).sort()).toEqual(["feed", "second"]);
});

describe.each([
  ["a breaker of its own", "breaker"],
  ["a breaker in the cable", "in the cable"],
] as const)("%s", (_, place) => {
  const device = { ratingA: 15, interruptingA: 20_000, ratedV: 48, family: breakerFamily };
  const judged = (openingTimes?: readonly Given[]) =>
    lamp(place, {
      device: { ...device, ...(openingTimes && { openingTimes }) },
      cable: { lengthM: 15, gauge: 14 },
      load: 5,
    }).findings.filter(({ rule }) => rule === "protection/does-not-clear");

  test("clears a fault in time if the opening times that the builder states say so", () => {
    expect(judged(), "unknown without figures").toEqual([]);
    expect(
      judged([
        { atPercent: 150, withinS: 600 },
        { atPercent: 10_000, withinS: 0.1 },
      ]),
    ).toHaveLength(1);
    expect(judged([{ atPercent: 150, withinS: 0.1 }])).toEqual([]);
  });

  test.each<[string, string, readonly Given[]]>([
    ["later than withinS", "0.afterS", [{ atPercent: 200, afterS: 70, withinS: 60 }]],
    [
      "not above the one before",
      "1.atPercent",
      [
        { atPercent: 200, withinS: 60 },
        { atPercent: 200, withinS: 50 },
      ],
    ],
    [
      "longer than at a smaller current",
      "1.withinS",
      [
        { atPercent: 200, withinS: 60 },
        { atPercent: 300, withinS: 61 },
      ],
    ],
  ])("is refused opening times that contradict each other: %s", (wrong, at, openingTimes) => {
    const { model } = lamp(place, { device: { ...device, openingTimes } });
    expect(model.invalid.map(({ path }) => path.slice(-3).join("."))).toEqual([`openingTimes.${at}`]);
    expect(model.invalid[0]?.wrong).toContain(wrong);
  });
});

test("a breaker opens by hand: what is behind it can be cut off", () => {
  const device = { ratingA: 40, interruptingA: 20_000, ratedV: 48 };
  const missing = (place: "breaker" | "fuseHolder") =>
    lamp(place, { device }).findings.filter(({ rule }) => rule === "disconnect/missing");
  expect(missing("breaker")).toEqual([]);
  expect(missing("fuseHolder")).toHaveLength(1);
});
