import { describe, expect, test } from "vitest";
import type { SolvedScenario } from "../../analysis/network-result.ts";
import { judge } from "../../judge.ts";
import { runExample } from "../../rules/page.tester.ts";
import type { Table } from "../table.ts";
import { tableForPeople, tableForPrograms, textOf } from "../table-for-people.ts";
import { type BenchDocumentOptions, benchDocuments } from "./bench-documents.ts";
import { numberWires } from "./wire-numbers.ts";
import { readWireNumbers } from "./wire-numbers-file.ts";
import { wiresOf } from "./wires.ts";

/** A workshop van: each thing that a bench list must get right, once. The functions are given: no import. */
const van = `
  build({ name: "workshop van", voltage: 12, insulationC: 90, slackPercent: 10, endSlackMm: 50, spareFuses: 1, currency: "EUR",
    spools: [{ mm2: 2.5, lengthM: 10, colour: "red", price: 12 }, { mm2: 2.5, lengthM: 25, colour: "red", price: 26 }] });
  const house = battery({ name: "house bank", chemistry: "LiFePO4", capacityAh: 200, internalMilliohm: 2, termination: "M8", torqueNm: 9, source: "data sheet p. 3", price: 900 });
  const starter = battery({ name: "starter", chemistry: "AGM", capacityAh: 80, internalMilliohm: 5, termination: "M8" });
  const off = disconnect({ name: "main switch", ratedA: 300, termination: "M10", price: 45 });
  const panel = fusePanel({ name: "panel", positions: 4, ratedA: 100, branchRatedA: 30, largestGauge: 2, branchLargestMm2: 6, negativeBus: false, termination: "M5", branchTermination: "6.3 mm tab" });
  const body = chassis({ name: "van body", milliohm: 1 });
  const classT = { family: "UL 248-15 Class T", interruptingA: 20_000 };
  cable({ name: "bank to switch", from: house.positive, to: off.line, lengthM: 0.5, mm2: 35, parallel: 2, protect: { ...classT, ratingA: 200, distanceMm: 100, price: 18 } });
  cable({ name: "bank to body", from: house.negative, to: body.bond, lengthM: 0.8, mm2: 70, colour: "green" });
  cable({ name: "starter to body", from: starter.negative, to: body.bond, lengthM: 0.5, mm2: 35 });
  cable({ name: "link", from: off.load, to: starter.positive, lengthM: 4, mm2: 35,
    protect: { ...classT, ratingA: 100, distanceMm: 80 }, protectFarEnd: { ...classT, ratingA: 100, distanceMm: 80 } });
  cable({ name: "panel feed", from: off.load, to: panel.feed, lengthM: 1, mm2: 16, protect: { ratingA: 60, family: "circuit breaker", interruptingA: 5_000, distanceMm: 100 } });
  const fan = load({ name: "roof fan", currentA: 3, minimumV: 10.5, price: 60 });
  circuit({ name: "fan supply", from: panel.branch, returnTo: body.metal, to: fan, oneWayM: 3, mm2: 2.5, protect: { ratingA: 5, family: "ISO 8820-3 Type C", price: 0.4 } });
  circuit({ name: "work light", label: "LIGHT", from: panel.branch, returnTo: body.metal, loadW: 24, positiveM: 4, negativeM: 0.5, mm2: 2.5, colour: "blue", termination: "screw clamp", protect: { ratingA: 5, family: "ISO 8820-3 Type C", price: 0.4 } });
  const pump = motor({ name: "pump", runningA: 4, startingA: 12 });
  circuit({ name: "pump supply", from: panel.branch, returnTo: body.metal, to: pump, oneWayM: 2, mm2: 2.5, protect: 7.5 });
  scenario({ name: "working", chargePercent: 50, off: [pump] });
  scenario({ name: "washing", on: [pump] });
  scenario({ name: "the pump starts", starting: [pump] });
`;

const documents = tablesOf(van);

test("all of them, in the order of the bench, each with rows as long as its columns", () => {
  expect(documents.map(({ id }) => id)).toEqual([
    ...["wire-schedule", "cut-list", "spools", "parts-list", "fuse-map", "labels"],
    ...["first-power-conductors", "first-power-insulation", "first-power-protection", "first-power-voltages"],
  ]);
  for (const { columns, rows } of documents) {
    expect(new Set(columns.map(({ id }) => id)).size).toBe(columns.length);
    for (const row of rows) expect(row).toHaveLength(columns.length);
  }
});

