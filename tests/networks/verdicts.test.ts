import { describe, expect, it } from "vitest";
import { judge } from "../../library/judge.ts";
import { runExample } from "../../library/rules/page.tester.ts";
import { rules } from "../../library/rules/registry.ts";

/*
 * Plans with one realistic mistake or gap each, and the verdicts that an electrician gives from the plan alone. They were written
 * before the code that reaches them. A verdict is "severity rule: subject"; the reason is in the name of the case.
 */

/** Verdicts by plan. `has` must all be there; none of `lacks` may be, by rule. `only`: all findings above information. */
interface Verdict {
  readonly plan: string;
  readonly has?: readonly string[];
  readonly lacks?: readonly string[];
  readonly only?: readonly string[];
  /** Every finding that follows from another: "rule: subject < rule: subject". */
  readonly follow?: readonly string[];
  /** Subjects of which none follows from another. */
  readonly lacksFollowing?: readonly string[];
  /** Parts of messages, each in some finding. */
  readonly says?: readonly string[];
}

const ofScenarios: Readonly<Record<string, Verdict>> = {
  // 33 CFR 183.425 Table 5: 14 AWG of 105 °C carries 35 A. 183.460 and good practice: a fuse below its load blows.
  "a windlass that is on in no scenario overloads its thin conductor and its fuse": {
    plan: `
      build({ insulationC: 105 });
      const bank = battery({ chemistry: "AGM", capacityAh: 200, internalMilliohm: 2.5 });
      const windlass = motor({ runningA: 90, startingA: 200 });
      const lamp = circuit({ name: "lamp", from: bank.positive, returnTo: bank.negative, load: 2, oneWayFt: 10, gauge: 14,
        protect: { ratingA: 5, family: "ISO 8820-3 Type C", distanceIn: 4 } });
      circuit({ name: "windlass supply", from: bank.positive, returnTo: bank.negative, to: windlass, oneWayFt: 12, gauge: 14,
        protect: { ratingA: 30, family: "ISO 8820-3 Type C", distanceIn: 4 } });
      scenario({ name: "evening", on: [lamp] });`,
    has: [
      "error conductor/ampacity: windlass supply",
      "error protection/below-load: windlass supply",
      "info scenario/never-on: the plan",
    ],
    says: ["90 A", "windlass"],
  },
  // The shared feeder, the main switch, the bus bar and the return carry that motor too.
  "all that a device's current passes through is judged with it: feeder, switch, bus bar, return": {
    plan: `
      build({ insulationC: 105 });
      const bank = battery({ chemistry: "AGM", capacityAh: 200, internalMilliohm: 2.5 });
      const off = disconnect({ ratedA: 50 });
      const plus = busBar({ ratedA: 80 });
      const minus = busBar({ ratedA: 80 });
      cable({ name: "to switch", from: bank.positive, to: off.line, lengthFt: 1, gauge: 10,
        protect: { ratingA: 40, family: "ISO 8820-5 Type SF 51", distanceIn: 4 } });
      cable({ name: "to bus", from: off.load, to: plus.stud, lengthFt: 2, gauge: 2 });
      cable({ name: "back", from: minus.stud, to: bank.negative, lengthFt: 2, gauge: 14 });
      const lamp = circuit({ name: "lamp", from: plus.stud, returnTo: minus.stud, load: 2, oneWayFt: 10, gauge: 14, protect: 5 });
      circuit({ name: "pump", from: plus.stud, returnTo: minus.stud, load: 90, oneWayFt: 2, gauge: 2, protect: 125 });
      scenario({ name: "evening", on: [lamp] });`,
    has: [
      "error conductor/ampacity: to switch",
      "error conductor/ampacity: back",
      "error protection/below-load: to switch",
      "error disconnect/rating: off",
      "warning bus/rating: plus",
      "warning bus/rating: minus",
    ],
    lacks: ["scenario/device-below-minimum"],
    says: ["with pump alone"],
  },
  // 125 % of the 6 A of a short circuit is 7.5 A; 18 V and 5.5 A on 12 V would be 8.3 A, which asks for 15 A.
  "a controller without tracking that is on in no scenario passes the current of its modules on": {
    plan: `
      build({ insulationC: 105 });
      const bank = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 15 });
      const roof = solarArray({ openCircuitV: 22, shortCircuitA: 6, maxPowerV: 18, maxPowerA: 5.5 });
      const pwm = solarController({ maxInputV: 30, outputA: 20, tracking: false });
      circuit({ name: "roof pair", from: roof.positive, returnTo: roof.negative, to: pwm, oneWayFt: 9, gauge: 12 });
      cable({ name: "charge", from: bank.positive, to: pwm.positive, lengthFt: 2, gauge: 12, protect: { ratingA: 10, family: "ISO 8820-3 Type C", distanceIn: 5 } });
      cable({ name: "charge back", from: pwm.negative, to: bank.negative, lengthFt: 2, gauge: 12 });
      scenario({ name: "night" });`,
    has: ["info scenario/never-on: the plan"],
    lacks: ["protection/headroom"],
  },
  // Each scenario is solved; two loads that are never on together are not added up.
  "loads that are on one at a time are not added up": {
    plan: `
      build({ insulationC: 105 });
      const bank = battery({ chemistry: "AGM", capacityAh: 200, internalMilliohm: 2.5 });
      const plus = busBar({ ratedA: 100 });
      const minus = busBar({ ratedA: 100 });
      cable({ name: "feed", from: bank.positive, to: plus.stud, lengthFt: 1, gauge: 4,
        protect: { ratingA: 100, family: "UL 248-15 Class T", distanceIn: 4, interruptingA: 20000 } });
      cable({ name: "back", from: minus.stud, to: bank.negative, lengthFt: 1, gauge: 4 });
      const bow = circuit({ name: "bow", from: plus.stud, returnTo: minus.stud, load: 60, oneWayFt: 4, gauge: 6, protect: 80 });
      const stern = circuit({ name: "stern", from: plus.stud, returnTo: minus.stud, load: 60, oneWayFt: 4, gauge: 6, protect: 80 });
      scenario({ name: "bow", on: [bow] });
      scenario({ name: "stern", on: [stern] });`,
    lacks: ["bus/rating", "protection/below-load", "conductor/ampacity", "scenario/never-on"],
  },
  // Two equal batteries share: each lead carries half of the 150 A, and 100 A fuses are right.
  "parallel batteries share the current of a load that is never on": {
    plan: `
      build({ insulationC: 105 });
      const one = battery({ chemistry: "LiFePO4", capacityAh: 200, internalMilliohm: 3, maxDischargeA: 100 });
      const two = battery({ chemistry: "LiFePO4", capacityAh: 200, internalMilliohm: 3, maxDischargeA: 100 });
      const plus = busBar({ ratedA: 200 });
      const minus = busBar({ ratedA: 200 });
      const class100 = { ratingA: 100, family: "UL 248-15 Class T", distanceIn: 4, interruptingA: 20000 };
      cable({ name: "lead one", from: one.positive, to: plus.stud, lengthFt: 2, gauge: 2, protect: class100 });
      cable({ name: "lead two", from: two.positive, to: plus.stud, lengthFt: 2, gauge: 2, protect: class100 });
      cable({ name: "return one", from: minus.stud, to: one.negative, lengthFt: 2, gauge: 2 });
      cable({ name: "return two", from: minus.stud, to: two.negative, lengthFt: 2, gauge: 2 });
      const lamp = circuit({ name: "lamp", from: plus.stud, returnTo: minus.stud, load: 2, oneWayFt: 10, gauge: 14, protect: 5 });
      circuit({ name: "winch", from: plus.stud, returnTo: minus.stud, load: 150, oneWayFt: 2, gauge: "1/0", protect: 200 });
      scenario({ name: "evening", on: [lamp] });`,
    has: ["info scenario/never-on: the plan"],
    lacks: ["protection/below-load", "conductor/ampacity", "battery/discharge-current", "bus/rating"],
  },
  // The house bank carries it alone while the switch that lends the starter battery is open.
  "a closed emergency switch does not halve the current of the house bank, nor load the starter battery": {
    plan: `
      build({ insulationC: 105 });
      const house = battery({ chemistry: "AGM", capacityAh: 200, internalMilliohm: 2.5 });
      const starter = battery({ chemistry: "flooded lead-acid", capacityAh: 90, internalMilliohm: 4 });
      const lend = disconnect({ ratedA: 300 });
      const plus = busBar({});
      const minus = busBar({});
      const link = { ratingA: 60, family: "UL 248-15 Class T", distanceIn: 4, interruptingA: 20000 };
      cable({ name: "house feed", from: house.positive, to: plus.stud, lengthFt: 2, gauge: 8,
        protect: { ...link, ratingA: 70 } });
      cable({ name: "house back", from: minus.stud, to: house.negative, lengthFt: 2, gauge: 8 });
      cable({ name: "starter to switch", from: starter.positive, to: lend.line, lengthFt: 2, gauge: 6, protect: link });
      cable({ name: "switch to bus", from: lend.load, to: plus.stud, lengthFt: 2, gauge: 6, protectFarEnd: link });
      cable({ name: "starter back", from: minus.stud, to: starter.negative, lengthFt: 2, gauge: 6 });
      const lamp = circuit({ name: "lamp", from: plus.stud, returnTo: minus.stud, load: 2, oneWayFt: 10, gauge: 14, protect: 5 });
      circuit({ name: "winch", from: plus.stud, returnTo: minus.stud, load: 100, oneWayFt: 2, gauge: 2, protect: 125 });
      scenario({ name: "evening", on: [lamp] });`,
    has: ["error conductor/ampacity: house feed", "error conductor/ampacity: house back"],
    lacks: [],
  },
  // An alternator gives its rating as soon as the engine runs, whether or not a scenario says so.
  "a charging source that is on in no scenario loads its own cable": {
    plan: `
      build({ insulationC: 105 });
      const bank = battery({ chemistry: "AGM", capacityAh: 200, internalMilliohm: 2.5 });
      const source = alternator({ ratedA: 120 });
      const fuse = { ratingA: 50, family: "UL 248-15 Class T", distanceIn: 4, interruptingA: 20000 };
      cable({ name: "charge", from: source.positive, to: bank.positive, lengthFt: 6, gauge: 8, protectFarEnd: fuse });
      cable({ name: "charge back", from: bank.negative, to: source.negative, lengthFt: 6, gauge: 8 });
      const lamp = circuit({ name: "lamp", from: bank.positive, returnTo: bank.negative, load: 2, oneWayFt: 10, gauge: 14,
        protect: { ratingA: 5, family: "ISO 8820-3 Type C", distanceIn: 4 } });
      scenario({ name: "evening", on: [lamp] });`,
    has: ["error conductor/ampacity: charge", "error conductor/ampacity: charge back"],
  },
  // A device in watts draws most at the lowest voltage at which it works: 600 W at 10 V are 60 A, not 50.
  "a load in watts that is never on counts at its lowest voltage": {
    plan: `
      build({ insulationC: 105 });
      const bank = battery({ chemistry: "AGM", capacityAh: 200, internalMilliohm: 2.5 });
      const cooker = load({ powerW: 600, minimumV: 10 });
      const lamp = circuit({ name: "lamp", from: bank.positive, returnTo: bank.negative, load: 2, oneWayFt: 10, gauge: 14,
        protect: { ratingA: 5, family: "ISO 8820-3 Type C", distanceIn: 4 } });
      circuit({ name: "cooker supply", from: bank.positive, returnTo: bank.negative, to: cooker, oneWayFt: 3, gauge: 8,
        protect: { ratingA: 55, family: "UL 248-15 Class T", distanceIn: 4, interruptingA: 20000 } });
      scenario({ name: "evening", on: [lamp] });`,
    has: ["error protection/below-load: cooker supply"],
    says: ["60 A"],
  },
};

