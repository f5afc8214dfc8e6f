import { describe, expect, test } from "vitest";
import { addedToShortA } from "../../library/analysis/network/faults/fault-network.ts";
import type { SolvedScenario } from "../../library/analysis/network-result.ts";
import { drawDiagram } from "../../library/documents/diagram/draw-diagram.ts";
import type { View } from "../../library/documents/diagram/drawing.ts";
import { layOut } from "../../library/documents/diagram/lay-out.ts";
import { symbols } from "../../library/documents/diagram/symbols/symbols.ts";
import { wiringSchematic } from "../../library/documents/diagram/wiring-schematic.ts";
import { measuredIn } from "../../library/documents/difference/measured.ts";
import { planDifference } from "../../library/documents/difference/plan-difference.ts";
import { subjectsOf } from "../../library/documents/difference/subject.ts";
import { ratingsTable } from "../../library/documents/report/ratings.ts";
import { createSourceList } from "../../library/documents/report/sources.ts";
import { benchDocuments } from "../../library/documents/schedules/bench-documents.ts";
import { voltagesToExpect } from "../../library/documents/schedules/expected-voltages.ts";
import { numberWires } from "../../library/documents/schedules/wire-numbers.ts";
import { readWireNumbers } from "../../library/documents/schedules/wire-numbers-file.ts";
import { wiresOf } from "../../library/documents/schedules/wires.ts";
import { type Judgement, judge } from "../../library/judge.ts";
import type { Part } from "../../library/model/network.ts";
import type { PartRole, PortTerminals } from "../../library/model/parts/define-part.ts";
import { descriptorOfWord, type PartWord } from "../../library/model/parts/index.ts";
import { type PlanRecord, type Word, words } from "../../library/model/record.ts";
import { sampleParts } from "../../library/model/sample-parts.tester.ts";
import { isPartWord } from "../../library/model/terminals.ts";
import { wordProperties } from "../../library/model/word-properties.ts";

/*
 * Every kind of part, one after the other, in a small network that its descriptor determines. A kind
 * that is new is tested here as soon as its word exists, and fails until analysis, drawing and lists know it.
 */

const partWords = words.filter(isPartWord);
const withRole = (...roles: readonly PartRole[]) =>
  partWords.filter((word) => roles.includes(descriptorOfWord(word).role));

/** A name without the word of its kind, which a list could have by chance. */
const name = "tested one";

