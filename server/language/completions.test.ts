import { describe, expect, test } from "vitest";
import { TextDocument } from "vscode-languageserver-textdocument";
import { completions, typedValue } from "./completions.ts";
import { planUnderCursor } from "./feature.tester.ts";
import { sampleBuild } from "./sample-build.tester.ts";

describe("the value that is being typed", () => {
  test.each([
    ["circuit({ gauge: ‸ })", "gauge", ""],
    ["circuit({ gauge: ‸", "gauge", ""],
    ["circuit({ gauge: 1‸ })", "gauge", "1"],
    ["circuit({ gauge: 1‸2 })", "gauge", "12"],
    [`circuit({ gauge: "1/‸0" })`, "gauge", `"1/0"`],
    [`circuit({ gauge: "‸" })`, "gauge", `""`],
    [`circuit({ "mm2": 2.‸ })`, "mm2", "2."],
    ["circuit({ protect: ‸})", "protect", ""],
    ["circuit({ protect: { ratingA: ‸ } })", "ratingA", ""],
    ["circuit({ protectFarEnd: 4‸0 })", "protectFarEnd", "40"],
  ] as const)("%s", (marked, property, there) => {
    const offset = marked.indexOf("‸");
    const text = marked.replace("‸", "");
    const typed = typedValue(text, offset);
    expect(typed?.property).toBe(property);
    expect(text.slice(typed?.start, typed?.end)).toBe(there);
  });

  test.each([
    "circuit({ load: ‸ })",
    "circuit({ gauge‸: 4 })",
    "circuit({ gauge: 4, ‸ })",
    "const x = ‸4",
    "circuit({ protect: { ‸ } })",
    "",
  ])("none in %j", (marked) => {
    expect(typedValue(marked.replace("‸", ""), Math.max(0, marked.indexOf("‸")))).toBeUndefined();
  });
});

/** The completions at `‸` in a text that may be half typed, after another that was whole. */
async function offered(typed: string, whole = "circuit({ load: 1, oneWayFt: 1, gauge: 4, protect: 5 });") {
  const { uri, checker, text, position } = await planUnderCursor(whole, { later: typed });
  const document = TextDocument.create(uri, "typescript", 2, text);
  const value = typedValue(text, document.offsetAt(position));
  if (!value) return [];
  return completions({
    checker,
    root: uri,
    uri,
    text,
    typed: value,
    positionAt: (offset) => document.positionAt(offset),
  });
}