/** A bank, a main switch, two bus bars; 14 AWG of 105 °C may carry 35 A (33 CFR 183.425, Table 5). */
const house = (battery = "capacityAh: 200") => `
      build({ insulationC: 105 });
      const bank = battery({ chemistry: "AGM", ${battery}, internalMilliohm: 2.5 });
      const plus = busBar({});
      const minus = busBar({});
      const classT = { family: "UL 248-15 Class T", distanceIn: 4, interruptingA: 20000 };
      cable({ name: "feed", from: bank.positive, to: plus.stud, lengthFt: 2, gauge: 10, protect: { ...classT, ratingA: 125 } });
      cable({ name: "back", from: minus.stud, to: bank.negative, lengthFt: 2, gauge: 2 });
      const out = (name, more) => circuit({ name, from: plus.stud, returnTo: minus.stud, load: 5, oneWayFt: 5, gauge: 14,
        protect: 10, ...more });
      out("pump", { protect: 60 });
      out("winch", { load: 80, gauge: 4, protect: 100 });`;

const ofGaps: Readonly<Record<string, Verdict>> = {
  // A fuse of 60 A never protects 14 AWG, and 80 A through 10 AWG (60 A) need no voltage to be too much.
  "a voltage collapse hides no size and no fuse": {
    plan: `${house()}
      const heater = load({ powerW: 900, dropLimitPercent: 20 });
      out("heater", { load: undefined, to: heater, oneWayFt: 120, gauge: 4, protect: 125 });`,
    has: [
      "error voltage/collapse: heater",
      "error protection/above-conductor: pump",
      "error protection/above-conductor: feed",
      "error conductor/ampacity: feed",
    ],
  },
  "a refused capacity of the bank hides no size and no fuse, and makes nothing else look unconnected": {
    plan: house("capacityAh: -5"),
    has: [
      "error plan/invalid-value: bank",
      "error protection/above-conductor: pump",
      "error protection/above-conductor: feed",
      "error conductor/ampacity: feed",
    ],
    lacks: ["network/unconnected", "network/no-return", "protection/missing", "disconnect/missing"],
  },
  "a refused cable hides no fault of the others": {
    plan: `${house()}
      cable({ name: "spare", from: plus.stud, to: bank.positive, lengthFt: -2, gauge: 4 });`,
    has: [
      "error plan/invalid-value: spare",
      "error protection/above-conductor: pump",
      "error conductor/ampacity: feed",
    ],
    lacks: ["network/unconnected", "network/no-return", "protection/missing", "disconnect/missing"],
  },
  "a refused scenario hides no fault": {
    plan: `${house()}
      scenario({ name: "dark", chargePercent: 500 });`,
    has: [
      "error plan/invalid-value: dark",
      "error protection/above-conductor: pump",
      "error conductor/ampacity: feed",
    ],
  },
  "a refused bus bar leaves its conductors judged by their own figures": {
    plan: `${house().replace("const plus = busBar({});", "const plus = busBar({ ratedA: -1 });")}`,
    has: [
      "error plan/invalid-value: plus",
      "error protection/above-conductor: pump",
      "error conductor/ampacity: feed",
    ],
    lacks: ["network/unconnected", "network/no-return", "protection/missing", "disconnect/missing"],
  },
  "an island beside the refused value is judged as if it were alone": {
    plan: `${house("capacityAh: -5")}
      const other = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 5 });
      const lamp = load({ currentA: 40 });
      cable({ name: "lamp feed", from: other.positive, to: lamp.positive, lengthFt: 2, gauge: 14 });
      const stray = load({ currentA: 4 });
      cable({ name: "stray feed", from: other.positive, to: stray.positive, lengthFt: 2, gauge: 14 });`,
    has: [
      "error plan/invalid-value: bank",
      "error protection/above-conductor: pump",
      "error protection/unprotected-path: lamp feed",
      "error network/no-return: lamp",
    ],
    lacks: ["network/unconnected"],
  },
};

