import { describe, expect, test } from "vitest";
import { type Judgement, judge } from "../../judge.ts";
import { type Made, recordsOf } from "../../model/sample-plan.tester.ts";
import { battery } from "../../plan/battery.ts";
import { build } from "../../plan/build.ts";
import { busBar } from "../../plan/bus-bar.ts";
import { cable } from "../../plan/cable.ts";
import { circuit } from "../../plan/circuit.ts";
import { fusePanel } from "../../plan/fuse-panel.ts";
import { load } from "../../plan/load.ts";
import { continueNumberingAt } from "../../plan/numbering.ts";
import { scenario } from "../../plan/scenario.ts";
import { runExample } from "../../rules/page.tester.ts";
import { somethingWorse } from "./findings.ts";
import { measuredIn } from "./measured.ts";
import { isSame, type PlanDifference, planDifference } from "./plan-difference.ts";
import { subjectsOf } from "./subject.ts";

/** The values of a small boat that differ from one test to the next; each default is that of the sound plan. */
interface Boat {
  readonly system?: string;
  readonly bus?: string;
  readonly feederFt?: number;
  readonly pumpA?: number;
  readonly pumpFt?: number;
  readonly pumpGauge?: 14 | 12 | 10 | 4;
  readonly pumpProtect?: number | { readonly ratingA: number; readonly interruptingA?: number };
  readonly pumpName?: string;
  readonly lampsBackwards?: boolean;
  readonly lamps?: number;
  readonly heater?: boolean;
  readonly off?: boolean;
  readonly ratedA?: number;
  readonly largestGauge?: 2 | 4;
  readonly accept?: Readonly<Record<string, string>>;
  readonly inFeet?: boolean;
  readonly insulationC?: 75 | 105;
}

function boat(change: Boat = {}): Judgement {
  const { pumpName = "pump", lamps = 3, feederFt = 4, ratedA = 100, insulationC = 105 } = change;
  continueNumberingAt(0);
  const made: Made[] = [];
  const made1 = <One extends Made>(one: One): One => {
    made.push(one);
    return one;
  };
  made1(build({ name: "tender", insulationC }));
  const bank = made1(battery({ name: "bank", chemistry: "AGM", capacityAh: 100, internalMilliohm: 8 }));
  const bus = made1(
    busBar({ name: change.bus ?? "positive bus", ratedA, largestGauge: change.largestGauge ?? 2 }),
  );
  const panel = made1(fusePanel({ name: "panel", positions: 12, ratedA: 100 }));
  const heavy = { gauge: 4, sheathed: true } as const;
  const fuse = { ratingA: 80, family: "UL 248-15 Class T", distanceIn: 6, interruptingA: 20_000 } as const;
  made1(
    cable({ ...heavy, name: "bank to bus", from: bank.positive, to: bus.stud, lengthFt: 2, protect: fuse }),
  );
  made1(cable({ ...heavy, name: "feeder", from: bus.stud, to: panel.feed, lengthFt: feederFt }));
  made1(cable({ ...heavy, name: "panel return", from: panel.negative, to: bank.negative, lengthFt: 5 }));
  const light = (n: number) =>
    made1(
      circuit({ name: "lamp", from: panel.branch, load: 1 + n, oneWayFt: 8 + n, gauge: 14, protect: 10 }),
    );
  const order = [...Array(lamps).keys()];
  for (const n of change.lampsBackwards ? order.reverse() : order) light(n);
  const { pumpFt = 10 } = change;
  const pump = made1(
    circuit({
      ...{ name: pumpName, from: panel.branch, load: change.pumpA ?? 6, gauge: change.pumpGauge ?? 12 },
      ...(change.inFeet === false ? { oneWayM: pumpFt * 0.3048 } : { oneWayFt: pumpFt }),
      ...{
        protect: change.pumpProtect ?? 10,
        minimumV: 10.5,
        ...(change.accept ? { accept: change.accept } : {}),
      },
    }),
  );
  if (change.heater)
    made1(circuit({ name: "heater", from: panel.branch, load: 15, oneWayFt: 6, gauge: 10, protect: 20 }));
  made1(change.off ? scenario({ name: "under way", off: [pump] }) : scenario({ name: "under way" }));
  return judge(recordsOf(made), []);
}

const between = (before: Boat, after: Boat) => planDifference(boat(before), boat(after));