describe("wire schedule", () => {
  const rows = rowsOf("wire-schedule", (row) => `${row.name} ${row.side}`);

  test("a cable: both ends, its side, colour, size, cut length, fittings and protection", () => {
    expect(rows["bank to switch positive"]).toEqual({
      ...{
        number: 1,
        name: "bank to switch",
        from: "house bank · positive",
        to: "main switch · line",
        side: "positive",
      },
      ...{ colour: "red", size: "2 × 35 mm²", lengthM: 0.5, cutLengthM: 0.65, insulation: "90 °C" },
      ...{ fittingFrom: "ring terminal, stud M8", fittingTo: "ring terminal, stud M10" },
      ...{ protectionFrom: "200 A UL 248-15 Class T", protectionTo: null, label: "bank to switch" },
    });
  });
  test("devices at both ends of a cable between two batteries", () => {
    expect(rows["link positive"]).toMatchObject({
      protectionFrom: "100 A UL 248-15 Class T",
      protectionTo: "100 A UL 248-15 Class T",
    });
  });
  test("a circuit to a part: both conductors end there, the return goes to the body and has no device", () => {
    expect(rows["fan supply positive"]).toMatchObject({ from: "panel · branch", to: "roof fan · positive" });
    expect(rows["fan supply return"]).toMatchObject({
      ...{ from: "roof fan · negative", to: "van body · metal", colour: "black" },
      ...{ protectionFrom: null, protectionTo: null, fittingTo: "usual: ring terminal, stud not stated" },
    });
  });
  test("the return over the body is cut to its own length", () => {
    expect(rows["work light positive"]).toMatchObject({
      lengthM: 4,
      cutLengthM: 4.5,
      colour: "blue",
      label: "LIGHT",
    });
    expect(rows["work light return"]).toMatchObject({ lengthM: 0.5, cutLengthM: 0.65, colour: "black" });
    expect(rows["work light positive"]).toMatchObject({
      fittingFrom: "receptacle, 6.3 mm",
      fittingTo: "ferrule",
    });
  });
  test("a conductor that only bonds and is green needs no word; one that is not gets one", () => {
    expect(rows["bank to body negative"]).toMatchObject({ colour: "green" });
    expect(tableOf("wire-schedule").notes.join(" ")).toContain("usually green or green with yellow stripe");
    const green = tablesOf(
      van.replace('name: "starter to body",', 'name: "starter to body", colour: "green",'),
    );
    expect(green[0]!.notes.join(" ")).not.toContain("green with yellow stripe");
  });
  test("insulation that nobody stated is not shown as stated", () => {
    const [schedule] = tablesOf(van.replace("insulationC: 90, ", ""));
    expect(recordsOf(schedule!)[0]).toMatchObject({ insulation: "not stated, 75 °C taken" });
    expect(schedule!.notes.join(" ")).toContain("75 °C");
  });
});

describe("cut list and spools", () => {
  test("parallel wires are pieces of their own; colours are kept apart", () => {
    const rows = rowsOf("cut-list", ({ size, colour }) => `${size} ${colour}`);
    expect(rows["35 mm² red"]).toMatchObject({ pieces: 3, wires: "1 (2 pieces), 4", longestM: 4.5 });
    expect(rows["35 mm² red"]!.lengthM).toBeCloseTo(0.65 * 2 + 4.5, 9);
    expect(Object.keys(rows)).toEqual([
      ...["2.5 mm² black", "2.5 mm² blue", "2.5 mm² red", "16 mm² red", "35 mm² black", "35 mm² red"],
      "70 mm² green",
    ]);
  });
  test("the builder's spools where there are any, usual lengths elsewhere, and it is said", () => {
    const rows = recordsOf(tableOf("spools"));
    expect(rows.filter(({ size, colour }) => size === "2.5 mm²" && colour === "red")).toEqual([
      expect.objectContaining({ spool: "10 m", cuts: "6: 3.40 m, 10: 2.30 m", price: 12 }),
    ]);
    expect(rows.find(({ colour }) => colour === "blue")).toMatchObject({ spool: "5 m", price: null });
    const notes = tableOf("spools").notes.join(" ");
    expect(notes).toContain("usual lengths are taken: 5, 10, 25, 50, 100 m; common practice, no source");
    expect(notes).toMatch(/Sum of the prices stated in the plan: 12\.00 EUR; \d+ of \d+ lines have none/);
  });
  test("a piece that is longer than every spool is said", () => {
    const long = tablesOf(van.replace("oneWayM: 3", "oneWayM: 30"));
    const rows = recordsOf(long.find(({ id }) => id === "spools")!);
    expect(rows.find(({ spool }) => String(spool).startsWith("longer"))).toMatchObject({
      ...{ size: "2.5 mm²", colour: "red", cuts: "6: 33.10 m", leftM: null },
    });
  });
});

