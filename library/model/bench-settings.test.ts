import { beforeEach, describe, expect, it } from "vitest";
import { type BuildInput, battery, build, busBar, circuit, fusePanel, inverter } from "../plan/index.ts";
import { continueNumberingAt } from "../plan/numbering.ts";
import { defaultBench } from "./bench-settings.ts";
import { light, loosely, modelOf, networkOf } from "./sample-plan.tester.ts";

beforeEach(() => continueNumberingAt(0));

const benchOf = (settings: BuildInput) => modelOf(build(settings)).build.bench;

describe("what a build says for the work at the bench", () => {
  it("is what is usual where it says nothing", () => {
    expect(benchOf({})).toEqual(defaultBench);
    // The defaults that the manual promises.
    expect(defaultBench).toEqual({
      slackPercent: 10,
      endSlackM: 0.1,
      spareFuses: undefined,
      positiveColour: "red",
      negativeColour: "black",
      currency: "",
      spools: [],
      wireByLength: false,
    });
  });

  it("is taken over, lengths in metres", () => {
    const spools = [
      { gauge: 10, lengthFt: 100, colour: "red", price: 58 },
      { mm2: 2.5, lengthM: 50 },
    ] as const;
    expect(
      benchOf({
        slackPercent: 0,
        endSlackMm: 0,
        spareFuses: 0,
        positiveColour: " orange\u202e ",
        negativeColour: "yellow",
        currency: "EUR",
        spools,
        wireByLength: true,
      }),
    ).toEqual({
      slackPercent: 0,
      endSlackM: 0,
      spareFuses: 0,
      positiveColour: "orange",
      negativeColour: "yellow",
      currency: "EUR",
      spools: [
        { size: { awg: 10 }, lengthM: 30.48, colour: "red", price: 58 },
        { size: { mm2: 2.5 }, lengthM: 50 },
      ],
      wireByLength: true,
    });
    continueNumberingAt(0);
    expect(benchOf({ endSlackIn: 6 }).endSlackM).toBeCloseTo(0.1524, 12);
  });

  it("takes what is usual for what was refused", () => {
    const { build: settings, invalid } = modelOf(
      build(loosely({ slackPercent: -1, endSlackMm: 50, endSlackIn: 2, positiveColour: "", spools: "none" })),
    );
    expect(settings.bench).toEqual(defaultBench);
    expect(invalid.map(({ path, wrong }) => `${path.join(".")} ${wrong}`)).toEqual([
      "slackPercent is negative",
      "positiveColour is empty",
      "spools is not a list",
      "endSlackIn cannot be given together with endSlackMm",
    ]);
  });
});

describe("what parts and runs say", () => {
  it("stands at their terminals, at those of a panel's branches on their own", () => {
    const panel = fusePanel({
      positions: 6,
      termination: "M6",
      torqueNm: 4,
      branchTermination: "#8",
      price: 60,
    });
    const bank = battery({ chemistry: "AGM", capacityAh: 100, termination: "M8", torqueNm: 9 });
    const { terminals, parts } = networkOf(panel, bank);
    expect(terminals).toMatchObject([
      { name: "feed", termination: "M6", torqueNm: 4 },
      { name: "branch", termination: "#8" },
      { name: "negative", termination: "#8" },
      { name: "positive", termination: "M8", torqueNm: 9 },
      { name: "negative", termination: "M8", torqueNm: 9 },
    ]);
    // A screw has another torque than a stud.
    expect(terminals.map(({ torqueNm }) => torqueNm)).toEqual([4, undefined, undefined, 9, 9]);
    expect(parts.map(({ price }) => price)).toEqual([60, undefined]);
  });

  it.each([
    [{ termination: "M6", torqueNm: 4 }, ["M6", 4], ["M6", 4]],
    [{ termination: "M6", torqueNm: 4, branchTorqueNm: 2 }, ["M6", 4], ["M6", 2]],
    [{ branchTermination: "#8", branchTorqueNm: 2 }, [undefined, undefined], ["#8", 2]],
    [{}, [undefined, undefined], [undefined, undefined]],
  ] as const)("of a panel: %j", (said, feed, branch) => {
    const { terminals } = networkOf(fusePanel({ positions: 6, ...said }));
    const told = terminals.map(({ termination, torqueNm }) => [termination, torqueNm]);
    expect(told).toEqual([feed, branch, branch]);
  });

  it("goes with a circuit, its load and its fuse", () => {
    const bank = battery({ chemistry: "AGM", capacityAh: 100 });
    const said = {
      colour: "orange",
      returnColour: "yellow",
      label: "READ\n1",
      termination: "screw clamp",
    } as const;
    const lamp = circuit({
      from: bank.positive,
      load: 2,
      ...light,
      ...said,
      protect: { ratingA: 10, price: 4.5 },
    });
    const { conductors, terminals } = networkOf(bank, lamp);
    const shown = { ...said, label: "READ 1", protection: { ratingA: 10, writtenAs: "object", price: 4.5 } };
    expect(conductors[0]?.run).toMatchObject(shown);
    expect(terminals.slice(2)).toMatchObject([
      { termination: "screw clamp" },
      { termination: "screw clamp" },
    ]);
    continueNumberingAt(0);
    expect(modelOf(circuit({ load: 2, ...light, ...said })).circuits[0]).toMatchObject({
      ...said,
      label: "READ 1",
    });
  });

  it("is for the part to say where a circuit ends at one", () => {
    const bank = battery({ chemistry: "AGM", capacityAh: 100 });
    const fed = inverter({ continuousW: 100, termination: "M6" });
    const supply = circuit({ from: bank.positive, to: fed, termination: "M8", ...light });
    const { network, invalid } = modelOf(bank, fed, supply);
    expect(invalid).toEqual([
      {
        record: 2,
        name: "circuit 2",
        path: ["termination"],
        given: '"M8"',
        wrong: "cannot be given together with to",
        allowed: "termination of the part where the circuit ends",
        serves: "lists",
      },
    ]);
    expect(network?.terminals.map(({ termination }) => termination)).toEqual([
      undefined,
      undefined,
      "M6",
      "M6",
    ]);
    expect(network?.conductors[0]?.run).not.toHaveProperty("termination");
  });
});