/** "circuit pump: length one way 10 ft → 20 ft" */
function changes({ changed }: PlanDifference): string[] {
  return changed.flatMap(({ subject, renamedFrom, properties }) => [
    ...(renamedFrom === undefined ? [] : [`${subject.kind} ${renamedFrom} is now ${subject.name}`]),
    ...properties.map(
      ({ words, before, after }) => `${subject.kind} ${subject.name}: ${words} ${before} → ${after}`,
    ),
  ]);
}

const names = (subjects: PlanDifference["added"]) =>
  subjects.map(({ subject }) => `${subject.kind} ${subject.name}`);
const effects = (difference: PlanDifference, own: boolean) =>
  difference.effects.filter((one) => one.own === own).map(({ subject, what }) => `${subject.name} ${what}`);

describe("no change in the build", () => {
  test.each<[string, Boat, Boat]>([
    ["the same plan", {}, {}],
    ["circuits of one name in another order", {}, { lampsBackwards: true }],
    ["a rating that is written as an object", {}, { pumpProtect: { ratingA: 10 } }],
  ])("%s", (_, before, after) => {
    const difference = between(before, after);
    expect(changes(difference)).toEqual([]);
    expect(difference.effects).toEqual([]);
    expect(isSame(difference)).toBe(true);
  });
});

test("the same length in metres is no other length; that the plan now mixes units is a finding", () => {
  const difference = between({}, { inFeet: false });
  expect(changes(difference)).toEqual([]);
  expect(difference.effects).toEqual([]);
  expect(difference.findings.came.map(({ rule }) => rule)).toEqual(["plan/unit-suspect"]);
});

describe("what changed, in the builder's units", () => {
  test.each<[string, Boat, Boat, string[]]>([
    ["a length", {}, { pumpFt: 20 }, ["circuit pump: length one way 10 ft → 20 ft"]],
    [
      "a length in another unit",
      {},
      { pumpFt: 20, inFeet: false },
      ["circuit pump: length one way 10 ft → 6.096 m"],
    ],
    ["a size", {}, { pumpGauge: 4 }, ["circuit pump: size 12 AWG → 4 AWG"]],
    ["a rating", {}, { pumpProtect: 15 }, ["circuit pump: protection 10 A → 15 A"]],
    [
      "a property of a device that was not stated",
      {},
      { pumpProtect: { ratingA: 10, interruptingA: 1_000 } },
      ["circuit pump: protection, interrupting rating not stated → 1,000 A"],
    ],
    [
      "the largest conductor that a part takes",
      {},
      { largestGauge: 4 },
      ["busBar positive bus: largest AWG that its terminals take 2 → 4"],
    ],
    ["a part's rating", {}, { ratedA: 150 }, ["busBar positive bus: rating 100 A → 150 A"]],
    ["what a scenario switches off", {}, { off: true }, ["scenario under way: off nothing → pump"]],
    ["a name", {}, { pumpName: "bilge pump" }, ["circuit pump is now bilge pump"]],
    [
      "a name and a value",
      {},
      { pumpName: "bilge pump", pumpA: 7 },
      ["circuit pump is now bilge pump", "circuit bilge pump: load 6 A → 7 A"],
    ],
    [
      "the name of a part, which moves nothing that is fastened to it",
      {},
      { bus: "main bus" },
      ["busBar positive bus is now main bus"],
    ],
  ])("%s", (_, before, after, expected) => {
    const difference = between(before, after);
    expect(changes(difference)).toEqual(expected);
    expect([...difference.added, ...difference.removed]).toEqual([]);
  });

  test("one of three that share a name: the others stay what they are", () => {
    const difference = between({ lamps: 3 }, { lamps: 2 });
    expect(names(difference.removed)).toEqual(["circuit lamp"]);
    expect(difference.removed[0]?.subject.properties).toContainEqual(
      expect.objectContaining({ id: "load", value: { as: "quantity", amount: 3, unit: "A" } }),
    );
    expect(changes(difference)).toEqual([]);
  });

  test("two circuits that have little in common are not one that was renamed", () => {
    const difference = between({}, { pumpName: "stove", pumpA: 2, pumpFt: 30, pumpGauge: 10 });
    expect(names(difference.removed)).toEqual(["circuit pump"]);
    expect(names(difference.added)).toEqual(["circuit stove"]);
  });

  test("before and after swapped swaps what was added and removed", () => {
    const there = between({}, { heater: true });
    const back = between({ heater: true }, {});
    expect(names(there.added)).toEqual(["circuit heater"]);
    expect(names(there.removed)).toEqual([]);
    expect(names(back.removed)).toEqual(["circuit heater"]);
    expect(names(back.added)).toEqual([]);
  });
});