const ofVoltages: Readonly<Record<string, Verdict>> = {
  "a circuit of 24 V in a network of 12 V is refused, and hides nothing": {
    plan: `${house()}
      out("radio", { voltage: 24 });`,
    has: [
      "error plan/invalid-value: radio",
      "error protection/above-conductor: pump",
      "error conductor/ampacity: feed",
    ],
    says: ["voltage is not the nominal voltage of the batteries that it is connected to: 24. Allowed: 12 V"],
  },
  "a circuit of 12 V in a network of 12.8 V is the same system": {
    plan: `
      build({ insulationC: 105 });
      const bank = battery({ chemistry: "LiFePO4", nominalV: 12.8, capacityAh: 100, internalMilliohm: 5 });
      circuit({ name: "lamp", from: bank.positive, load: 2, oneWayFt: 5, gauge: 14, voltage: 12 });`,
    lacks: ["plan/invalid-value"],
  },
};

/** A bank of 24 V, and a battery of 12 V beside it, on bus bars. */
const unlikeBank = (more: string) => `
  build({ voltage: 24, insulationC: 105 });
  const figures = { chemistry: "AGM", capacityAh: 100, internalMilliohm: 8, maxDischargeA: 300 };
  const plus = busBar({ name: "plus", ratedA: 250 });
  const minus = busBar({ name: "minus", ratedA: 250 });
  const bank = battery({ ...figures, name: "bank", nominalV: 24 });
  const spare = battery({ ...figures, name: "spare", nominalV: 12 });
  for (const { name, positive, negative } of [bank, spare]) {
    cable({ name: name + " plus", from: positive, to: plus.stud, lengthFt: 2, gauge: "4/0", protect: { ratingA: 400, distanceIn: 6 } });
    cable({ name: name + " minus", from: negative, to: minus.stud, lengthFt: 2, gauge: "4/0" });
  }
  ${more}`;

