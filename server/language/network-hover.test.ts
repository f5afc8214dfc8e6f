import { describe, expect, test } from "vitest";
import { planUnderCursor } from "./feature.tester.ts";
import { hover, working } from "./hover.ts";
import { sampleBuild } from "./sample-build.tester.ts";

/** The hover at a place of the sample build marked with `‸`; `changes` are applied before. */
function hoverAt(marked: string, changes: Readonly<Record<string, string>> = {}): Promise<string> {
  return hoverIn(changed(marked, changes));
}

/** The hover at `‸` in a plan. */
async function hoverIn(plan: string): Promise<string> {
  const { view, uri, position } = await planUnderCursor(plan);
  const contents = hover(view, uri, position)?.contents;
  return contents && typeof contents === "object" && "value" in contents ? contents.value : "";
}

function changed(marked: string, changes: Readonly<Record<string, string>>): string {
  const plain = marked.replace("‸", "");
  if (!sampleBuild.includes(plain)) throw new Error(`The sample build has no ${plain}`);
  let text = sampleBuild.replace(plain, marked);
  for (const [from, to] of Object.entries(changes)) {
    if (!text.includes(from)) throw new Error(`The sample build has no ${from}`);
    text = text.replace(from, to);
  }
  return text;
}

test("a fuse whose family only its panel states", async () => {
  const den = (family: string) => `import { battery, build, cable, circuit, fusePanel } from "loomwright";
build({ insulationC: 105 });
const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 80, internalMilliohm: 20 });
const panel = fusePanel({ name: "box *one*", positions: 6${family} });
cable({ from: bank.positive, to: panel.feed, lengthFt: 3, gauge: 6, protect: 60 });
cable({ from: panel.negative, to: bank.negative, lengthFt: 3, gauge: 6 });
cir‸cuit({ name: "lamp", from: panel.branch, load: 2, oneWayFt: 10, gauge: 14, sheathed: "flat duplex", protect: 5 });
`;
  const text = await hoverIn(den(', branchFamily: "ISO 8820-3 Type C"'));
  expect(text).toContain(
    String.raw`- Protection: **5 A, ISO 8820\-3 Type C\, as stated at box \*one\***; allowed`,
  );
  expect(text).toContain("V on 14 AWG, flat duplex");
  expect(await hoverIn(den(""))).toMatch(/- Protection: \*\*5 A\*\*; allowed/);
});