describe("what a change does elsewhere", () => {
  test("a circuit that is longer: its own drop and nobody else's current", () => {
    const difference = between({}, { pumpFt: 16 });
    expect(effects(difference, true)).toContain("pump dropFromBankPercent");
    expect(effects(difference, false)).toEqual([]);
  });

  test("a circuit more: the current in what feeds it, the bus, the others' voltage", () => {
    const difference = between({}, { heater: true });
    expect(effects(difference, false)).toEqual(
      expect.arrayContaining([
        "feeder currentA",
        "positive bus currentA",
        "panel currentA",
        "lamp dropFromBankPercent",
      ]),
    );
    const feeder = difference.effects.find(
      ({ subject, what }) => subject.name === "feeder" && what === "currentA",
    );
    // All loads take amperes, so the feeder carries their sum: 6 A and lamps of 1, 2 and 3 A; then 15 A more.
    expect(feeder?.before).toBeCloseTo(12, 6);
    expect(feeder?.after).toBeCloseTo(27, 6);
    expect(feeder?.worse).toBe(true);
  });

  test("a load that draws more is told once: its current is not told as an effect of itself", () => {
    const difference = between({}, { pumpA: 7 });
    expect(effects(difference, true)).not.toContain("pump currentA");
    expect(effects(difference, false)).toContain("feeder currentA");
  });

  test("what crosses its limit comes first, on its way past it and back", () => {
    // Alone, 12 A flow through the bus; with the heater 27 A.
    const past = between({ ratedA: 20 }, { ratedA: 20, heater: true });
    expect(past.effects[0]).toMatchObject({
      what: "currentA",
      crossed: "past",
      subject: { name: "positive bus" },
    });
    const back = between({ ratedA: 20, heater: true }, { ratedA: 20 });
    expect(back.effects[0]).toMatchObject({
      what: "currentA",
      crossed: "back",
      subject: { name: "positive bus" },
    });
  });

  test.each<[number, "past" | undefined]>([
    [27, undefined],
    [26.9, "past"],
  ])("27 A through a bus for %s A: %s", (ratedA, crossed) => {
    const difference = between({ ratedA }, { ratedA, heater: true });
    const bus = difference.effects.find(({ subject }) => subject.name === "positive bus");
    expect(bus?.crossed).toBe(crossed);
  });

  test("a limit that the builder moved is told as that, and as crossed where it is", () => {
    expect(effects(between({}, { ratedA: 150 }), true)).toEqual([]);
    expect(between({}, { ratedA: 10 }).effects).toMatchObject([
      { what: "currentA", crossed: "past", own: true },
    ]);
  });
});

describe("findings", () => {
  const rulesOf = (findings: PlanDifference["findings"]["came"]) =>
    findings.map(({ rule, of }) => [rule, of]);

  test("one that came is worse; on the way back it went", () => {
    const there = between({}, { pumpA: 11 });
    expect(rulesOf(there.findings.came)).toContainEqual(["protection/below-load", "kept"]);
    expect(somethingWorse(there.findings)).toBe(true);
    const back = between({ pumpA: 11 }, {});
    expect(rulesOf(back.findings.went)).toContainEqual(["protection/below-load", "kept"]);
    expect(back.findings.came).toEqual([]);
    expect(somethingWorse(back.findings)).toBe(false);
  });

  test("the same one with other figures neither came nor went", () => {
    const { findings } = between({ pumpA: 11 }, { pumpA: 12 });
    expect(findings.came).toEqual([]);
    expect(findings.went).toEqual([]);
    expect(findings.changed).toEqual([]);
    expect(findings.kept.open).toBeGreaterThan(0);
  });

  test("accepted now, and no longer accepted", () => {
    const accept = { "conductor/voltage-drop": "runs an hour a year" };
    const far = { pumpFt: 60 } as const;
    const there = between(far, { ...far, accept });
    expect(there.findings.changed).toMatchObject([
      { worse: false, before: { accepted: undefined }, after: { accepted: "runs an hour a year" } },
    ]);
    expect(somethingWorse(there.findings)).toBe(false);
    const back = between({ ...far, accept }, far);
    expect(back.findings.changed).toMatchObject([{ worse: true }]);
    expect(somethingWorse(back.findings)).toBe(true);
  });

  test("of what was added and of what was removed", () => {
    const bad = { lamps: 2, pumpA: 11, pumpName: "winch", pumpFt: 30, pumpGauge: 10 } as const;
    const { findings } = between({ lamps: 2 }, bad);
    expect(rulesOf(findings.came)).toContainEqual(["protection/below-load", "added"]);
  });
});

