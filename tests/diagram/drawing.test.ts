import { describe, expect, test } from "vitest";
import { drawDiagram } from "../../library/documents/diagram/draw-diagram.ts";
import type { Drawing, View } from "../../library/documents/diagram/drawing.ts";
import { correctNetworks, drawn, examplePlans, fileJudge, judgedText } from "./drawn-plans.ts";
import { piecesOf } from "./pieces-of-svg.ts";

const judgedFile = fileJudge();

const views: readonly View[] = ["one-line", "wiring"];
const inRoom = (text: string) => text.length;

function textsOf({ svg }: Drawing): readonly string[] {
  return piecesOf(svg, inRoom).texts.map(({ text }) => text);
}

function namesOf({ elements }: Drawing, kind: string): readonly string[] {
  return elements.filter((one) => one.kind === kind).map(({ name }) => name);
}

describe("whatever is drawn can be pointed at and read out", () => {
  test.each([...examplePlans, ...correctNetworks])("%s", async (file) => {
    const plan = await judgedFile(file);
    for (const view of views) {
      const drawing = await drawn(plan, { view });
      const { elements } = piecesOf(drawing.svg, inRoom);
      // Every selectable element has its group, in any order, and there are no other groups.
      expect(elements.map(({ id }) => id).sort()).toEqual(drawing.elements.map(({ id }) => id).sort());
      expect(new Set(elements.map(({ id }) => id)).size).toBe(elements.length);
      for (const { id, label, role, title, description } of elements) {
        const { name } = drawing.elements.find((one) => one.id === id)!;
        expect({ role, label, title }).toEqual({ role: "img", label: name, title: name });
        expect(description!.length).toBeGreaterThan(name.length);
      }
      for (const { box, records } of drawing.elements) {
        expect(Object.values(box).every(Number.isFinite)).toBe(true);
        for (const record of records) expect(record).toBeGreaterThanOrEqual(0);
      }
      // Each finding is shown at its subject, or listed as being elsewhere.
      const open = plan.findings.filter(({ accepted }) => accepted === undefined).length;
      const shown = drawing.elements.filter(({ severity }) => severity !== undefined);
      expect(open === 0).toBe(
        shown.length === 0 && !drawing.notices.some((notice) => /finding/.test(notice)),
      );
    }
  });

  test("the wiring view has every conductor and every part of the network", async () => {
    const plan = await judgedFile("examples/library-bus/bus.ts");
    const drawing = await drawn(plan, { view: "wiring" });
    const { parts, conductors } = plan.network!.network;
    expect(namesOf(drawing, "part").toSorted()).toEqual(parts.map(({ name }) => name).sort());
    expect(namesOf(drawing, "conductor")).toHaveLength(conductors.length);
    const devices = conductors.flatMap(({ near, far }) => [near, far].filter(Boolean));
    expect(namesOf(drawing, "protection")).toHaveLength(devices.length);
    expect(drawing.notices).toEqual([]);
  });

  test("the one-line view has one line for each circuit, and says what it leaves out", async () => {
    const plan = await judgedFile("examples/library-bus/bus.ts");
    const drawing = await drawn(plan, { view: "one-line" });
    const { conductors } = plan.network!.network;
    const circuits = conductors.filter(({ role }) => role === "positive").length;
    expect(drawing.svg.match(/return/g)?.length ?? 0).toBeGreaterThan(0);
    expect(namesOf(drawing, "conductor").filter((name) => /, return$/.test(name))).toEqual([]);
    expect(namesOf(drawing, "conductor").length).toBeLessThan(conductors.length - circuits);
    expect(drawing.notices).toEqual([
      "The return side is not drawn in this view, nor are the parts on it alone: bank shunt, negative bus and bus frame.",
    ]);
    expect(textsOf(drawing).join(" ")).toContain("The return side is not drawn in this view");
  });

  test("what is found on what a view leaves out is not lost", async () => {
    const plan = await judgedText(`import { battery, cable, circuit, shunt } from "loomwright";
const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 100 });
const meter = shunt({ name: "meter", ratedA: 50 });
cable({ name: "to meter", from: bank.negative, to: meter.batterySide, lengthM: 0.3, mm2: 0.75 });
circuit({ name: "heater", from: bank.positive, returnTo: meter.systemSide, load: 30, oneWayM: 2, mm2: 16, protect: 40 });
`);
    const onCable = plan.findings.filter(({ at }) => "record" in at && at.record === 2);
    expect(onCable.length).toBeGreaterThan(0);
    const { elements } = await drawn(plan, { view: "one-line" });
    expect(plan.model.invalid).toEqual([]);
    const bank = elements.find(({ name }) => name === "bank")!;
    expect(bank.findings.filter((message) => message.startsWith("to meter: "))).toHaveLength(onCable.length);
  });
});