describe("lengths are in the unit of the plan, whatever the sizes are", () => {
  const hut = (length: string, size: string) =>
    tablesOf(`
      build({ name: "hut", insulationC: 90, endSlackMm: 50 });
      circuit({ name: "lamp", load: 2, ${length}, ${size}, protect: 5 });`);
  const shown = (tables: readonly Table[], id: string) =>
    tableForPeople(tables.find((one) => one.id === id)!);

  // Torques are in N·m in any plan, and cross-sections in mm².
  const metric = /(?<!N·)\b(?:m|mm)\b(?!²)/;
  test("a torque and a cross-section are no lengths", () => {
    const texts = ["Torque at from, N·m", "2.5 mm²", "Planned, m", "3.40 m", "50 mm"];
    expect(texts.filter((text) => metric.test(text))).toEqual(["Planned, m", "3.40 m", "50 mm"]);
  });

  test.each([
    ["oneWayFt: 10", "gauge: 14", "ft"],
    ["oneWayFt: 10", "mm2: 2.5", "ft"],
    ["oneWayM: 3", "mm2: 2.5", "m"],
    ["oneWayM: 3", "gauge: 14", "m"],
  ])("%s and %s: %s", (length, size, unit) => {
    const other = unit === "ft" ? metric : /(?:\d |, )(?:ft|in)\b(?! all)|\binch/;
    const tables = hut(length, size);
    for (const id of ["wire-schedule", "cut-list", "spools"]) {
      const { columns, notes, rows } = shown(tables, id);
      const texts = [columns.map(({ title }) => title), rows.flat().map(textOf), notes].flat();
      expect(texts.filter((text) => other.test(text))).toEqual([]);
      expect(texts.join()).toMatch(unit === "ft" ? /\bft\b/ : /\bm\b/);
    }
    // Programs have metres in any plan.
    expect(recordsOf(tables[0]!)[0]).toMatchObject({ lengthM: unit === "ft" ? 3.048 : 3 });
  });

  test("cut to whole inches in feet, to 10 mm in metres", () => {
    // 10 ft are 120 in: 132 in with 10 % slack, and 2 × 50 mm (3.94 in) at the ends: 136 in.
    expect(recordsOf(hut("oneWayFt: 10", "gauge: 14")[0]!)[0]).toMatchObject({ cutLengthFtIn: "11 ft 4 in" });
    expect(recordsOf(hut("oneWayM: 3", "gauge: 14")[0]!)[0]).toMatchObject({ cutLengthM: 3.4 });
  });
});

describe("buying", () => {
  const shed = (settings: string, length = "oneWayFt: 10") =>
    tablesOf(`
      build({ name: "shed", insulationC: 105, ${settings} });
      circuit({ name: "lamp", load: 2, ${length}, gauge: 14, protect: { ratingA: 5, family: "ISO 8820-3 Type C" } });
      circuit({ name: "fan", load: 3, ${length}, gauge: 14, protect: 5 });
      circuit({ name: "winch", load: 80, continuous: false, ${length}, gauge: 2, protect: { ratingA: 100, family: "UL 248-15 Class T" } });
      circuit({ name: "thruster", load: 80, continuous: false, ${length}, gauge: 2, protect: 100 });`);
  const sparesIn = (settings: string) =>
    recordsOf(shed(settings).find(({ id }) => id === "parts-list")!)
      .filter(({ item, group }) => group === "protection" && item === "fuse")
      .map(({ details, spares }) => [details, spares]);

  test("spares: two of each blade rating, none of large fuses, and it is said to be common practice", () => {
    // In the order of the list: the blade, Class T, and both without a family, 5 A and 100 A.
    expect(sparesIn("").map(([, spares]) => spares)).toEqual(
      sparesIn("").map(([details]) => (String(details).startsWith("5 A") ? 2 : null)),
    );
    expect(sparesIn("")).toHaveLength(4);
    expect(
      shed("")
        .find(({ id }) => id === "parts-list")!
        .notes.join(" "),
    ).toContain("Spares: 2 of each blade fuse, none of larger ones (common practice, no source)");
  });
  test("spares of every kind on request", () => {
    expect(sparesIn("spareFuses: 1").map(([, spares]) => spares)).toEqual([1, 1, 1, 1]);
  });

  test("wire by the foot or the metre, up to the next whole one; stated spools still count", () => {
    const bought = (settings: string, length?: string) =>
      recordsOf(shed(settings, length).find(({ id }) => id === "spools")!).map(
        ({ size, spool }) => `${size}: ${spool}`,
      );
    // 2 wires of 10 ft and a colour: 136 in each, 22 ft 8 in together.
    expect(bought("wireByLength: true, endSlackMm: 50")).toEqual([
      ...["14 AWG: 23 ft, by the foot", "14 AWG: 23 ft, by the foot"],
      ...["2 AWG: 23 ft, by the foot", "2 AWG: 23 ft, by the foot"],
    ]);
    // 3 m, 10 % and 2 × 50 mm: 3.4 m each, 6.8 m together.
    expect(bought("wireByLength: true, endSlackMm: 50", "oneWayM: 3")[0]).toBe("14 AWG: 7 m, by the metre");
    expect(
      bought("wireByLength: true, spools: [{ gauge: 14, lengthFt: 50 }]").filter((one) =>
        one.startsWith("14"),
      ),
    ).toEqual(["14 AWG: 50 ft", "14 AWG: 50 ft"]);
  });
});