describe("what is wrong with it", () => {
  it.each<[string, object, boolean]>([
    ["a wrong colour", { colour: 5 }, true],
    ["a wrong price of a fuse", { protect: { ratingA: 10, price: "4" } }, true],
    ["a misspelt colour", { color: "red" }, true],
    ["a misspelt colour with what no colour can be", { colur: 5 }, false],
    ["a return that no colour can be", { return: { kind: "terminal" } }, false],
    ["a wrong rating beside a wrong price", { protect: { ratingA: -1, price: "4" } }, false],
  ])("%s of a circuit: the network is read with it: %j %s", (_, change, isRead) => {
    const bank = battery({ chemistry: "AGM", capacityAh: 100 });
    const lamp = circuit(loosely({ from: bank.positive, load: 2, ...light, ...change }));
    const { network, withoutCircuits, circuits, invalid } = modelOf(bank, lamp);
    expect(network?.conductors.length).toBe(isRead ? 2 : 0);
    expect(withoutCircuits.length).toBe(isRead ? 0 : 1);
    expect(invalid.length).toBeGreaterThan(0);
    expect(invalid.some(({ leavesOutCircuit }) => leavesOutCircuit)).toBe(!isRead);
    expect(invalid.some(({ stopsNetwork }) => stopsNetwork)).toBe(false);
    if (isRead) expect(circuits).toMatchObject([{ partlyInvalid: false }]);
  });

  it("keeps nothing from being judged, wherever it stands", () => {
    const { network, invalid } = modelOf(
      build(loosely({ spareFuses: "two", spools: [5] })),
      battery(loosely({ chemistry: "AGM", capacityAh: 100, termination: "M7", torqueNm: 0, price: -1 })),
      fusePanel(loosely({ positions: 6, branchTermination: 8 })),
    );
    expect(network?.parts.length).toBe(2);
    expect(invalid.map(({ record, path }) => [record, path.join(".")])).toEqual([
      [0, "spareFuses"],
      [0, "spools.0"],
      [1, "termination"],
      [1, "torqueNm"],
      [1, "price"],
      [2, "branchTermination"],
    ]);
  });

  it("does not stand against the network where the build has another fault that does", () => {
    const { networkUnread, invalid } = modelOf(
      build(loosely({ voltage: 0, slackPercent: -1 })),
      busBar({ ratedA: 100 }),
    );
    expect(networkUnread).toBe(true);
    expect(invalid.map(({ path, stopsNetwork }) => [path[0], stopsNetwork])).toEqual([
      ["voltage", true],
      ["slackPercent", undefined],
    ]);
  });

  it("lets two builds disagree on it", () => {
    const { network } = modelOf(
      build({ spareFuses: 2, spools: [{ gauge: 4, lengthFt: 25 }] }),
      build({ spareFuses: 3, spools: [{ gauge: 4, lengthFt: 25 }] }),
      busBar({}),
    );
    expect(network?.parts.length).toBe(1);
  });
});
