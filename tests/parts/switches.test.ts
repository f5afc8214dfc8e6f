import { describe, expect, test } from "vitest";
import { type Judgement, judge } from "../../library/judge.ts";
import type { PlanRecord, Word } from "../../library/model/record.ts";
import type { Finding } from "../../library/rules/finding.ts";
import { ruleById } from "../../library/rules/registry.ts";

/* Relays and selector switches: judged in every position, whether or not a scenario names it. */

type Given = Readonly<Record<string, unknown>>;

class Plan {
  readonly records: PlanRecord[] = [];
  add(word: Word, input: Given): number {
    return this.records.push({ word, input, fallbackName: `${word} ${this.records.length}` }) - 1;
  }
  at(part: number, terminal: string) {
    return { kind: "terminal", part, of: this.records[part]!.word, terminal };
  }
  whole(part: number) {
    return { kind: this.records[part]!.word, id: part };
  }
  join(from: readonly [number, string], to: readonly [number, string], cable: Given = {}): number {
    const ends = { from: this.at(...from), to: this.at(...to) };
    return this.add("cable", { ...ends, lengthM: 1, gauge: 2, insulationC: 105, ...cable });
  }
  judged(): Judgement {
    return judge(this.records, []);
  }
}

const messageOf = (finding: Finding) => ruleById(finding.rule)!.message(finding.values);

const names = ({ network }: Judgement) => network!.network.scenarios.map(({ name }) => name);

/** The greatest current in a cable over all scenarios, A, and the scenario. */
function worst({ network }: Judgement, record: number) {
  const index = network!.network.conductors.findIndex((conductor) => conductor.record === record);
  const { currentA, scenario = -1 } = network!.result.conductors[index]!.worst!;
  return { currentA, scenario: network!.network.scenarios[scenario]?.name };
}

/** A start battery and a house bank of 12 V, a charging relay between them, and a heater of 40 A on the house bank. */
function twoBanks(...scenarios: readonly ((plan: Plan, relay: number) => Given)[]) {
  const plan = new Plan();
  const start = plan.add("battery", { name: "start", chemistry: "AGM", capacityAh: 95, internalMilliohm: 5 });
  const house = plan.add("battery", { name: "house", chemistry: "AGM", capacityAh: 95, internalMilliohm: 5 });
  const relay = plan.add("relay", { name: "charging relay", ratedA: 100 });
  const heater = plan.add("load", { name: "heater", currentA: 40 });
  const bridge = plan.join([start, "positive"], [relay, "line"], { protect: 100 });
  plan.join([relay, "load"], [house, "positive"], { protectFarEnd: 100 });
  const feed = plan.join([house, "positive"], [heater, "positive"], { protect: 60 });
  plan.join([heater, "negative"], [house, "negative"]);
  plan.join([start, "negative"], [house, "negative"]);
  const houseLead = feed;
  for (const scenario of scenarios) plan.add("scenario", scenario(plan, relay));
  return { plan, bridge, feed: houseLead, judged: plan.judged() };
}