describe("parts list", () => {
  const rows = recordsOf(tableOf("parts-list"));
  const item = (found: object) => rows.find((row) => expect.objectContaining(found).asymmetricMatch(row));

  test("parts with what they are bought by, and the builder's prices", () => {
    expect(item({ item: "battery", usedAs: "house bank" })).toMatchObject({
      ...{
        details: "LiFePO4, 12 V, 200 Ah",
        quantity: 1,
        source: "data sheet p. 3",
        priceEach: 900,
        price: 900,
      },
    });
    expect(item({ item: "fuse panel", usedAs: "panel" })).toMatchObject({
      details:
        "4 positions, 100 A in all, 30 A a position, 6 mm² a branch, 2 AWG at most, without negative bus",
    });
    expect(item({ item: "chassis" })).toBeUndefined();
  });
  test("fuses by rating and family, with spares, where they belong; breakers without", () => {
    expect(item({ standard: "ISO 8820-3 Type C", group: "protection" })).toMatchObject({
      ...{
        details: "5 A, blade, medium",
        quantity: 3,
        spares: 1,
        usedAs: "panel 1; panel 2",
        priceEach: 0.4,
      },
    });
    expect(
      item({ details: "100 A, compact, fast acting, current limiting, interrupts 20,000 A" }),
    ).toMatchObject({
      ...{ quantity: 3, spares: 1, usedAs: "link, near main switch · load; link, near starter · positive" },
    });
    expect(item({ item: "breaker" })).toMatchObject({ quantity: 1, spares: null });
    expect(item({ standard: "not stated", group: "protection" })).toMatchObject({
      details: "7.5 A",
      quantity: 2,
    });
  });
  test("fittings by size and stud, as many as there are wires", () => {
    expect(
      item({ item: "ring terminal, stud M8", details: "for 35 mm², hole 8.4 mm (unconfirmed figure)" }),
    ).toMatchObject({
      // Two of the parallel pair at the bank; one of the link and one of the ground cable at the starter battery.
      quantity: 4,
    });
    expect(item({ item: "receptacle, 6.3 mm" })).toMatchObject({ details: "for 2.5 mm²", quantity: 3 });
    expect(item({ item: "ferrule" })).toMatchObject({ quantity: 2 });
  });
  test("the devices that the circuits feed", () => {
    expect(item({ group: "devices", item: "roof fan" })).toMatchObject({ details: "3 A", price: 60 });
    expect(item({ group: "devices", item: "work light" })).toMatchObject({ details: "24 W" });
    expect(item({ group: "devices", item: "pump" })).toMatchObject({ details: "4 A running, 12 A starting" });
  });
  test("the sum is that of the lines", () => {
    const sum = rows.reduce((total, { price }) => total + (typeof price === "number" ? price : 0), 0);
    expect(sum).toBeCloseTo(900 + 45 + 3 * 0.4 + 2 * 18 + 60, 9);
    expect(tableOf("parts-list").notes.join(" ")).toContain(`${sum.toFixed(2).replace("1042", "1,042")} EUR`);
  });
  test("fuses in the strings of a solar array are bought too", () => {
    const roof = `${van}
      const roof = solarArray({ name: "roof", openCircuitV: 20, shortCircuitA: 9, maxPowerV: 17, maxPowerA: 8, parallel: 3, stringFuseA: 15 });
      const controller = solarController({ name: "controller", maxInputV: 100, outputA: 30 });
      circuit({ name: "sun", from: roof.positive, to: controller, oneWayM: 4, mm2: 10 });
      cable({ name: "sun out", from: controller.positive, to: off.load, lengthM: 1, mm2: 10, protectFarEnd: { ...classT, ratingA: 40 } });
      cable({ name: "sun back", from: controller.negative, to: body.bond, lengthM: 1, mm2: 10 });`;
    const list = recordsOf(tablesOf(roof).find(({ id }) => id === "parts-list")!);
    expect(list.find(({ details }) => details === "15 A")).toMatchObject({
      ...{ quantity: 4, spares: 1, usedAs: "roof, string 1; roof, string 2; roof, string 3" },
    });
  });
});