describe("to buy", () => {
  test("wire as it is cut, and a fuse more", () => {
    const { purchases } = between({}, { heater: true });
    const more = purchases.filter(({ what }) => /^wire, 10 AWG/.test(what));
    // 6 ft, 10 % slack and 0.1 m at each end, up to the next whole inch: 88 in, red and black.
    expect(more.map(({ unit, before, after }) => [unit, before, after])).toEqual([
      ["ft", 0, expect.closeTo(88 / 12, 9)],
      ["ft", 0, expect.closeTo(88 / 12, 9)],
    ]);
    // One in use and two spare.
    expect(purchases.find(({ what }) => what.startsWith("fuse, 20 A"))).toMatchObject({
      before: 0,
      after: 3,
    });
  });

  test("what is renamed is not bought", () => {
    expect(between({}, { bus: "main bus", pumpName: "bilge pump" }).purchases).toEqual([]);
  });
});

describe("what could not be read is not told as removed", () => {
  /** With a wrong value of its bank, which leaves the network unread, or of a circuit, without which it is read. */
  function unread(wrong: "bank" | "circuit" = "bank"): Judgement {
    continueNumberingAt(0);
    const milliohm = wrong === "bank" ? { internalMilliohm: -1 } : {};
    const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 100, ...milliohm });
    const fan = { name: "fan", from: bank.positive, load: wrong === "circuit" ? -1 : 1 };
    const lamp = load({ name: "lamp", currentA: 2 });
    return judge(
      recordsOf([
        bank,
        lamp,
        cable({ name: "out", from: bank.positive, to: lamp.positive, lengthFt: 4, gauge: 12 }),
        cable({ name: "back", from: lamp.negative, to: bank.negative, lengthFt: 4, gauge: 12 }),
        circuit({ ...fan, oneWayFt: 5, gauge: 14, protect: 5 }),
      ]),
      [],
    );
  }

  test("a circuit that its network is read without makes nothing cheaper and no drop smaller", () => {
    const without = unread("circuit");
    expect(without.model.withoutCircuits.map(({ name }) => name)).toEqual(["fan"]);
    const whole = boat();
    for (const [before, after] of [
      [without, whole],
      [whole, without],
    ] as const) {
      const { purchases, removed, added } = planDifference(before, after);
      expect(purchases).toEqual([]);
      expect([...removed, ...added].map(({ subject }) => subject.name)).not.toContain("fan");
    }
  });

  test("a network with a value that is refused", () => {
    for (const [before, after, side] of [
      [boat(), unread(), "after"],
      [unread(), boat(), "before"],
    ] as const) {
      const difference = planDifference(before, after);
      expect(difference.networkUnread[side]).toBe(true);
      expect(
        [...difference.removed, ...difference.added].filter(({ subject }) => subject.kind !== "circuit"),
      ).toEqual([]);
      expect(difference.purchases).toEqual([]);
    }
  });

  test("what is found in a network that is read in neither state was found before", () => {
    const { came, went, kept } = planDifference(unread(), unread()).findings;
    expect([came, went]).toEqual([[], []]);
    expect(kept.open).toBeGreaterThan(0);
  });

  test("a circuit with a value that is refused", () => {
    const alone = (gauge: number) => {
      continueNumberingAt(0);
      return judge(
        recordsOf([circuit({ name: "lamp", load: 2, oneWayFt: 5, gauge: gauge as 14, protect: 5 })]),
        [],
      );
    };
    expect(planDifference(alone(14), alone(3)).removed).toEqual([]);
    expect(planDifference(alone(3), alone(14)).added).toEqual([]);
    expect(isSame(planDifference(alone(3), alone(3)))).toBe(true);
    expect(planDifference(alone(14), alone(3)).findings.came).toMatchObject([
      { rule: "plan/invalid-value", subject: "lamp", of: "kept" },
    ]);
  });
});