describe("a charging relay between two banks", () => {
  test("is judged closed and open in each of the usual scenarios", () => {
    expect(names(twoBanks().judged)).toEqual([
      "everything on",
      "on the bank alone",
      "charging, nothing on",
      "everything on, charging relay open",
      "on the bank alone, charging relay open",
      "charging, nothing on, charging relay open",
    ]);
  });

  test("closed, it carries a share of the load; open, nothing", () => {
    const { judged, bridge } = twoBanks();
    const { currentA, scenario } = worst(judged, bridge);
    expect(scenario).toBe("everything on");
    expect(currentA).toBeGreaterThan(15);
    const index = judged.network!.network.conductors.findIndex(({ record }) => record === bridge);
    for (const result of judged.network!.result.scenarios.slice(3)) {
      expect(result.state === "solved" && result.conductorA[index]).toBeCloseTo(0, 9);
    }
  });

  test("a scenario that states its position keeps it; a position that no scenario has is judged too", () => {
    const open = (plan: Plan, relay: number) => ({ name: "at anchor", off: [plan.whole(relay)] });
    const closed = (plan: Plan, relay: number) => ({ name: "under way", on: [plan.whole(relay)] });
    expect(names(twoBanks(open).judged)).toEqual(["at anchor", "at anchor, charging relay closed"]);
    expect(names(twoBanks(open, closed).judged)).toEqual(["at anchor", "under way"]);
    expect(names(twoBanks(closed, () => ({ name: "night" })).judged)).toEqual([
      "under way",
      "night",
      "night, charging relay open",
    ]);
  });

  test("the banks are no bank of two batteries side by side", () => {
    const { judged } = twoBanks();
    expect(judged.network!.result.topology.banks.map(({ batteries }) => batteries.length)).toEqual([1, 1]);
  });

  /*
   * Ohm's law for the least short at the heater: 12 V behind the high end of the internal resistance and hot copper. With the relay
   * open the one battery gives it all, so the current is that of a plan without relay and start battery.
   */
  test("the minimum fault is that with the relay open, the maximum that with it closed", () => {
    const { judged } = twoBanks();
    const alone = new Plan();
    const house = alone.add("battery", { chemistry: "AGM", capacityAh: 95, internalMilliohm: 5 });
    const heater = alone.add("load", { currentA: 40 });
    alone.join([house, "positive"], [heater, "positive"], { protect: 60 });
    alone.join([heater, "negative"], [house, "negative"]);
    const fuseOf = (of: Judgement, ratingA: number) => {
      const { devices } = of.network!.network;
      return of.network!.result.faults.devices.find(({ device }) => devices[device]!.ratingA === ratingA)!;
    };
    const own = fuseOf(alone.judged(), 60);
    const both = fuseOf(judged, 60);
    expect(both.least!.currentA).toBeCloseTo(own.least!.currentA, 3);
    expect(both.greatestA).toBeGreaterThan(1.2 * own.greatestA);
  });

  test("more current than its rating is reported, in the position that has it", () => {
    const { plan } = twoBanks();
    plan.records[2] = { ...plan.records[2]!, input: { name: "charging relay", ratedA: 15 } };
    const [finding] = plan.judged().findings.filter(({ rule }) => rule === "disconnect/rating");
    expect(finding).toMatchObject({ severity: "warning", subject: "charging relay" });
    expect(messageOf(finding!)).toContain("use a relay with a higher one");
  });
});

describe("a contactor", () => {
  test("that only takes the supply from what is behind it is judged closed alone", () => {
    const plan = new Plan();
    const house = plan.add("battery", { chemistry: "AGM", capacityAh: 95 });
    const relay = plan.add("relay", { ratedA: 100 });
    const winch = plan.add("load", { currentA: 40 });
    plan.join([house, "positive"], [relay, "line"], { protect: 60 });
    plan.join([relay, "load"], [winch, "positive"]);
    plan.join([winch, "negative"], [house, "negative"]);
    expect(names(plan.judged())).toEqual(["everything on", "on the bank alone", "charging, nothing on"]);
  });

  test("that is open in every scenario is judged closed all the same", () => {
    const plan = new Plan();
    const house = plan.add("battery", { chemistry: "AGM", capacityAh: 95 });
    const relay = plan.add("relay", { name: "contactor", ratedA: 100 });
    const winch = plan.add("load", { name: "winch", currentA: 90 });
    const feed = plan.join([house, "positive"], [relay, "line"], { gauge: 14, protect: 30 });
    plan.join([relay, "load"], [winch, "positive"]);
    plan.join([winch, "negative"], [house, "negative"]);
    plan.add("scenario", { name: "night", off: [plan.whole(relay)] });
    const judged = plan.judged();
    expect(worst(judged, feed)).toEqual({
      currentA: expect.closeTo(90, 6),
      scenario: "night, contactor closed",
    });
    expect(judged.findings.map(({ rule }) => rule)).toContain("conductor/ampacity");
  });
});

/** Two banks on the inputs of a selector, a heater of 40 A on its common terminal. */
function selected(second: Given, scenario?: (plan: Plan, selector: number) => Given) {
  const plan = new Plan();
  const one = plan.add("battery", { name: "one", chemistry: "AGM", capacityAh: 95, internalMilliohm: 5 });
  const two = plan.add("battery", { name: "two", chemistry: "AGM", capacityAh: 95, internalMilliohm: 5 });
  const selector = plan.add("selectorSwitch", { name: "selector", ratedA: 200 });
  const heater = plan.add("load", { name: "heater", currentA: 40 });
  const first = plan.join([one, "positive"], [selector, "input1"], { protect: 100 });
  const other = plan.join([two, "positive"], [selector, "input2"], { protect: 100, ...second });
  const feed = plan.join([selector, "common"], [heater, "positive"]);
  plan.join([heater, "negative"], [one, "negative"]);
  plan.join([one, "negative"], [two, "negative"]);
  if (scenario) plan.add("scenario", scenario(plan, selector));
  return { plan, first, other, feed, judged: plan.judged() };
}