describe("fuse map", () => {
  const rows = recordsOf(tableOf("fuse-map"));
  test("each position of the panel, free ones too, with what flows in the worst scenario that lasts", () => {
    expect(rows.filter(({ place }) => place === "panel")).toMatchObject([
      {
        position: 1,
        circuit: "fan supply",
        number: 6,
        ratingA: 5,
        loadA: expect.closeTo(3, 9),
        scenario: "working",
      },
      { position: 2, circuit: "LIGHT", number: 8 },
      {
        position: 3,
        circuit: "pump supply",
        ratingA: 7.5,
        family: "not stated",
        loadA: expect.closeTo(4, 9),
        scenario: "washing",
      },
      { position: 4, circuit: "free", number: null, ratingA: null, loadA: null },
    ]);
  });
  test("devices that are in no panel, by their place", () => {
    expect(rows.map(({ place }) => place)).toEqual(
      expect.arrayContaining([
        "near house bank · positive, 100 mm from it",
        "near main switch · load, 80 mm from it",
        "near starter · positive, 80 mm from it",
      ]),
    );
  });
  test("more conductors than positions", () => {
    const table = tablesOf(van.replace("positions: 4", "positions: 2")).find(({ id }) => id === "fuse-map")!;
    expect(recordsOf(table).filter(({ place }) => place === "panel")).toHaveLength(3);
    expect(table.notes.join(" ")).toContain("panel has 2 positions, and 3 conductors leave from it");
  });
});