describe("figures that need a length that is not known", () => {
  const two = (
    feed: string,
  ) => `import { battery, build, busBar, cable, circuit, scenario } from "loomwright";
build({ voltage: 12, insulationC: 105 });
const house = battery({ name: "house", chemistry: "LiFePO4", capacityAh: 200, internalMilliohm: 2 });
const other = battery({ name: "other", chemistry: "LiFePO4", capacityAh: 200, internalMilliohm: 2 });
const bus = busBar({ name: "bus", side: "positive" });
const minus = busBar({ name: "minus", side: "negative" });
cable({ name: "feed", from: house.positive, to: bus.stud, ${feed}mm2: 35, protect: 100 });
cable({ name: "other feed", from: other.positive, to: bus.stud, lengthM: 1, mm2: 35, protect: 100 });
cable({ name: "back", from: house.negative, to: minus.stud, lengthM: 1, mm2: 35 });
cable({ name: "other back", from: other.negative, to: minus.stud, lengthM: 1, mm2: 35 });
circuit({ name: "lamp", from: bus.stud, returnTo: minus.stud, load: 5, oneWayM: 3, mm2: 2.5, protect: 10 });
scenario({ name: "evening" });
`;
  const at = (plan: string, call: string) => hoverIn(plan.replace(call, `‸${call}`));

  test("the share of a battery, and its voltage", async () => {
    expect(await at(two("lengthM: 1, "), 'battery({ name: "house"')).toMatch(
      /\| evening \| 1[23]\.\d+ V \| gives 2\.5 A \|/,
    );
    expect(await at(two(""), 'battery({ name: "house"')).toContain("| evening | not known | not known |");
    const evening = await at(two(""), 'scenario({ name: "evening"');
    expect(evening).toMatch(/house \| not known \| not known \|/);
    // 5 A of 210 A on either feed, if it carries all; the lamp's 5 A are a greater share of less.
    expect(evening).toMatch(/Nearest to its ampacity: .*lamp.*, 5 A of/);
  });

  test("the current through a terminal where it divides, and the voltage there", async () => {
    const stud = "from: bus.stu‸d, returnTo";
    const known = await hoverIn(two("lengthM: 1, ").replace("from: bus.stud, returnTo", stud));
    expect(known).toMatch(/\| evening \| 1[23]\.\d+ V \| 5 A \|/);
    const unknown = await hoverIn(two("").replace("from: bus.stud, returnTo", stud));
    expect(unknown).toMatch(/\| evening \| at most 1[23]\.\d+ V \| not known \|/);
  });

  test("the current of the very cable whose length is left out, beside another", async () => {
    expect(await at(two("lengthM: 1, "), 'cable({ name: "feed"')).toContain("| evening | 2.5 A |");
    expect(await at(two(""), 'cable({ name: "feed"')).toContain("| evening | not known | not known |");
    expect(await at(two(""), 'cable({ name: "other feed"')).toContain("| evening | not known | not known |");
    const small = two("").replace(
      "lengthM: 1, mm2: 35, protect: 100 });",
      "lengthM: 1, mm2: 1.5, protect: 10 });",
    );
    expect(await at(small, 'scenario({ name: "evening"')).toMatch(
      /Nearest to its ampacity: .*other feed.*, at most 5 A of/,
    );
  });
});

describe("a part", () => {
  test("a battery: what it gives against what it may, its dead short, each scenario, the source of its numbers", async () => {
    const text = await hoverAt("bat‸tery({\n");
    expect(text).toContain("**house bank**: battery, LiFePO4, 12 V, 200 Ah");
    expect(text).toMatch(/- Gives: \*\*[\d.]+ A\*\*; in \\"cooking\\"; may give 150 A; margin [\d.]+ A/);
    expect(text).toContain("- Takes: **no current in any solved scenario**");
    expect(text).toMatch(/- Dead short at its terminals: \*\*up to 3,[\d]+ A\*\* · _stated in the plan/);
    expect(text).toMatch(/\| \*\*cooking\*\* \(worst\) \| \*\*12\.\d+ V\*\* \| \*\*gives [\d.]+ A\*\* \|/);
    expect(text).toContain("| gives 15 A |");
    expect(text).toContain("_Its numbers: data sheet p\\. 3._");
  });

  test("a limit that the plan does not state is not judged, and says so", async () => {
    const text = await hoverAt("bat‸tery({\n", { "maxDischargeA: 150,": "" });
    expect(text).toMatch(/- Gives: .* its discharge limit is not stated, so not judged$/m);
  });

  test("a dead short from a resistance that nobody stated says so", async () => {
    const text = await hoverAt("bat‸tery({\n", { "internalMilliohm: 4,": "" });
    expect(text).toMatch(/Dead short at its terminals: .* the lowest usual one is taken/);
    expect(text).toMatch(/- Internal resistance: \*\*[\d.]+ to [\d.]+ mΩ\*\* · _/);
  });

  test("an inverter: the lowest voltage against its cut-off, the whole way, the efficiency that was taken", async () => {
    const text = await hoverAt("inv‸erter({ name");
    expect(text).toMatch(
      /- Lowest voltage: \*\*12\.\d+ V\*\*; in \\"cooking\\"; cuts off at 10\.5 V; margin/,
    );
    // Its own circuit, both conductors as one, and the cable before it.
    expect(text).toMatch(
      /- Drop, whole path from the bank and back: \*\*.* V, .* %\*\*; .* V on inverter supply and .* V on the cable bank to switch; limit 0\.36 V, 3 %; margin/,
    );
    expect(text).toMatch(/- Efficiency: \*\*90 %\*\* · _/);
    expect(text).toContain("| evening | 13");
  });

  test("a panel: what passes it against its rating", async () => {
    expect(await hoverAt("fuse‸Panel({ name")).toMatch(
      /- Passes on: \*\*15 A\*\*; .*; rating 100 A; margin 85 A/,
    );
  });

  test("a circuit's `to` speaks of the part, not of the circuit", async () => {
    const text = await hoverAt("to: ket‸tle,");
    expect(text).toContain("**kettle inverter**: inverter, 600 W");
    expect(text).not.toContain("**inverter supply**");
  });
});