const ofCauses: Readonly<Record<string, Verdict>> = {
  "currents that unlike batteries drive follow from them, and so do voltages": {
    plan: unlikeBank(
      `circuit({ name: "radio", from: plus.stud, returnTo: minus.stud, load: 2, minimumV: 21, oneWayFt: 5, gauge: 14, protect: 5 });`,
    ),
    follow: [
      "bus/rating: plus < battery/unlike: spare",
      "bus/rating: minus < battery/unlike: spare",
      "battery/discharge-current: bank < battery/unlike: spare",
      "battery/parallel-imbalance: bank < battery/unlike: spare",
      "battery/charge-current: spare < battery/unlike: spare",
      "conductor/ampacity: bank plus < battery/unlike: spare",
      "protection/below-load: bank plus < battery/unlike: spare",
      "conductor/ampacity: bank minus < battery/unlike: spare",
      "conductor/terminal-temperature: the plan < battery/unlike: spare",
      "conductor/ampacity: spare plus < battery/unlike: spare",
      "protection/below-load: spare plus < battery/unlike: spare",
      "conductor/ampacity: spare minus < battery/unlike: spare",
      "scenario/device-below-minimum: radio < battery/unlike: spare",
    ],
  },
  "fuses that lithium blows by charging lead-acid follow from their connection": {
    plan: `
      build({ insulationC: 105 });
      const plus = busBar({ name: "plus", ratedA: 250 });
      const minus = busBar({ name: "minus", ratedA: 250 });
      const figures = { capacityAh: 100, internalMilliohm: 5, maxChargeA: 100, maxDischargeA: 300 };
      const lithium = battery({ ...figures, name: "lithium", chemistry: "LiFePO4" });
      const lead = battery({ ...figures, name: "lead", chemistry: "AGM" });
      for (const { name, positive, negative } of [lithium, lead]) {
        cable({ name: name + " plus", from: positive, to: plus.stud, lengthFt: 2, gauge: 4, protect: { ratingA: 40, distanceIn: 6 } });
        cable({ name: name + " minus", from: negative, to: minus.stud, lengthFt: 2, gauge: 4 });
      }
      circuit({ name: "radio", from: plus.stud, returnTo: minus.stud, load: 2, oneWayFt: 5, gauge: 14, protect: 5 });`,
    follow: [
      "battery/parallel-imbalance: lithium < battery/unlike: lithium",
      "protection/below-load: lithium plus < battery/unlike: lithium",
      "protection/below-load: lead plus < battery/unlike: lithium",
    ],
  },
  "a conductor that its own load overheats does not follow from unlike batteries": {
    plan: unlikeBank(
      `circuit({ name: "motor", from: plus.stud, returnTo: minus.stud, load: 90, oneWayFt: 5, gauge: 14, protect: 100 });`,
    ),
    has: ["error conductor/ampacity: motor"],
    lacksFollowing: ["motor"],
  },
  "the drop on a run follows from the collapse that it is part of; sizes and fuses stand alone": {
    plan: `${house()}
      const heater = load({ powerW: 900, dropLimitPercent: 20 });
      out("heater", { load: undefined, to: heater, oneWayFt: 120, gauge: 4, protect: 125 });`,
    has: ["warning conductor/voltage-drop: heater"],
    follow: ["conductor/voltage-drop: heater < voltage/collapse: heater"],
  },
  "nothing follows in an island beside the collapse": {
    plan: `${house()}
      const heater = load({ powerW: 900, dropLimitPercent: 20 });
      out("heater", { load: undefined, to: heater, oneWayFt: 120, gauge: 4, protect: 125 });
      const other = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 5 });
      circuit({ name: "far lamp", from: other.positive, load: 10, oneWayFt: 60, gauge: 14, protect: { ...classT, ratingA: 15 } });`,
    has: ["warning conductor/voltage-drop: far lamp"],
    follow: ["conductor/voltage-drop: heater < voltage/collapse: heater"],
  },
  "a charger that is connected the wrong way round explains all that its right side would end": {
    plan: `${house()}
      const tracker = solarController({ maxInputV: 75, outputA: 10 });
      const roof = solarArray({ openCircuitV: 22, shortCircuitA: 6, maxPowerV: 18, maxPowerA: 5.5 });
      circuit({ name: "roof pair", from: roof.positive, returnTo: roof.negative, to: tracker, oneWayFt: 10, gauge: 12 });
      out("charging", { load: undefined, to: tracker, gauge: 14, protect: { ...classT, ratingA: 40 } });`,
    has: ["error network/wrong-port: charging", "error protection/above-conductor: charging"],
    follow: [
      "network/unconnected: tracker < network/wrong-port: charging",
      "battery/charging-voltage: roof < network/wrong-port: charging",
    ],
  },
  "a cut-off voltage of a lower system explains the current at it": {
    plan: `build({ voltage: 24, insulationC: 105 });
      const bank = battery({ chemistry: "AGM", capacityAh: 200, internalMilliohm: 5 });
      const sine = inverter({ name: "sine", continuousW: 1000, cutOffV: 10.5 });
      cable({ name: "plus", from: bank.positive, to: sine.positive, lengthFt: 3, gauge: 6, protect: { ratingA: 70, family: "UL 248-15 Class T", interruptingA: 20_000, distanceIn: 6 } });
      cable({ name: "minus", from: sine.negative, to: bank.negative, lengthFt: 3, gauge: 6 });`,
    has: ["error inverter/other-voltage: sine", "warning inverter/supply: plus"],
    follow: [
      "battery/discharge-current: bank < inverter/other-voltage: sine",
      "inverter/supply: plus < inverter/other-voltage: sine",
    ],
  },
  "a second feed at the input of a charger explains its free output": {
    plan: `${house()}
      const start = battery({ name: "start", chemistry: "AGM", capacityAh: 80, internalMilliohm: 5 });
      const booster = dcDcCharger({ outputA: 10 });
      circuit({ name: "feed", from: start.positive, to: booster, oneWayFt: 6, gauge: 8, protect: { ...classT, ratingA: 30 } });
      out("output", { load: undefined, to: booster, gauge: 8, protect: { ...classT, ratingA: 30 } });`,
    has: ["error network/wrong-port: output"],
    follow: [
      "charger/input-current: feed < network/wrong-port: output",
      "battery/unlike: start < network/wrong-port: output",
      "network/unconnected: booster < network/wrong-port: output",
    ],
  },
};