describe("fuses and breakers that are parts of their own", () => {
  /** A holder on the bank and one on the panel, a breaker between two cables and one on the panel. */
  const tables = tablesOf(`
    build({ voltage: 12, spareFuses: 1, currency: "EUR" });
    const house = battery({ name: "house bank", chemistry: "LiFePO4", capacityAh: 200, internalMilliohm: 2 });
    const main = fuseHolder({ name: "main fuse", ratingA: 150, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, on: house.positive, price: 35, source: "data sheet p. 2" });
    const branchBreaker = breaker({ name: "feeder breaker", ratingA: 60, interruptingA: 5_000, price: 22, source: "catalogue" });
    const panel = fusePanel({ name: "panel", positions: 2, termination: "M5", branchTermination: "6.3 mm tab" });
    cable({ name: "main feed", from: main.load, to: branchBreaker.line, lengthM: 1, mm2: 50, protectFarEnd: { ratingA: 150, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } });
    cable({ name: "feeder", label: "FEED", from: branchBreaker.load, to: panel.feed, lengthM: 2, mm2: 25 });
    cable({ name: "panel return", from: panel.negative, to: house.negative, lengthM: 2, mm2: 25 });
    const pumpBreaker = breaker({ name: "pump breaker", ratingA: 15, on: panel.branch });
    circuit({ name: "pump", from: pumpBreaker.load, returnTo: panel.negative, load: 10, oneWayM: 2, mm2: 4 });
    circuit({ name: "lamps", from: panel.branch, load: 5, oneWayM: 3, mm2: 2.5, protect: { ratingA: 10, family: "ISO 8820-3 Type C" } });
    const spare = fuseHolder({ name: "socket fuse", ratingA: 10, family: "ISO 8820-3 Type C", on: panel.branch });
    circuit({ name: "socket", from: spare.load, returnTo: panel.negative, load: 4, oneWayM: 2, mm2: 2.5 });
    circuit({ name: "second socket", from: spare.load, returnTo: panel.negative, load: 2, oneWayM: 2, mm2: 2.5 });
  `);
  const table = (id: string) => tables.find((one) => one.id === id)!;

  test("one on a panel's branch takes a position; the others have a place of their own, all with their current", () => {
    expect(
      recordsOf(table("fuse-map")).map(({ place, position, circuit, number, ratingA, loadA }) =>
        [place, position, circuit, number, ratingA, Math.round(Number(loadA))].join(" | "),
      ),
    ).toEqual([
      "panel | 1 | pump | 4 | 15 | 10",
      "panel | 2 | lamps | 6 | 10 | 5",
      "panel | 3 | socket and second socket | 8, 10 | 10 | 6",
      "on house bank · positive |  | main feed | 1 | 150 | 21",
      "feeder breaker |  | FEED | 2 | 60 | 21",
      "near feeder breaker · line |  | main feed | 1 | 150 | 21",
    ]);
    expect(table("fuse-map").notes.join(" ")).toContain(
      "panel has 2 positions, and 3 conductors and devices are on its branches",
    );
  });

  test("the rating of each is read off before the first power, with the breakers open", () => {
    const check = table("first-power-protection");
    expect(recordsOf(check).map(({ place, ratingA, family }) => `${place}: ${ratingA} A ${family}`)).toEqual([
      "panel: 15 A circuit breaker",
      "panel: 10 A ISO 8820-3 Type C",
      "panel: 10 A ISO 8820-3 Type C",
      "on house bank · positive: 150 A UL 248-15 Class T",
      "feeder breaker: 60 A circuit breaker",
      "near feeder breaker · line: 150 A UL 248-15 Class T",
    ]);
    expect(table("first-power-conductors").notes).toContain(
      "With every battery disconnected, every other source off, every fuse out and every breaker open.",
    );
    expect(recordsOf(table("first-power-insulation"))[0]!.how).toContain("each breaker that is open");
  });

  test("a holder is bought with its fuse, a breaker once, and the price is that of the part", () => {
    const rows = recordsOf(table("parts-list")).filter(
      ({ group, item }) => group === "protection" || item === "fuse holder" || item === "breaker",
    );
    expect(
      rows.map(({ group, item, details, standard, quantity, spares, usedAs, source, price }) =>
        [group, item, details, standard, quantity, spares, usedAs, source, price].join(" | "),
      ),
    ).toEqual([
      "parts | fuse holder | for 150 A | UL 248-15 Class T | 1 |  | main fuse | data sheet p. 2 | 35",
      "parts | fuse holder | for 10 A | ISO 8820-3 Type C | 1 |  | socket fuse |  | ",
      "protection | fuse | 10 A, blade, medium | ISO 8820-3 Type C | 3 | 1 | panel 2; panel 3 |  | ",
      "protection | fuse | 150 A, compact, fast acting, current limiting, interrupts 20,000 A, 125 V | UL 248-15 Class T | 3 | 1 | main fuse, on house bank · positive; main feed, near feeder breaker · line |  | ",
      "protection | breaker | 15 A |  | 1 |  | panel 1 |  | ",
      "protection | breaker | 60 A, interrupts 5,000 A |  | 1 |  | feeder breaker | catalogue | 22",
      "protection | fuse holder | for 150 A and 50 mm² | UL 248-15 Class T | 1 |  | main feed |  | ",
    ]);
  });

  test("the return of a circuit from one on a panel's branch ends like those of the branches", () => {
    const returns = recordsOf(table("wire-schedule")).filter(({ side }) => side === "return");
    expect(returns.map(({ name, fittingTo }) => `${name}: ${fittingTo}`)).toEqual([
      "pump: receptacle, 6.3 mm",
      "lamps: receptacle, 6.3 mm",
      "socket: receptacle, 6.3 mm",
      "second socket: receptacle, 6.3 mm",
    ]);
  });
});

test("labels: both ends of every wire, each of parallel ones", () => {
  const rows = recordsOf(tableOf("labels"));
  expect(rows.slice(0, 2)).toEqual([
    {
      number: 1,
      fitting: "ring terminal, stud M8",
      at: "house bank · positive",
      name: "bank to switch",
      leadsTo: "to main switch · line",
      count: 2,
    },
    {
      number: 1,
      fitting: "ring terminal, stud M10",
      at: "main switch · line",
      name: "bank to switch",
      leadsTo: "from house bank · positive",
      count: 2,
    },
  ]);
  const wires = recordsOf(tableOf("wire-schedule"));
  const ends = rows.reduce((sum, { count }) => sum + Number(count), 0);
  expect(ends).toBe(2 * wires.length + 2);
  expect(rows.find(({ at }) => at === "work light · negative")).toMatchObject({ name: "LIGHT, return" });
});