describe("a fuse or breaker that is a part", () => {
  const plan = `import { battery, breaker, build, circuit, fuseHolder } from "loomwright";
build({ insulationC: 75 });
const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 100, internalMilliohm: 10 });
const main = fuseHolder({ name: "main", ratingA: 40, family: "UL 248-15 Class T", interruptingA: 20_000, on: bank.positive });
circuit({ name: "Pump", from: main.load, returnTo: bank.negative, load: 20, oneWayFt: 60, gauge: 6 });
const horn = breaker({ name: "horn", ratingA: 30, on: main.load, openingTimes: [{ atPercent: 200, afterS: 5, withinS: 60 }, { atPercent: 600, withinS: 1 }] });
`;

  const hoverOn = (marked: string) => hoverIn(plan.replace(marked.replace("‸", ""), marked));

  test("its current, the dead short against what it can interrupt, and the minimum fault", async () => {
    const text = await hoverOn("fuse‸Holder({");
    expect(text).toContain("**main**: fuse holder, 40 A");
    expect(text).toMatch(/- Passes on: \*\*20 A\*\*; .*; rating 40 A; margin 20 A · _stated in the plan_/);
    // 12.85 V / 10 mΩ = 1,285 A.
    expect(text).toMatch(
      /- Dead short behind the fuse: \*\*up to 1,2[89]0 A\*\*; fed by the bank; can interrupt 20,000 A; margin 18,700 A · _stated in the plan_/,
    );
    // 12 V / (10 mΩ + 58.8 mΩ), as on the page of protection/does-not-clear.
    expect(text).toContain(
      "- Minimum fault that it must clear: **174 A**; at the far end of the positive conductor of Pump",
    );
    expect(text).not.toContain("Opening times");
  });

  test("its opening times, if the plan states them; an interrupting rating that is not known says so", async () => {
    const text = await hoverOn("brea‸ker({");
    expect(text).toMatch(
      /- Dead short behind the breaker: .*; its interrupting rating is not known, so not judged$/m,
    );
    expect(text).toContain(
      "- Opening times: **5 to 60 s at 200 % of its rating, up to 1 s at 600 %** · _stated in the plan_",
    );
    expect(text).not.toContain("Minimum fault");
  });

  test("one that no source reaches is not judged, and says so", async () => {
    const alone = plan.replace(/const horn = .*/, "brea‸ker({ ratingA: 30 });");
    expect(await hoverIn(alone)).toContain(
      "- Dead short behind the breaker: **not worked out**; no source reaches it, or it is already in a short",
    );
  });

  test("the terminal that it is mounted on shows it beside the conductors there", async () => {
    const battery = await hoverOn("on: bank.pos‸itive");
    expect(battery).toMatch(/^The positive terminal of the bank, against/);
    expect(battery).toContain("- the fuse holder main: up to **20 A**");
    expect(battery).toMatch(/\| \*\*11\.\d V\*\* \| \*\*20 A\*\* \|/);
    const load = await hoverOn("on: main.lo‸ad");
    expect(load).toContain("- the positive conductor of Pump: up to **20 A**");
    expect(load).toContain("- the breaker horn: up to **0 A**");
  });
});