test("a default of the build that was changed shows in every circuit that took it", () => {
  const difference = between({ insulationC: 105 }, { insulationC: 75 });
  expect(changes(difference).filter((text) => text.includes("insulation 105 °C → 75 °C"))).toHaveLength(7);
});

describe("a fuse or breaker that is a part of its own", () => {
  const plan = ({
    on = "house.positive",
    fuse = 'ratingA: 100, family: "UL 248-15 Class T"',
    opens = "",
    lengthM = 2,
  } = {}) => {
    const { records, problems } = runExample(`
      build({ voltage: 12, insulationC: 105 });
      const house = battery({ name: "house", chemistry: "AGM", capacityAh: 100, internalMilliohm: 8 });
      const bus = busBar({ name: "bus", side: "positive", ratedA: 200 });
      cable({ name: "house to bus", from: house.positive, to: bus.stud, lengthM: 0.3, mm2: 50 });
      const main = fuseHolder({ name: "main fuse", ${fuse}, interruptingA: 20_000${on ? `, on: ${on}` : ""} });
      const cutout = breaker({ name: "cutout", ratingA: 60, interruptingA: 5_000, on: main.load${opens} });
      circuit({ name: "lamp", from: cutout.load, returnTo: house.negative, load: 10, oneWayM: ${lengthM}, mm2: 16 });
    `);
    const judged = judge(records, problems);
    expect([problems, judged.model.networkUnread]).toEqual([[], false]);
    return judged;
  };

  test("the terminal that it is mounted on", () => {
    expect(changes(planDifference(plan(), plan({ on: "bus.stud" })))).toEqual([
      "fuseHolder main fuse: mounted on house · positive → bus · stud",
    ]);
    expect(changes(planDifference(plan(), plan({ on: "" })))).toEqual([
      "fuseHolder main fuse: mounted on house · positive → not stated",
    ]);
    expect(isSame(planDifference(plan(), plan()))).toBe(true);
  });

  test("its rating and its family, with the fuse to buy: one, as large fuses have no usual spares", () => {
    const difference = planDifference(plan(), plan({ fuse: 'ratingA: 80, family: "ISO 8820-5 Type SF 30"' }));
    expect(changes(difference)).toEqual([
      "fuseHolder main fuse: rating 100 A → 80 A",
      "fuseHolder main fuse: family UL 248-15 Class T → ISO 8820-5 Type SF 30",
    ]);
    expect(difference.purchases.map(({ what, before, after }) => [what, before, after])).toEqual(
      expect.arrayContaining([
        ["fuse holder, for 80 A, ISO 8820-5 Type SF 30", 0, 1],
        [expect.stringMatching(/^fuse, 80 A, .*ISO 8820-5 Type SF 30$/), 0, 1],
        ["fuse holder, for 100 A, UL 248-15 Class T", 1, 0],
        [expect.stringMatching(/^fuse, 100 A, .*UL 248-15 Class T$/), 1, 0],
      ]),
    );
  });

  test("the opening times of a breaker", () => {
    const times =
      ", openingTimes: [{ atPercent: 200, afterS: 5, withinS: 60 }, { atPercent: 600, withinS: 1 }]";
    expect(changes(planDifference(plan(), plan({ opens: times })))).toEqual([
      "breaker cutout: opens not stated → at 200 % after 5 s and within 60 s; at 600 % within 1 s",
    ]);
  });

  test("the faults and the current through it, against its ratings", () => {
    const figures = (judged: Judgement) => {
      const [subject] = subjectsOf(judged).filter(({ name }) => name === "cutout");
      return measuredIn(judged)(subject!).map(({ what, words, limit }) => [what, words, limit?.value]);
    };
    expect(figures(plan())).toEqual([
      ["currentA", "current", 60],
      ["faultA", "short right behind it", 5_000],
      ["farFaultA", "short at the far end behind it", undefined],
    ]);
    const { effects: told } = planDifference(plan(), plan({ lengthM: 4 }));
    expect(told.map(({ subject, what }) => `${subject.name} ${what}`)).not.toContain("cutout faultA");
    const weaker = planDifference(plan(), plan({ on: "bus.stud" })).effects;
    expect(weaker.map(({ subject, what }) => `${subject.name} ${what}`)).toContain("cutout faultA");
  });
});