describe.each(withRole("passes current on", "metal"))("%s passes current on", (word) => {
  const [one, other = one] = terminalNames(word) as [string, string?];
  const isOfReturn = Object.values(descriptorOfWord(word).terminals)[0]?.side === "negative";
  const lampSide = isOfReturn ? "negative" : "positive";
  /** From the bank through the part and a lamp, and back; a part of the return side comes behind the lamp. */
  const carrying = (input = ratedInput(word)) => {
    const plan = new Plan();
    const bank = plan.add("battery", { chemistry: "LiFePO4", capacityAh: 200, nominalV: 25.6, name: "bank" });
    const tested = plan.add(word, { ...input, name });
    const lamp = plan.add("load", { currentA: 20, name: "lamp" });
    plan.join(bank, isOfReturn ? "negative" : "positive", tested, one);
    plan.join(tested, other, lamp, lampSide);
    plan.join(bank, isOfReturn ? "positive" : "negative", lamp, isOfReturn ? "positive" : "negative");
    plan.add("scenario", { name: "lamp on" });
    return plan.judged();
  };

  test("20 A that enter it leave it, and are the current through it", () => {
    const judged = carrying();
    const { conductorA, partA } = solved(judged);
    expect(conductorA.map(Math.abs)).toEqual([20, 20, 20].map((amperes) => expect.closeTo(amperes, 6)));
    expect(Math.abs(partA[testedIn(judged).index]!)).toBeCloseTo(20, 6);
    expect(unconnectedIn(judged)).toEqual([]);
  });

  test("the nominal voltage of the bank reaches past it", () => {
    const lamp = carrying().network!.network.parts.find((part) => part.kind === "load")!;
    // Its label is that of eight cells of LiFePO4, which make a system of 24 V.
    expect(lamp).toMatchObject({ systemV: 24 });
  });

  test("it is named where no source feeds what is joined to it", () => {
    const plan = new Plan();
    const tested = plan.add(word, { ...ratedInput(word), name });
    const lamp = plan.add("load", { currentA: 20, name: "lamp" });
    plan.join(tested, other, lamp, lampSide);
    // Without any source, the positive side is missing; the return then does not matter.
    expect(unconnectedIn(plan.judged())).toContain(isOfReturn ? "lamp" : name);
  });

  test("a side that is joined to nothing is reported if both must be joined", () => {
    const plan = new Plan();
    const bank = plan.add("battery", { chemistry: "AGM", capacityAh: 100 });
    plan.join(bank, lampSide, plan.add(word, { ...ratedInput(word), name }), one);
    expect(unconnectedIn(plan.judged()).includes(name)).toBe(descriptorOfWord(word).inSeries === true);
  });

  test("its current is held against its rating, in the table of ratings and in the difference", () => {
    const judged = carrying();
    // A device is rated as a fuse or breaker is.
    const { ratingA, ratedA = ratingA } = ratedInput(word);
    const about20A = expect.objectContaining({ value: expect.closeTo(20, 6) });
    const rating = expect.objectContaining({ value: ratedA });
    // A kind without a property for a rating, the metal of a hull, is in no table of ratings.
    expect(ratingRows(judged)).toEqual(
      ratedA === undefined ? [] : [expect.arrayContaining([about20A, rating])],
    );
    const subject = subjectsOf(judged).find((one) => one.name === name)!;
    expect(measuredIn(judged)(subject).slice(0, 1)).toMatchObject([
      {
        what: "currentA",
        value: expect.closeTo(20, 6),
        limit: ratedA === undefined ? undefined : { value: ratedA },
      },
    ]);
  });

  const rating = ["ratingA", "ratedA"].find((one) => ratedInput(word)[one] !== undefined);
  if (rating !== undefined)
    test("a current above its rating is reported at the rating", () => {
      const { findings } = carrying({ ...ratedInput(word), [rating!]: 15 });
      const there = findings.filter(({ at }) => "record" in at && at.path.includes(rating!));
      expect(there.map(({ subject }) => subject)).toContain(name);
    });

  listedEverywhere(word, carrying);
});

describe.each(withRole("source"))("%s feeds", (word) => {
  const { ports, chargesWith } = descriptorOfWord(word);
  const [port] = ports as readonly [PortTerminals];
  const feeding = (input = ratedInput(word), there: object = everythingRuns) => {
    const plan = new Plan();
    const tested = plan.add(word, { ...input, name });
    const heater = plan.add("load", { resistanceOhm: 2, name: "heater" });
    plan.join(tested, port.positive, heater, "positive");
    plan.join(heater, "negative", tested, port.negative);
    plan.add("scenario", { name: "runs", ...there });
    return plan.judged();
  };

  test("a load, and only while what drives it is there", () => {
    const judged = feeding();
    const fedA = solved(judged).partA[testedIn(judged).index]!;
    expect(fedA).toBeGreaterThan(1);
    expect(solved(judged).conductorA.map(Math.abs)).toEqual(
      [fedA, fedA].map((amperes) => expect.closeTo(amperes, 6)),
    );
    const alone = feeding(ratedInput(word), {});
    expect(Math.abs(solved(alone).partA[testedIn(alone).index]!) > 1).toBe(chargesWith === undefined);
    expect(unconnectedIn(judged)).toEqual([]);
  });

  test("a short: from a battery by its own resistance, else with a current that is known", () => {
    expect(addedToShortA(testedIn(feeding())) !== undefined).toBe(chargesWith !== undefined);
  });

  measuredAtItsPoles(word, feeding);
  listedEverywhere(word, feeding);
});