describe("a terminal", () => {
  test("its voltage in each scenario, and what lands on it", async () => {
    const text = await hoverAt("from: bank.‸positive");
    expect(text).toMatch(/^The positive terminal of the house bank, against the negative terminal/);
    expect(text).toMatch(/\| \*\*cooking\*\* \(worst\) \| \*\*12\.\d+ V\*\* \|/);
    expect(text).toMatch(/- the cable bank to switch: up to \*\*[\d.]+ A\*\*/);
  });

  test("where several conductors land, all of them", async () => {
    const text = await hoverAt("from: off.lo‸ad, to: panel.feed");
    expect(text).toContain("- the cable feeder: up to **15 A**");
    expect(text).toMatch(/- the positive conductor of inverter supply: up to/);
  });
});

describe("a cable", () => {
  test("its current and margin, drop, temperature, dead short, each scenario, and the working", async () => {
    const text = await hoverAt('name: "fee‸der"');
    expect(text).toMatch(/^\*\*feeder\*\*: 15 A in/);
    // 33 CFR 183.425, Table 5: 4 AWG, 105 °C: 160 A.
    expect(text).toContain("- Current: **15 A**; may carry 160 A; margin 145 A · _33 CFR 183.425");
    // 4 ft of 4 AWG, by hand: 1.2192 m · 0.8664 mΩ/m · 15 A = 15.8 mV.
    expect(text).toContain("- Drop on it: **0.0158 V, 0.132 %**");
    expect(text).toContain("- Protection: **none in it**");
    expect(text).toMatch(/- Dead short at its start: \*\*up to [\d,]+ A\*\*; opened by the 100 A fuse in/);
    expect(text).toContain("| cooking | 15 A | 0.0158 V | 30.7 °C |");
    expect(text).toContain("Resistance from end to end");
    expect(text).toContain("drop = current × resistance");
  });

  test("with a fuse in it: the strongest short behind it against what it can interrupt, and the weakest", async () => {
    const text = await hoverAt('name: "bank ‸to switch"');
    expect(text).toMatch(
      /- Dead short behind the fuse: \*\*up to [\d,]+ A\*\*; fed by the house bank; can interrupt 20,000 A; margin [\d,]+ A · _stated in the plan_/,
    );
    expect(text).toMatch(/- Minimum fault that it must clear: \*\*[\d,]+ A\*\*; at the far end of/);
  });

  test("a return needs no protection, and is told none", async () => {
    const text = await hoverAt('name: "panel ‸return"');
    expect(text).toContain("- Current: **15 A**");
    expect(text).not.toContain("Protection:");
  });
});

describe("a circuit of a network", () => {
  test("its own drop and that of the whole way, and what arrives in each scenario", async () => {
    const text = await hoverAt('name: "hea‸ter"');
    expect(text).toMatch(/^\*\*heater\*\*: 15 A in .* at 12 V on 10 AWG/);
    expect(text).toMatch(/- Drop on this circuit, round trip: /);
    expect(text).toMatch(
      /- Drop, whole path from the bank and back: \*\*0\.4\d+ V, 3\.\d+ %\*\*; in \\"cooking\\"; limit 1\.2 V, 10 %; margin/,
    );
    expect(text).toMatch(/- Lowest voltage: \*\*12\.\d+ V\*\*; in \\"cooking\\"/);
    expect(text).toMatch(/\| \*\*cooking\*\* \(worst\) \| \*\*15 A\*\* .* \*\*12\.\d+ V\*\* \|/);
  });

  test("what is stated counts where less flows, and the hover tells both", async () => {
    const text = await hoverAt('name: "hea‸ter"', { "load: 15,": "loadW: 150, minimumV: 10," });
    // 150 W at 10 V.
    expect(text).toMatch(/: 15 A \(150 W \/ 10 V\) as stated \(at most 12\.5 A flow, with heater alone\)/);
    expect(text).toMatch(/- Lowest voltage: .* needs 10 V; margin/);
  });
});