describe("figures", () => {
  test("size, length and number of a conductor, its current with a scenario only", async () => {
    const plan = await judgedFile("examples/rangers-hut/hut.ts");
    const numbers = () => "17";
    expect(textsOf(await drawn(plan, { numbers }))).toContain("17  2.5 mm² · 5 m");
    const currentA = plan.network!.result.scenarios[0]!;
    const index = plan.network!.network.conductors.findIndex(({ name }) => name === "cool box");
    if (currentA.state !== "solved") throw new Error("not solved");
    expect(currentA.conductorA[index]).toBeCloseTo(3, 6);
    expect(textsOf(await drawn(plan, { scenario: 0 }))).toContain("2.5 mm² · 5 m · 3 A");
  });

  test("a length stands in the unit of the plan, several wires side by side are counted", async () => {
    const plan = await judgedText(
      `import { circuit } from "loomwright"; circuit({ name: "winch", load: 90, oneWayFt: 7, gauge: 2, parallel: 2, protect: 125 });`,
    );
    expect(textsOf(await drawn(plan))).toContain("2 × 2 AWG · 7 ft");
  });

  test("a scenario without an operating point shows no figures, and says so", async () => {
    const plan = await judgedText(`import { battery, circuit } from "loomwright";
const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 10 });
circuit({ name: "too much", from: bank.positive, returnTo: bank.negative, loadW: 9000, oneWayM: 9, mm2: 1.5, protect: 10 });
`);
    expect(plan.network?.result.scenarios[0]?.state).toBe("unsolved");
    const drawing = await drawn(plan, { scenario: 0 });
    expect(drawing.notices.join(" ")).toContain("no operating point");
    expect(textsOf(drawing).filter((text) => / V$|· .* A$/.test(text))).toEqual([]);
  });
});

describe("what is not whole", () => {
  test("circuits of a network that could not be read are drawn from a supply that is not stated", async () => {
    const plan = await judgedText(`import { battery, circuit } from "loomwright";
const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: -1 });
circuit({ name: "lamp", from: bank.positive, returnTo: bank.negative, load: 2, oneWayM: 9, mm2: 1.5, protect: 3 });
`);
    expect(plan.model.networkUnread).toBe(true);
    const drawing = await drawn(plan);
    expect(namesOf(drawing, "part")).toEqual(["supply, not stated", "lamp"]);
    expect(drawing.notices.join(" ")).toContain("The network could not be read");
  });

  test("a plan in which there is nothing is a sheet that says so", async () => {
    const drawing = await drawn(
      await judgedText(`import { build } from "loomwright"; build({ name: "empty" });`),
    );
    expect(drawing.elements).toEqual([]);
    expect(drawing.notices).toEqual([
      "The drawing is empty: the plan has no part and no circuit that could be read.",
    ]);
    expect(textsOf(drawing).join(" ")).toContain("The drawing is empty");
  });

  test("a plan that makes circuits without end is not drawn, and the reason is said", async () => {
    const plan = await judgedFile("examples/faulty-workshop/endless.ts");
    const outcome = await drawDiagram(plan, { view: "wiring", medium: "paper" }, async () => {
      throw new Error("nothing is to be laid out");
    });
    expect(outcome).toEqual({
      drawn: false,
      why: expect.stringMatching(/^The plan has [\d,]+ conductors, and a drawing shows at most 2,000\.$/),
    });
  });

  test("a layout that fails is an answer with its reason", async () => {
    const plan = await judgedFile("examples/first-circuit/plan.ts");
    const outcome = await drawDiagram(plan, { view: "wiring", medium: "paper" }, async () => ({
      laidOut: false,
      why: "No room.",
    }));
    expect(outcome).toEqual({ drawn: false, why: "No room." });
  });
});

describe("on paper and on the screen", () => {
  test("paper has attributes and nothing that a page must explain", async () => {
    const { svg } = await drawn(await judgedFile("examples/faulty-workshop/yard.ts"), { medium: "paper" });
    expect(svg).not.toMatch(/\bclass=|\bstyle=|<style|var\(|currentColor|href=/);
  });

  test("the screen has classes, and colours from the page alone", async () => {
    const { svg } = await drawn(await judgedFile("examples/faulty-workshop/yard.ts"), { medium: "screen" });
    expect(svg).not.toMatch(/#[0-9a-f]{3,6}\b|style=|<style|href=/i);
    for (const said of [
      "loomwright-part",
      "loomwright-conductor",
      "loomwright-protection",
      "loomwright-error",
      "loomwright-accepted",
    ])
      expect(svg).toContain(said);
  });

  test("both hold the same words at the same places; legend and title block are on paper only", async () => {
    const plan = await judgedFile("examples/river-launch/launch.ts");
    const [paper, screen] = [await drawn(plan), await drawn(plan, { medium: "screen" })];
    const inDiagram = textsOf(screen);
    expect(inDiagram.length).toBeGreaterThan(20);
    expect(textsOf(paper).slice(0, inDiagram.length)).toEqual(inDiagram);
    expect(paper.svg).toContain("Local codes rule");
    expect(screen.svg).not.toContain("Local codes rule");
    expect(screen.heightPx).toBeLessThan(paper.heightPx);
    expect(screen.elements).toEqual(paper.elements);
  });
});