describe.each(withRole("consumer"))("%s draws", (word) => {
  const [port] = descriptorOfWord(word).ports as readonly [PortTerminals];
  const drawing = (input = ratedInput(word)) => {
    const plan = new Plan();
    const bank = plan.add("battery", { chemistry: "LiFePO4", capacityAh: 200, name: "bank" });
    const tested = plan.add(word, { ...input, name });
    plan.join(bank, "positive", tested, port.positive);
    plan.join(tested, port.negative, bank, "negative");
    plan.add("scenario", { name: "on" });
    return plan.judged();
  };

  test("from the bank, and its way from there is looked at", () => {
    const judged = drawing();
    const { index } = testedIn(judged);
    const drawnA = -solved(judged).partA[index]!;
    if (drawsOnlyAtStart.has(word)) expect(drawnA).toBeCloseTo(0, 9);
    else expect(drawnA).toBeGreaterThan(1);
    expect(solved(judged).conductorA[0]!).toBeCloseTo(-solved(judged).partA[index]!, 6);
    expect(judged.network!.result.supplyPaths.map(({ part }) => part)).toContain(index);
    expect(unconnectedIn(judged)).toEqual([]);
  });

  measuredAtItsPoles(word, drawing);
  listedEverywhere(word, drawing);
});

describe.each(withRole("converter"))("%s converts", (word) => {
  const { ports, chargesWith } = descriptorOfWord(word);
  const [draws, feeds] = ports as readonly [PortTerminals, PortTerminals];
  const converting = (input = ratedInput(word)) => {
    const plan = new Plan();
    const supply =
      chargesWith === "sun"
        ? plan.add("solarArray", sampleParts.solarArray[0])
        : plan.add("battery", { chemistry: "AGM", capacityAh: 100 });
    const tested = plan.add(word, { ...input, name });
    const bank = plan.add("battery", { chemistry: "LiFePO4", capacityAh: 200, name: "bank" });
    plan.join(supply, "positive", tested, draws.positive);
    plan.join(tested, draws.negative, supply, "negative");
    plan.join(tested, feeds.positive, bank, "positive");
    plan.join(bank, "negative", tested, feeds.negative);
    plan.add("scenario", { name: "charges", ...everythingRuns });
    return plan.judged();
  };

  test("it draws at its input and feeds at its output", () => {
    const judged = converting();
    const { index } = testedIn(judged);
    const { partA, inputA, conductorA } = solved(judged);
    expect([draws.does, feeds.does]).toEqual(["draws", "feeds"]);
    expect(inputA[index]!).toBeGreaterThan(1);
    expect(partA[index]!).toBeGreaterThan(1);
    expect(conductorA[0]!).toBeCloseTo(inputA[index]!, 6);
    expect(conductorA[2]!).toBeCloseTo(partA[index]!, 6);
    expect(addedToShortA(testedIn(judged))).toBeGreaterThan(0);
    expect(unconnectedIn(judged)).toEqual([]);
  });

  measuredAtItsPoles(word, converting);
  listedEverywhere(word, converting);
});

type Given = Readonly<Record<string, unknown>>;

/** The lists that name every kind, independent of its role. */
function listedEverywhere(word: PartWord, planWith: (input?: Given) => Judgement): void {
  test("it is in the drawing with all that lands on it, and its symbol in the legend", async () => {
    const judged = planWith();
    const { parts, lines } = wiringSchematic(judged, 0);
    const drawn = parts.findIndex((part) => part.name === name);
    const { network } = judged.network!;
    const landing = network.conductors.filter(({ from, to }) =>
      [from, to].some((terminal) => network.terminals[terminal]!.part === testedIn(judged).index),
    );
    expect(lines.filter(({ from, to }) => from.part === drawn || to.part === drawn)).toHaveLength(
      landing.length,
    );
    const svg = await svgOf(judged, "wiring");
    expect(svg).toContain(name);
    expect(svg).toContain(symbols[parts[drawn]!.symbol].legend);
    // The view with one line has no return side, and says what it leaves out.
    expect(await svgOf(judged, "one-line")).toContain(name);
  });

  test("it is in the checks before first power", () => {
    const judged = planWith();
    const tables = benchDocuments(judged, numberWires(wiresOf(judged), readWireNumbers(undefined)));
    const checks = tables.find(({ id }) => id === "first-power-conductors")!;
    expect(JSON.stringify(checks.rows)).toContain(name);
  });

  test.each(figuresOf(ratedInput(word)))("the difference names it when its %s changes", (figure, value) => {
    const [before, after] = [planWith(), planWith({ ...ratedInput(word), [figure]: value + 1 })];
    const changed = planDifference(before, after).changed.filter(({ subject }) => subject.name === name);
    expect(changed).toHaveLength(1);
    expect(changed[0]!.properties.length).toBeGreaterThan(0);
  });
}