describe("checks before first power", () => {
  test("torques only where the builder states them, with the source", () => {
    const rows = recordsOf(tableOf("first-power-conductors"));
    expect(rows[0]).toMatchObject({
      torqueFrom: "9 N·m (data sheet p. 3)",
      torqueTo: null,
      continuity: null,
    });
    const without = tablesOf(van.replace("torqueNm: 9, ", "")).find(
      ({ id }) => id === "first-power-conductors",
    )!;
    expect(without.columns.map(({ id }) => id)).not.toContain("torqueFrom");
    expect(without.notes.join(" ")).toContain("The plan states no torques");
  });
  test("columns for a pen are empty in every row, and marked", () => {
    for (const { columns, rows } of documents)
      columns.forEach(({ toFillIn }, index) => {
        if (toFillIn) expect(rows.every((row) => row[index] === null)).toBe(true);
      });
    const marked = documents.flatMap(({ columns }) => columns.filter(({ toFillIn }) => toFillIn));
    expect(marked.map(({ id }) => id)).toEqual([
      ...["continuity", "polarity", "tightened", "limit", "measured", "rating", "seated", "measured"],
    ]);
  });
  test("insulation against the body, with its bonds taken off, and no limit of ours", () => {
    const { notes } = tableOf("first-power-insulation");
    const rows = recordsOf(tableOf("first-power-insulation"));
    expect(rows.map(({ between }) => between)).toEqual([
      "all positive conductors together, and all negative conductors together",
      "all positive conductors together, and van body",
      "all negative conductors together, and van body",
    ]);
    expect(rows[2]!.how).toContain("bank to body and starter to body taken off");
    expect(notes.join(" ")).toContain("No limit is given here");
    expect(`${notes}${JSON.stringify(rows)}`).not.toMatch(/\d\s*(kΩ|MΩ|Ω|ohm)/);
  });
  test("every device is in the list of fuses once", () => {
    expect(recordsOf(tableOf("first-power-protection"))).toHaveLength(3 + 4);
  });
  test("voltages as solved, each in a scenario in which it is on", () => {
    const rows = rowsOf("first-power-voltages", ({ device }) => String(device));
    const solved = judgementOf(van).network!.result.scenarios;
    const parts = judgementOf(van).network!.network.parts;
    const fan = parts.find(({ name }) => name === "roof fan")!;
    expect(rows["roof fan"]).toMatchObject({ scenario: "working", currentA: 3, leastV: 10.5 });
    expect(solved[0]).toMatchObject({ state: "solved" });
    expect(rows["roof fan"]!.expectedV).toBe((solved[0] as SolvedScenario).partV[fan.index]);
    expect(rows.pump).toMatchObject({ scenario: "washing" });
  });
  test("in the scenario that is asked for, and off is said", () => {
    const rows = recordsOf(tablesOf(van, { scenario: 1 }).at(-1)!);
    const at = (device: string) => rows.find((row) => row.device === device);
    expect(at("roof fan")).toMatchObject({ scenario: "washing", expectedV: "off", currentA: null });
    expect(at("pump")).toMatchObject({ scenario: "washing", currentA: 4 });
  });
});