describe("a named scenario switches no check off", () => {
  for (const [name, verdict] of Object.entries(ofScenarios)) it(name, () => expectVerdict(verdict));
});

describe("a circuit has the voltage of its network", () => {
  for (const [name, verdict] of Object.entries(ofVoltages)) it(name, () => expectVerdict(verdict));
});

describe("a consequence names its cause", () => {
  for (const [name, verdict] of Object.entries(ofCauses)) it(name, () => expectVerdict(verdict));
});

describe("one finding hides no other that needs nothing from it", () => {
  for (const [name, verdict] of Object.entries(ofGaps)) it(name, () => expectVerdict(verdict));
});

function expectVerdict({
  plan,
  has = [],
  lacks = [],
  only,
  says = [],
  follow,
  lacksFollowing = [],
}: Verdict): void {
  const { records, problems } = runExample(plan);
  expect(problems).toEqual([]);
  const messageOf = new Map(rules.map((rule) => [rule.id, rule.message]));
  const findings = judge(records, problems).findings;
  const verdicts = findings.map(({ severity, rule, subject }) => `${severity} ${rule}: ${subject}`);
  for (const wanted of has) expect(verdicts).toContain(wanted);
  expect(verdicts.filter((one) => lacks.some((rule) => one.includes(` ${rule}: `)))).toEqual([]);
  if (only) expect(verdicts.filter((one) => !one.startsWith("info "))).toEqual(only);
  const following = findings.flatMap(({ rule, subject, followsFrom: cause }) =>
    cause ? [`${rule}: ${subject} < ${cause.rule}: ${cause.subject}`] : [],
  );
  if (follow) expect(following).toEqual(follow);
  expect(following.filter((one) => lacksFollowing.some((subject) => one.includes(`: ${subject} <`)))).toEqual(
    [],
  );
  const messages = findings.map(({ rule, values }) => messageOf.get(rule)!(values));
  for (const words of says) expect(messages.some((message) => message.includes(words))).toBe(true);
}