describe("completions", () => {
  test("before anything flows, no size is praised", async () => {
    const whole = `import { battery, cable, fusePanel } from "loomwright";
const bank = battery({ chemistry: "AGM", capacityAh: 60 });
const panel = fusePanel({ positions: 4 });
cable({ from: panel.negative, to: bank.negative, lengthFt: 4, gauge: 8 });`;
    const items = await offered(whole.replace("gauge: 8", "gauge: ‸"), whole);
    expect(items.length).toBeGreaterThan(10);
    for (const { labelDetails, detail } of items) {
      expect(labelDetails?.description).not.toContain("limits met");
      expect(detail).not.toContain("within");
    }
    expect(items[0]?.labelDetails?.description).toBe("nothing flows yet");
  });

  test("a size whose device is reached over a run of unknown length is not said to meet the limits", async () => {
    const whole = `import { battery, busBar, cable, circuit } from "loomwright";
const bank = battery({ chemistry: "AGM", capacityAh: 200, internalMilliohm: 5 });
const bus = busBar({ ratedA: 100 });
cable({ name: "feed", from: bank.positive, to: bus.stud, gauge: 2, protect: 50, LENGTH });
circuit({ name: "lamp", from: bus.stud, returnTo: bank.negative, load: 5, oneWayFt: 3, gauge: 8, protect: 10 });`;
    const shortly = async (length: string) => {
      const text = whole.replace("LENGTH", length);
      const items = await offered(text.replace("gauge: 8", "gauge: ‸"), text);
      return items.map(({ labelDetails }) => labelDetails?.description?.split(":")[0]);
    };
    expect(await shortly("lengthFt: 3")).toContain("limits met");
    const without = await shortly("");
    expect(without).toContain("not judged");
    expect(without).not.toContain("limits met");
  });

  test("the size on a spool is no size of a circuit, and there is nothing to tell of it", async () => {
    const whole =
      "build({ spools: [{ gauge: 10, lengthFt: 100 }] });\ncircuit({ load: 1, oneWayFt: 1, gauge: 4 });";
    expect(await offered(whole.replace("gauge: 10", "gauge: ‸"), whole)).toEqual([]);
  });

  test("sizes: the thinnest within all limits first, then thicker ones, then those that are not", async () => {
    const items = await offered(
      "circuit({ load: 40, oneWayFt: 15, gauge: ‸, protect: 50, insulationC: 75 });",
    );
    const inOrder = items.toSorted((one, other) => one.sortText!.localeCompare(other.sortText!));
    const thicker = ["6", "4", "2", "1", '"1/0"', '"2/0"', '"3/0"', '"4/0"'];
    expect(inOrder.map(({ label }) => label)).toEqual(["8", ...thicker, "10", "12", "14", "16", "18"]);
    expect(items[0]?.preselect).toBe(true);
    expect(items[0]?.detail).toBe("within all limits checked");
    expect(items[0]?.labelDetails?.description).toMatch(/^limits met: drop [\d.]+ %, [\d.]+ A spare$/);
    const tooThin = items.find(({ label }) => label === "14");
    expect(tooThin?.detail).toMatch(/^Conductor ampacity exceeded/);
    expect(JSON.stringify(tooThin?.documentation)).toContain("Drop at least ");
    expect(tooThin?.labelDetails?.description).toMatch(/^error: drop ≥ [\d.]+ %, 20 A too much$/);
    expect(items.filter(({ preselect }) => preselect)).toHaveLength(1);
  });

  test("a size that the terminals do not take is no size within all limits", async () => {
    const items = await offered(
      "circuit({ load: 40, oneWayFt: 15, gauge: ‸, protect: 50, insulationC: 75, largestGauge: 6 });",
    );
    const within = items.filter(({ detail }) => detail === "within all limits checked");
    expect(within.map(({ label }) => label)).toEqual(["8", "6"]);
    const tooThick = items.find(({ label }) => label === "4");
    expect(tooThick?.detail).toMatch(/^Conductor too thick for its terminal/);
  });

  test.each([
    ["nothing typed yet, and nothing behind it", "circuit({ load: 40, oneWayFt: 15, gauge: ‸"],
    ["nothing typed yet, closed", "circuit({ load: 40, oneWayFt: 15, gauge: ‸});"],
    ["half a number", "circuit({ load: 40, oneWayFt: 15, gauge: 1‸, protect: 50 });"],
    ["half a text", 'circuit({ load: 40, oneWayFt: 15, gauge: "1‸", protect: 50 });'],
    [
      "a new circuit above another",
      "circuit({ load: 40, oneWayFt: 15, gauge: ‸\ncircuit({ load: 1, oneWayFt: 1, gauge: 4 });",
    ],
    ["the value is whole", "circuit({ load: 40, oneWayFt: 15, gauge: 4‸, protect: 50 });"],
  ])("offered while %s", async (_what, typed) => {
    const items = await offered(typed);
    expect(items.map(({ label }) => label)).toContain('"1/0"');
    expect(items.map(({ label }) => label)).toContain("4");
  });

  test("what stands there is replaced, quotes and all", async () => {
    const [item] = await offered('circuit({ load: 40, oneWayFt: 15, gauge: "1‸", protect: 50 });');
    const edit = item?.textEdit;
    expect(edit && "range" in edit && edit.range.end.character - edit.range.start.character).toBe(3);
  });

  test("the build's voltage counts, wherever it is written", async () => {
    const at12 = await offered("circuit({ load: 40, oneWayFt: 15, gauge: ‸, protect: 50 });");
    const at24 = await offered(
      "circuit({ load: 40, oneWayFt: 15, gauge: ‸, protect: 50 });\nbuild({ voltage: 24 });",
    );
    const drop = (items: typeof at12) =>
      Number(
        items.find(({ label }) => label === "4")?.labelDetails?.description?.match(/drop ([\d.]+)/)?.[1],
      );
    expect(drop(at24)).toBeCloseTo(drop(at12) / 2, 1);
  });

  test("metric sizes", async () => {
    const items = await offered("circuit({ load: 10, oneWayM: 4, mm2: ‸, protect: 15 });");
    expect(items.map(({ label }) => label)).toContain("2.5");
    expect(items.map(({ label }) => label)).not.toContain("12");
  });

  test.each([
    ["protect", "circuit({ load: 40, oneWayFt: 15, gauge: 4, protect: ‸ });"],
    ["ratingA", "circuit({ load: 40, oneWayFt: 15, gauge: 4, protect: { ratingA: ‸ } });"],
    ["ratingA, not closed", "circuit({ load: 40, oneWayFt: 15, gauge: 4, protect: { ratingA: ‸"],
  ])("ratings for %s: the smallest that reaches 125 %% of the load first", async (_what, typed) => {
    const items = await offered(typed);
    expect(items[0]?.label).toBe("50");
    expect(items[0]?.detail).toBe("within all limits checked");
    expect(JSON.stringify(items[0]?.documentation)).toContain("A rating of 50 A is 125 % of the load.");
    expect(items.find(({ label }) => label === "30")?.detail).not.toContain("within all limits");
  });

  test.each([
    "circuit({ load: 137.5, oneWayFt: 15, gauge: ‸, protect: 200 });",
    "circuit({ load: 137.5, oneWayM: 15, mm2: ‸, protect: 200 });",
    "circuit({ load: 137.5, oneWayFt: 15, gauge: 4, protect: ‸ });",
  ])("what the list shows fits into it: %s", async (typed) => {
    for (const { labelDetails, label } of await offered(typed)) {
      // The editor's list opens with room for 39 characters beside a short value.
      expect(labelDetails?.description?.length, label).toBeLessThanOrEqual(39);
    }
  });

  test("ratings of the stated family only", async () => {
    const items = await offered(
      'circuit({ load: 10, oneWayFt: 5, gauge: 10, protect: { family: "ISO 8820-3 Type C", ratingA: ‸ } });',
    );
    const ratings = items.map(({ label }) => Number(label));
    expect(Math.max(...ratings)).toBeLessThanOrEqual(40);
    expect(ratings).toContain(15);
  });

  test.each([
    ["in a comment", "// gauge: ‸\n"],
    ["in a text", 'const note = "gauge: ‸";'],
    ["in another object", "const other = { gauge: ‸4 };"],
    ["where another value is refused", "circuit({ load: 40, oneWayFt: 15, ambientC: 999, gauge: ‸ });"],
    ["where the circuit does not say enough", "circuit({ gauge: ‸ });"],
    ["where the file is broken elsewhere", "circuit({ load: 40, oneWayFt: 15, gauge: ‸ });\nconst = ;"],
  ])("none %s", async (_where, typed) => {
    expect(await offered(typed)).toEqual([]);
  });
});