describe("a selector switch", () => {
  test("is judged with both batteries and with each one alone", () => {
    expect(names(selected({}).judged).slice(0, 5)).toEqual([
      "everything on",
      "on the bank alone",
      "charging, nothing on",
      "everything on, selector on input 1",
      "everything on, selector on input 2",
    ]);
  });

  test("each lead is judged with the whole load, in its own position", () => {
    const { judged, first, other } = selected({});
    expect(worst(judged, first)).toEqual({
      currentA: expect.closeTo(40, 6),
      scenario: "everything on, selector on input 1",
    });
    expect(worst(judged, other)).toEqual({
      currentA: expect.closeTo(40, 6),
      scenario: "everything on, selector on input 2",
    });
  });

  test("the drop on the whole path is the one through the thinner lead", () => {
    const way = ({ network }: Judgement) => network!.result.supplyPaths[0]!;
    const thin = selected({ gauge: 10, lengthM: 3 }).judged;
    expect(way(thin).dropV).toBeGreaterThan(way(selected({}).judged).dropV);
    expect(thin.network!.network.scenarios[way(thin).scenario]!.name).toContain("selector on input 2");
  });

  test("a scenario selects inputs by their terminals, and switches it off", () => {
    const onTwo = selected({}, (plan, selector) => ({
      name: "winter",
      selected: [plan.at(selector, "input2")],
    }));
    expect(names(onTwo.judged)).toEqual([
      "winter",
      "winter, selector on all inputs",
      "winter, selector on input 1",
    ]);
    const both = selected({}, (plan, selector) => ({
      name: "crossing",
      selected: [plan.at(selector, "input2"), plan.at(selector, "input1")],
    }));
    expect(names(both.judged)).toEqual([
      "crossing",
      "crossing, selector on input 1",
      "crossing, selector on input 2",
    ]);
    const free = selected({}, (plan, selector) => ({
      name: "on a free input",
      selected: [plan.at(selector, "input3")],
    }));
    expect(names(free.judged)).toEqual([
      "on a free input",
      "on a free input, selector on all inputs",
      "on a free input, selector on input 1",
      "on a free input, selector on input 2",
    ]);
    const off = selected({}, (plan, selector) => ({ name: "laid up", off: [plan.whole(selector)] }));
    expect(names(off.judged)).toEqual([
      "laid up",
      "laid up, selector on all inputs",
      "laid up, selector on input 1",
      "laid up, selector on input 2",
    ]);
  });

  test.each<[string, (plan: Plan, selector: number) => Given, string]>([
    [
      "its common terminal",
      (plan, selector) => ({ selected: [plan.at(selector, "common")] }),
      "is not one of its inputs",
    ],
    [
      "a terminal of another part",
      (plan) => ({ selected: [plan.at(0, "positive")] }),
      "is a terminal of one, which is not a selector switch",
    ],
    [
      "an input of a selector that is off",
      (plan, selector) => ({ off: [plan.whole(selector)], selected: [plan.at(selector, "input1")] }),
      "is an input of selector, which is off",
    ],
    ["the whole selector", (plan, selector) => ({ selected: [plan.whole(selector)] }), "is the whole part"],
  ])("%s is refused where it is listed", (_, scenario, message) => {
    const { judged } = selected({}, (plan, selector) => ({ name: "wrong", ...scenario(plan, selector) }));
    const [finding, another] = judged.findings.filter(({ rule }) => rule === "plan/invalid-value");
    expect(another).toBeUndefined();
    expect(finding).toMatchObject({ at: { path: ["selected", "0"] } });
    expect(messageOf(finding!)).toContain(message);
  });

  test("without a battery, or with nothing on its common terminal, it is reported as open ended", () => {
    const plan = new Plan();
    const one = plan.add("battery", { chemistry: "AGM", capacityAh: 95 });
    const selector = plan.add("selectorSwitch", { name: "selector", ratedA: 200 });
    plan.join([one, "positive"], [selector, "input1"], { protect: 100 });
    const [finding] = plan.judged().findings.filter(({ subject }) => subject === "selector");
    expect(finding).toMatchObject({ rule: "network/unconnected" });
    expect(messageOf(finding!)).toContain("connect the common terminal too");
  });
});