function measuredAtItsPoles(word: PartWord, planWith: () => Judgement): void {
  test("a voltage is expected at each pair of its poles", () => {
    const expected = voltagesToExpect(planWith()).rows.filter(({ at }) => at.includes(name));
    expect(expected).toHaveLength(descriptorOfWord(word).ports.length);
    for (const { expectedV, currentA } of expected) {
      expect(expectedV).toBeGreaterThan(5);
      if (!drawsOnlyAtStart.has(word)) expect(currentA).toBeGreaterThan(1);
    }
  });
}

/** Between two starts no current flows in them. */
const drawsOnlyAtStart: ReadonlySet<PartWord> = new Set(["starterMotor"]);

const everythingRuns = { engine: true, shore: true, sunPercent: 100 };

/** The last sample: with a rating, where the word has one. */
function ratedInput(word: PartWord): Given {
  const input: Given = { ...sampleParts[word].at(-1) };
  if (wordProperties[word].properties.has("ratedA")) expect(input).toHaveProperty("ratedA");
  return input;
}

function figuresOf(input: Given): [string, number][] {
  return Object.entries(input).filter((entry): entry is [string, number] => typeof entry[1] === "number");
}

function terminalNames(word: PartWord): readonly string[] {
  const own = Object.keys(descriptorOfWord(word).terminals);
  return own.length > 0 ? own : (ratedInput(word).terminals as readonly string[]);
}

function testedIn({ network }: Judgement): Part {
  const part = network?.network.parts.find((one) => one.name === name);
  if (!part) throw new Error("the network was not read");
  return part;
}

function solved({ network }: Judgement): SolvedScenario {
  const [result] = network!.result.scenarios;
  if (result?.state !== "solved") throw new Error("the scenario was not solved");
  return result;
}

/** The subjects of the rule about parts without a source. */
function unconnectedIn({ findings }: Judgement): string[] {
  return findings.flatMap(({ rule, subject }) => (rule === "network/unconnected" ? [subject] : []));
}

async function svgOf(judgement: Judgement, view: View): Promise<string> {
  const outcome = await drawDiagram(judgement, { view, medium: "paper", scenario: 0 }, layOut);
  return outcome.drawn ? outcome.drawing.svg : outcome.why;
}

function ratingRows(judgement: Judgement) {
  const context = { judgement, numbered: [], findings: [], drawings: [], schedules: [], notices: [] };
  const { rows } = ratingsTable(judgement.network!, {
    ...context,
    madeBy: "",
    edition: "inspector",
    file: "",
    sources: createSourceList(),
  });
  return rows.filter(([part]) => part === name);
}

/** The records that the words of a plan leave behind. */
class Plan {
  readonly #records: PlanRecord[] = [];

  /** Gives back the number of the call. */
  add(word: Word, input: object): number {
    return this.#records.push({ word, input, fallbackName: `${word} ${this.#records.length}` }) - 1;
  }

  join(from: number, fromTerminal: string, to: number, toTerminal: string): void {
    const end = (part: number, terminal: string) => ({
      kind: "terminal",
      part,
      of: this.#records[part]!.word,
      terminal,
    });
    this.add("cable", { from: end(from, fromTerminal), to: end(to, toTerminal), lengthM: 0.5, gauge: "4/0" });
  }

  judged(): Judgement {
    const judgement = judge(this.#records, []);
    expect(judgement.model.invalid).toEqual([]);
    return judgement;
  }
}