describe("completions in a network", () => {
  test("sizes of a cable, each with the current of the network and what would be spare", async () => {
    const items = await offered(
      sampleBuild.replace("to: panel.feed, lengthFt: 4, gauge: 4", "to: panel.feed, lengthFt: 4, gauge: ‸"),
      sampleBuild,
    );
    const of4 = items.find(({ label }) => label === "4");
    // 33 CFR 183.425, Table 5: 4 AWG, 105 °C: 160 A.
    expect(of4?.labelDetails?.description).toBe("limits met: 15 A, 145 A spare");
    expect(of4?.detail).toBe("within all limits checked");
  });

  /** A feeder whose size decides over the voltage at a lamp; a fuse that each size must be thick enough for. */
  const feeder = (gauge: string) => `import { battery, build, cable, circuit, fusePanel } from "loomwright";
build({ insulationC: 105 });
const bank = battery({ chemistry: "AGM", capacityAh: 200, internalMilliohm: 4 });
const panel = fusePanel({ positions: 4 });
const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, distanceIn: 6 };
cable({ name: "feed", from: bank.positive, to: panel.feed, lengthFt: 20, gauge: ${gauge}, protect: { ...classT, ratingA: 40 } });
cable({ name: "back", from: panel.negative, to: bank.negative, lengthFt: 20, gauge: 2 });
circuit({ name: "lamp", from: panel.branch, load: 3, oneWayFt: 12, gauge: 12, protect: 10, critical: true });
circuit({ name: "oven", from: panel.branch, load: 20, oneWayFt: 4, gauge: 10, protect: 25 });
circuit({ name: "always too thin", from: panel.branch, load: 9, oneWayFt: 90, gauge: 16, protect: 10 });`;

  test("a size meets the limits if the check finds nothing that another size would avoid", async () => {
    const whole = feeder("6");
    const items = await offered(feeder("‸"), whole);
    const { uri, checker } = await planUnderCursor(whole);
    const serious = new Map<string, readonly string[]>();
    for (const { label } of items) {
      const outcome = await checker.checkAs(uri, new Map([[uri, feeder(label)]]));
      if (outcome.state !== "checked") throw new Error(`${label} was not checked`);
      const open = outcome.findings.filter(({ finding: { severity } }) => /error|warning/.test(severity));
      serious.set(
        label,
        open.map(({ finding, subjects }) => `${finding.rule} at ${subjects}`),
      );
    }
    const everywhere = [...serious.values()].reduce((some, one) =>
      some.filter((found) => one.includes(found)),
    );
    expect(everywhere).toContain("conductor/voltage-drop at always too thin");
    const met = items.filter(({ labelDetails }) => labelDetails?.description?.startsWith("limits met"));
    const others = items.filter((item) => !met.includes(item));
    for (const { label } of met) expect(serious.get(label), label).toEqual(everywhere);
    for (const { label, detail } of others) {
      expect(serious.get(label)?.length, label).toBeGreaterThan(everywhere.length);
      expect(detail).not.toContain("within");
    }
    // Thinner ones carry the current behind the fuse, and lose too much for the lamp.
    expect(met.map(({ label }) => label)[0]).toBe("2");
    expect(items.find(({ label }) => label === "8")?.detail).toContain("Excessive voltage drop");
  });

  test("of two leads side by side the thicker one takes more: each size comes with its own current", async () => {
    const twoLeads = (gauge: string) => `import { battery, build, busBar, cable, circuit } from "loomwright";
build({ insulationC: 105 });
const bank = battery({ chemistry: "AGM", capacityAh: 200, internalMilliohm: 5 });
const bus = busBar({ side: "positive" });
cable({ from: bank.positive, to: bus.stud, lengthFt: 5, gauge: 2, protect: 100 });
cable({ from: bank.positive, to: bus.stud, lengthFt: 5, gauge: ${gauge}, protect: 100 });
circuit({ from: bus.stud, returnTo: bank.negative, load: 60, oneWayFt: 5, gauge: 2, protect: 80 });`;
    const items = await offered(twoLeads("‸"), twoLeads("2"));
    const flowOf = (size: string) =>
      Number(
        items.find(({ label }) => label === size)?.labelDetails?.description?.match(/: ([\d.]+) A/)?.[1],
      );
    expect(flowOf("2")).toBeCloseTo(30, 6);
    // Three sizes thinner has half the area, and so takes a third instead of a half: 60 A / (1 + 2.0).
    expect(flowOf("6")).toBeLessThan(20);
    expect(flowOf('"2/0"')).toBeGreaterThan(38);
  });

  test("ratings for a cable, beside the current that flows in it", async () => {
    const items = await offered(
      sampleBuild.replace("lengthFt: 4, gauge: 4 }", "lengthFt: 4, gauge: 4, protect: ‸ }"),
      sampleBuild,
    );
    expect(items[0]?.label).toBe("20");
    expect(JSON.stringify(items[0]?.documentation)).toMatch(/A rating of 20 A is 133 % of the load/);
  });

  test.each(["closed", "not closed"])("ratings of a fuse that is a part, %s", async (which) => {
    const plan = (rating: string) => `import { battery, build, circuit, fuseHolder } from "loomwright";
build({ insulationC: 75 });
const bank = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 10 });
const main = fuseHolder({ family: "UL 248-15 Class T", interruptingA: 20_000, on: bank.positive, ratingA: ${rating} });
circuit({ name: "pump", from: main.load, returnTo: bank.negative, load: 20, oneWayFt: 6, gauge: 10 });`;
    const typed = which === "closed" ? plan("‸") : plan("‸").replace("‸ });", "‸");
    const items = await offered(typed, plan("30"));
    const of = (rating: string) => items.find(({ label }) => label === rating);
    // 125 % of 20 A; 10 AWG, 75 °C: 40 A.
    expect(items[0]?.label).toBe("25");
    expect(items[0]?.labelDetails?.description).toBe("limits met: 125 % of the load");
    expect(JSON.stringify(items[0]?.documentation)).toContain("A rating of 25 A is 125 % of the load.");
    expect(JSON.stringify(items[0]?.documentation)).toContain(
      "The thinnest conductor that ends at it may carry 40 A.",
    );
    expect(of("40")?.detail).toBe("within all limits checked");
    expect(of("45")?.detail).toBe("Unprotected path from a source");
    expect(of("15")?.detail).toContain("Protection rated below the load");
  });

  test("sizes of a wired circuit have its own drop", async () => {
    const items = await offered(sampleBuild.replace("gauge: 10", "gauge: ‸"), sampleBuild);
    expect(items.find(({ label }) => label === "10")?.labelDetails?.description).toMatch(
      /^limits met: drop 3\.2\d %, 45 A spare$/,
    );
  });
});