describe("plans that are not whole", () => {
  test("circuits that stand alone have every list, in words where nothing is known", () => {
    const tables = tablesOf(`
      circuit({ name: "lamp", load: 2, oneWayFt: 10, gauge: 14, protect: 5 });
      circuit({ name: "horn", load: 5, oneWayFt: 4, gauge: 14 });`);
    expect(tables).toHaveLength(documents.length);
    const byId = (id: string) => recordsOf(tables.find((table) => table.id === id)!);
    expect(byId("wire-schedule")[0]).toMatchObject({
      ...{ from: "supply, not stated", to: "lamp · positive", cutLengthFtIn: "11 ft 8 in", lengthFt: 10 },
    });
    expect(byId("wire-schedule")[1]).toMatchObject({ from: "lamp · negative", to: "supply, not stated" });
    expect(byId("fuse-map")).toEqual([
      expect.objectContaining({ place: "near the supply", loadA: 2, scenario: "as the circuit states" }),
    ]);
    expect(tables.find(({ id }) => id === "fuse-map")!.notes.join(" ")).toContain(
      "Without any protection in the plan: horn.",
    );
    expect(byId("first-power-voltages")[0]).toMatchObject({ scenario: "12 V at its supply", currentA: 2 });
  });
  test("behind a length that is left out: no voltage to expect, and it is said; before it, there is one", () => {
    const tables = tablesOf(`
      build({ voltage: 12 });
      const house = battery({ name: "house", chemistry: "LiFePO4", capacityAh: 200, internalMilliohm: 2 });
      const panel = fusePanel({ name: "panel", positions: 6 });
      cable({ name: "feed", from: house.positive, to: panel.feed, mm2: 35, protect: 100 });
      cable({ name: "back", from: panel.negative, to: house.negative, lengthM: 1, mm2: 35 });
      circuit({ name: "lamp", from: panel.branch, load: 5, oneWayM: 3, mm2: 2.5, protect: 10 });`);
    const expected = recordsOf(tables.at(-1)!).map(({ device, expectedV }) => [device, expectedV]);
    const unknown = "not worked out: a length is not known";
    expect(expected).toEqual([
      ["battery house", expect.any(Number)],
      ["panel", unknown],
      ["lamp", unknown],
    ]);
  });
  test("a scenario without an operating point: no figure, and it is said", () => {
    const tables = tablesOf(
      van.replace("loadW: 24", "loadW: 2_000").replace("positiveM: 4", "positiveM: 60"),
    );
    const voltages = tables.at(-1)!;
    expect(recordsOf(voltages).find(({ device }) => device === "roof fan")).toMatchObject({
      expectedV: "not worked out",
      currentA: null,
    });
    expect(voltages.notes.join(" ")).toContain('no operating point: "working"');
    const map = recordsOf(tables.find(({ id }) => id === "fuse-map")!);
    expect(map.find(({ circuit }) => circuit === "LIGHT")).toMatchObject({
      loadA: "not worked out",
      scenario: null,
    });
  });
  test("a network with a value that cannot be used: every list says that it is not complete", () => {
    const tables = tablesOf(van.replace("capacityAh: 200", "capacityAh: -200"));
    for (const { notes } of tables)
      expect(notes[0]).toMatch(/^Not complete: a value of the network is invalid/);
    expect(recordsOf(tables[0]!).map(({ name }) => name)).toEqual(["work light", "work light"]);
  });
  test("an empty plan has empty lists", () => {
    for (const { id, rows } of tablesOf("build({});"))
      if (id !== "first-power-insulation") expect(rows).toEqual([]);
  });
});

test("a number that is not kept is marked in every list that shows it, and the list says so", () => {
  const plan = judgementOf(van);
  const tables = benchDocuments(plan, numberWires(wiresOf(plan), readWireNumbers(undefined)));
  for (const table of tables) {
    const marked = /\b\d+\*/.test(JSON.stringify(table.rows));
    const said = table.notes.some((note) => note.startsWith("* This wire number is not kept yet"));
    expect([table.id, said]).toEqual([table.id, marked]);
  }
  expect(recordsOf(tables[0]!)[0]!.number).toBe("1*");
});

function judgementOf(plan: string) {
  const { records, problems } = runExample(plan);
  if (problems.length > 0) throw new Error(JSON.stringify(problems));
  return judge(records, problems);
}

/** With every number kept, in the order of the plan. */
function tablesOf(plan: string, options: BenchDocumentOptions = {}): readonly Table[] {
  const judgement = judgementOf(plan);
  const { wires, ...rest } = numberWires(wiresOf(judgement), readWireNumbers(undefined));
  const kept = { ...rest, wires: wires.map((wire) => ({ ...wire, kept: true })) };
  return benchDocuments(judgement, kept, options);
}

function tableOf(id: string): Table {
  return documents.find((table) => table.id === id)!;
}

function recordsOf(table: Table): Record<string, string | number | null>[] {
  const { columns, rows } = tableForPrograms(table);
  return rows.map((row) =>
    Object.fromEntries(
      row.map((cell, index) => [
        columns[index]!.id,
        cell === null || typeof cell === "string" ? cell : cell.value,
      ]),
    ),
  );
}

function rowsOf(id: string, key: (row: Record<string, string | number | null>) => string) {
  return Object.fromEntries(recordsOf(tableOf(id)).map((row) => [key(row), row]));
}