describe("a scenario", () => {
  test("what is on, how exactly it was solved, what each source gives and each device gets", async () => {
    const text = await hoverAt('scen‸ario({ name: "cooking"');
    expect(text).toMatch(/^\*\*cooking\*\*: solved; at each node the currents sum to 0 within \d/);
    expect(text).toContain("On: the house bank\\, the kettle inverter and heater");
    expect(text).toMatch(/Nearest to its ampacity: .*, [\d.]+ A of [\d.]+ A\./);
    expect(text).toMatch(/\| the house bank \| 12\.\d+ V \| gives [\d.]+ A \|/);
    expect(text).toMatch(/\| the kettle inverter \| 12\.\d+ V \| takes [\d.]+ A \|/);
  });

  test("what is off is not listed", async () => {
    const text = await hoverAt('scen‸ario({ name: "evening"');
    expect(text).not.toContain("inverter");
  });

  const tooMuch = { "continuousW: 600": "continuousW: 9_000" };

  test("without an operating point it names who pulls the voltage down", async () => {
    const text = await hoverAt('scen‸ario({ name: "cooking"', tooMuch);
    expect(text).toContain("**cooking**: **not solved**");
    expect(text).toMatch(
      /There is no operating point: the kettle inverter would pull the voltage down without limit\. With up to [\d.]+ % of the power there is one\./,
    );
  });

  test("in every table it comes first, and says why", async () => {
    const text = await hoverAt("bat‸tery({\n", tooMuch);
    expect(text).toMatch(
      /\| --- \| ---: \| ---: \|\n\| \*\*cooking\*\* \| \*\*not solved\*\* \| {2}\|\n\| evening \|/,
    );
    expect(text).toContain("**cooking** is not solved: there is no operating point: the kettle inverter");
  });

  test("a cable of which nothing is known says so", async () => {
    const text = await hoverAt('name: "fee‸der"', {
      ...tooMuch,
      'scenario({ name: "evening", off: [kettle], chargePercent: 50 });': "",
    });
    expect(text).toContain(
      "**feeder**: At least 15 A at 12 V on 4 AWG\n\nIts greatest current is unknown, because the network could not be solved here: current, drop and temperature are not judged beyond this.",
    );
    expect(text).not.toContain("How this was worked out");
  });
});

describe("what cannot be read", () => {
  const refused = { "capacityAh: 200": 'capacityAh: "many" as any' };

  test("a part of a network with a refused value is not judged", async () => {
    const text = await hoverAt("fuse‸Panel({ name", refused);
    expect(text).toContain("**Not judged**, because a value of the network is invalid");
    expect(text).toContain("- house bank\\, capacityAh");
  });

  test("a sound circuit of it is judged alone, and says so", async () => {
    const text = await hoverAt('name: "hea‸ter"', refused);
    expect(text).toContain("Judged alone, by its stated load");
    expect(text).toContain("**heater**: At least 15 A at 12 V on 10 AWG");
    expect(text).not.toContain("How this was worked out");
    expect(text).not.toContain("| Scenario |");
  });

  test("names cannot break a table or inject anything", async () => {
    const text = await hoverAt('scen‸ario({ name: "cooking"', {
      '"house bank"': '"[x](command:evil) | <img src=x>"',
    });
    expect(text).toContain("\\[x\\]\\(command\\:evil\\) \\| \\<img src\\=x\\>");
    expect(text).not.toContain("](command");
  });
});

test("one value that makes several parts shows them all, up to a point", async () => {
  const plan = `import { busBar } from "loomwright";
for (const name of ["a", "b", "c", "d"]) bus‸Bar({ name, ratedA: 100 });`;
  const { view, uri, position } = await planUnderCursor(plan);
  const text = JSON.stringify(hover(view, uri, position)?.contents);
  expect(text).toContain("**a**: bus bar");
  expect(text).not.toContain("**d**");
  expect(text).toContain("1 other part with this value");
});

test("the working of a part has a page too: how the network was solved", async () => {
  const { view, uri, position } = await planUnderCursor(changed("bat‸tery({\n", {}));
  const answer = working(view, uri, position);
  expect(answer?.circuit).toBe("house bank");
  expect(answer?.markdown).toContain("2 of 2 scenarios were solved");
});
