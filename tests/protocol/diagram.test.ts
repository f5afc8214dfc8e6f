import { SaxesParser } from "saxes";
import { describe, expect, test } from "vitest";
import { CancellationTokenSource, type Hover, LSPErrorCodes } from "vscode-languageserver/node";
import { elementIs } from "../../extension/diagram/allowed-svg.ts";
import type { Diagram, DiagramElement, DiagramParams } from "../../server/language/messages.ts";
import { hostileNames } from "../editor/harness/hostile-names.ts";
import type { ScriptedEditor } from "./scripted-editor.ts";
import { useEditors } from "./use-editors.ts";

const build = `import { battery, build, cable, circuit, fusePanel, scenario } from "loomwright";

build({ name: "small boat", insulationC: 105 });
const bank = battery({ name: "house bank", chemistry: "AGM", capacityAh: 60, internalMilliohm: 20 });
const panel = fusePanel({ name: "fuse panel", positions: 6, ratedA: 100 });
cable({ name: "feeder", from: bank.positive, to: panel.feed, lengthFt: 4, gauge: 6, protect: 40 });
cable({ name: "panel return", from: panel.negative, to: bank.negative, lengthFt: 5, gauge: 6 });
circuit({
  name: "heater",
  from: panel.branch,
  load: 15,
  oneWayFt: 12,
  gauge: 10,
  protect: 20,
});
scenario({ name: "evening", chargePercent: 50 });
scenario({ name: "cooking" });
`;

const start = useEditors();

type Shown = Omit<DiagramParams, "textDocument">;

const ask = (editor: ScriptedEditor, shown: Shown = { view: "wiring" }, file = "van.ts") =>
  editor.ask<Diagram | null>("loomwright/diagram", file, shown);

async function diagramOf(editor: ScriptedEditor, shown?: Shown, file?: string): Promise<Diagram> {
  const diagram = await ask(editor, shown, file);
  if (!diagram) throw new Error("The server knows no plan here.");
  return diagram;
}

/** The diagram, which must have a picture. */
async function pictureOf(editor: ScriptedEditor, shown?: Shown, file?: string) {
  const diagram = await diagramOf(editor, shown, file);
  if (!diagram.picture) throw new Error(`There is no picture: ${diagram.notes.join(" ")}`);
  return { ...diagram, ...diagram.picture };
}

function named(elements: readonly DiagramElement[], name: string): DiagramElement {
  const found = elements.find((element) => element.name === name);
  if (!found) throw new Error(`No element is called ${name}: ${elements.map((one) => one.name).join(", ")}`);
  return found;
}

/** The text that an element's location encloses. */
function writtenAt(editor: ScriptedEditor, { location }: DiagramElement): string | undefined {
  if (!location) return undefined;
  const lines = editor.textOf("van.ts").split("\n");
  const { start, end } = location.range;
  const offset = (line: number, character: number) =>
    lines.slice(0, line).reduce((sum, text) => sum + text.length + 1, 0) + character;
  return editor.textOf("van.ts").slice(offset(start.line, start.character), offset(end.line, end.character));
}

/** A picture as read by an independent XML parser: names of elements, ids of selectable ones, texts. */
function readSvg(svg: string): {
  tags: Set<string>;
  attributes: Set<string>;
  ids: string[];
  texts: string[];
} {
  const read = {
    tags: new Set<string>(),
    attributes: new Set<string>(),
    ids: [] as string[],
    texts: [] as string[],
  };
  const parser = new SaxesParser();
  parser.on("error", (error) => {
    throw error;
  });
  parser.on("opentag", ({ name, attributes }) => {
    read.tags.add(name);
    for (const [attribute, value] of Object.entries(attributes)) {
      read.attributes.add(attribute);
      if (attribute === "data-element") read.ids.push(value);
    }
  });
  parser.on("text", (text) => {
    if (text.trim() !== "") read.texts.push(text);
  });
  parser.write(svg).close();
  return read;
}

describe("a builder looks at the diagram while writing", () => {
  test.each(["one-line", "wiring"] as const)(
    "the %s view of exactly the text that was asked about",
    async (view) => {
      const editor = await start({ files: { "van.ts": build } });
      editor.open("van.ts");
      const diagram = await pictureOf(editor, { view });
      expect(diagram).toMatchObject({
        ...{ uri: editor.uri("van.ts"), title: "small boat", current: true, view, notes: [] },
        versions: { [editor.uri("van.ts")]: 1 },
        scenarios: ["evening", "cooking"],
      });
      expect(diagram.scenario).toBeUndefined();
      // Every reported element can be selected, once.
      expect(readSvg(diagram.svg).ids.sort()).toEqual(diagram.elements.map(({ id }) => id).sort());
      expect(writtenAt(editor, named(diagram.elements, "house bank"))).toBe(
        'battery({ name: "house bank", chemistry: "AGM", capacityAh: 60, internalMilliohm: 20 })',
      );
      expect(writtenAt(editor, named(diagram.elements, "heater"))).toMatch(
        /^circuit\(\{\n {2}name: "heater",[\s\S]*\}\)$/,
      );
      // A fuse is one value of its run.
      expect(writtenAt(editor, named(diagram.elements, "fuse 40 A of feeder"))).toBe("40");
    },
  );

  test("a fuse whose rating several runs share leads to its run", async () => {
    const editor = await start({
      files: { "van.ts": `const small = 20;\n${build.replace("protect: 20", "protect: small")}` },
    });
    editor.open("van.ts");
    const { elements } = await pictureOf(editor);
    expect(writtenAt(editor, named(elements, "fuse 20 A of heater"))).toMatch(/^circuit\(/);
  });

  test("an edit: the next picture is of the new text, and what kept its name keeps its id", async () => {
    const editor = await start({ files: { "van.ts": build } });
    editor.open("van.ts");
    const before = await pictureOf(editor);
    editor.type("van.ts", "gauge: 10", "gauge: 12");
    const after = await pictureOf(editor);
    expect(after.versions).toEqual({ [editor.uri("van.ts")]: 2 });
    expect(after.current).toBe(true);
    expect(after.elements.map(({ id }) => id)).toEqual(before.elements.map(({ id }) => id));
    expect(readSvg(before.svg).texts.join()).toContain("10 AWG");
    expect(readSvg(after.svg).texts.join()).toContain("12 AWG");
    expect(readSvg(after.svg).texts.join()).not.toContain("10 AWG");
  });

  test("half typed: the last complete picture, said to be that, and its places moved along with the text", async () => {
    const editor = await start({ files: { "van.ts": build } });
    editor.open("van.ts");
    const before = await pictureOf(editor);
    editor.type("van.ts", 'cable({ name: "feeder"', 'cable({ from: \n\ncable({ name: "feeder"');
    const held = await pictureOf(editor);
    expect(held).toMatchObject({ current: false, svg: before.svg, versions: { [editor.uri("van.ts")]: 2 } });
    const [then, now] = [before, held].map(
      ({ elements }) => named(elements, "heater").location!.range.start.line,
    );
    expect(now).toBe(then! + 2);
    expect(writtenAt(editor, named(held.elements, "heater"))).toMatch(/^circuit\(/);
    editor.type("van.ts", "cable({ from: \n\n", "");
    expect((await pictureOf(editor)).current).toBe(true);
  });

  test("half typed from the beginning: no picture, and why", async () => {
    const editor = await start({ files: { "van.ts": build } });
    editor.open("van.ts", build.replace("load: 15", "load: ("));
    const diagram = await diagramOf(editor);
    expect(diagram.picture).toBeUndefined();
    expect(diagram.notes).toEqual(["There is no drawing yet: van.ts is half typed."]);
  });

  test("a scenario: its currents and voltages; one that is not in the plan is none", async () => {
    const editor = await start({ files: { "van.ts": build } });
    editor.open("van.ts");
    const none = await pictureOf(editor, { view: "wiring", scenario: "breakfast" });
    expect(none.scenario).toBeUndefined();
    expect(named(none.elements, "house bank").description).not.toContain("gives");
    const evening = await pictureOf(editor, { view: "wiring", scenario: "evening" });
    expect(evening.scenario).toBe("evening");
    expect(named(evening.elements, "house bank").description).toMatch(/gives 15 A/);
    expect(readSvg(evening.svg).texts.join()).toMatch(/15 A/);
  });

  test("what was found stands at the part or conductor that it is about", async () => {
    const editor = await start({ files: { "van.ts": build } });
    editor.open("van.ts");
    editor.type("van.ts", "gauge: 10", "gauge: 18");
    const { elements } = await pictureOf(editor);
    const conductor = elements.find(({ name, kind }) => name === "heater" && kind === "conductor");
    expect(conductor?.severity).toBe("warning");
    expect(conductor?.findings.join("\n")).toMatch(/18 AWG is below the minimum[\s\S]*23\.5 % of 12 V/);
    expect(conductor?.description).toContain("18 AWG is below the minimum");
    expect(conductor?.location?.range.start.line).toBe(7);
    expect(named(elements, "feeder")).not.toHaveProperty("severity");
  });

  test("a network that cannot be read is said to be so, in the picture and beside it", async () => {
    const editor = await start({
      files: { "van.ts": build.replace("capacityAh: 60", "capacityAh: -60") },
    });
    editor.open("van.ts");
    const diagram = await pictureOf(editor);
    expect(diagram.notes.join(" ")).toMatch(/could not be read/);
    expect(readSvg(diagram.svg).texts.join(" ")).toMatch(/could not be read/);
    expect(diagram.scenarios).toEqual([]);
  });

  test("a scenario without an operating point has no figures, and it is said why", async () => {
    const editor = await start({ files: { "van.ts": build } });
    editor.open("van.ts");
    editor.type("van.ts", "load: 15", "loadW: 3_000");
    const { notes, elements } = await pictureOf(editor, { view: "one-line", scenario: "cooking" });
    expect(notes.join(" ")).toMatch(/no operating point/);
    expect(named(elements, "house bank").description).not.toMatch(/gives [\d.]+ A/);
  });

  test("a plan that does not run to its end: what is missing is not passed over", async () => {
    const editor = await start({ files: { "van.ts": build } });
    editor.open("van.ts");
    editor.type("van.ts", "circuit({", 'throw new Error("no more");\ncircuit({');
    const diagram = await pictureOf(editor);
    expect(diagram.notes[0]).toMatch(/not run to its end/);
    expect(diagram.elements.map(({ name }) => name)).not.toContain("heater");
  });

  test("circuits that stand alone have a picture too", async () => {
    const editor = await start({
      files: {
        "van.ts":
          'import { circuit } from "loomwright";\ncircuit({ name: "lamp", load: 2, oneWayFt: 9, gauge: 16, protect: 5 });\n',
      },
    });
    editor.open("van.ts");
    const { elements, scenarios, title } = await pictureOf(editor, { view: "one-line" });
    expect(elements.map(({ name }) => name)).toContain("lamp");
    expect(scenarios).toEqual([]);
    expect(title).toBe("van.ts");
  });

  test("a file of a plan leads to the plan; one of none is answered with null", async () => {
    const parts =
      'import { battery } from "loomwright";\nexport const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 60 });\n';
    const root =
      'import { busBar, cable } from "loomwright";\nimport { bank } from "./parts.ts";\nconst bus = busBar({ name: "bus" });\ncable({ name: "main", from: bank.positive, to: bus.stud, lengthFt: 2, gauge: 4, protect: 60 });\n';
    const editor = await start({ files: { "van.ts": root, "parts.ts": parts, "notes.ts": "export {};\n" } });
    editor.open("van.ts");
    editor.open("parts.ts");
    editor.open("notes.ts");
    const diagram = await pictureOf(editor, { view: "wiring" }, "parts.ts");
    expect(diagram.uri).toBe(editor.uri("van.ts"));
    expect(diagram.versions).toEqual({ [editor.uri("van.ts")]: 1, [editor.uri("parts.ts")]: 1 });
    expect(named(diagram.elements, "bank").location?.uri).toBe(editor.uri("parts.ts"));
    expect(named(diagram.elements, "main").location?.uri).toBe(editor.uri("van.ts"));
    expect(await ask(editor, { view: "wiring" }, "notes.ts")).toBeNull();
  });

  test("conductors carry the numbers that are kept beside the plan", async () => {
    const editor = await start({ files: { "van.ts": build } });
    editor.open("van.ts");
    editor.onDiskUnheard({
      "van.wire-numbers.txt": '"feeder" cable: "house bank" positive to "fuse panel" feed = 77\n',
    });
    const texts = readSvg((await pictureOf(editor)).svg).texts.join("\n");
    expect(texts).toMatch(/\b77\b(?!\*)/);
    // A number that is not kept yet is marked.
    expect(texts).toMatch(/\b78\*/);
  });
});

describe("while a picture is on its way", () => {
  /** So many parts that its layout takes a while on any machine, if the server has not kept it from an earlier test. */
  const large = `import { battery, circuit, fusePanel } from "loomwright";
const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 60 });
for (let panels = 0; panels < 3; panels++) {
  const panel = fusePanel({ name: \`panel \${panels}\`, positions: 60, ratedA: 100 });
  for (let n = 0; n < 20; n++) circuit({ name: \`lamp \${panels} \${n}\`, from: panel.branch, load: 1, oneWayFt: 9, gauge: 16, protect: 5 });
}
`;

  test("other requests are answered first", async () => {
    const editor = await start({ files: { "van.ts": large }, ownServer: true });
    editor.open("van.ts");
    await editor.until("van.ts", "idle");
    const answers: string[] = [];
    const drawn = pictureOf(editor).then(() => answers.push("picture"));
    const hover = editor
      .ask<Hover>("textDocument/hover", "van.ts", { position: editor.behind("van.ts", "const bank = bat") })
      .then(() => answers.push("hover"));
    await Promise.all([drawn, hover]);
    expect(answers).toEqual(["hover", "picture"]);
  });

  test("a cancelled request is answered as cancelled, and the next one is answered", async () => {
    const editor = await start({ files: { "van.ts": large }, ownServer: true });
    editor.open("van.ts");
    await editor.until("van.ts", "idle");
    const source = new CancellationTokenSource();
    const params = { textDocument: { uri: editor.uri("van.ts") }, view: "wiring" };
    const asked = editor.connection.sendRequest("loomwright/diagram", params, source.token);
    source.cancel();
    await expect(asked).rejects.toMatchObject({ code: LSPErrorCodes.RequestCancelled });
    expect((await pictureOf(editor)).elements.length).toBeGreaterThan(60);
  });

  test("of several that wait the newest is drawn, the others are told so, and none is answered with nothing", async () => {
    const editor = await start({ files: { "van.ts": large }, ownServer: true });
    editor.open("van.ts");
    await editor.until("van.ts", "idle");
    const [first, second, third] = await Promise.allSettled([
      pictureOf(editor, { view: "wiring" }),
      pictureOf(editor, { view: "one-line" }),
      pictureOf(editor, { view: "wiring", scenario: "everything on" }),
    ]);
    expect(first.status).toBe("fulfilled");
    expect(second).toMatchObject({ status: "rejected", reason: { code: LSPErrorCodes.ServerCancelled } });
    expect(third.status).toBe("fulfilled");
  });
});

describe("names from strangers", () => {
  const circuits = hostileNames.map(
    (name, index) =>
      `circuit({ name: ${JSON.stringify(name)}, from: panel.branch, load: ${1 + index}, oneWayFt: 8, gauge: 14, protect: 5 });`,
  );
  const hostile = `import { battery, build, cable, circuit, fusePanel, scenario } from "loomwright";
build({ name: ${JSON.stringify(hostileNames.slice(0, 4).join(" "))} });
const bank = battery({ name: ${JSON.stringify(hostileNames[3])}, chemistry: "AGM", capacityAh: 60 });
const panel = fusePanel({ name: ${JSON.stringify(hostileNames[5])}, positions: 60 });
cable({ name: ${JSON.stringify(hostileNames[8])}, from: bank.positive, to: panel.feed, lengthFt: 4, gauge: 6 });
scenario({ name: ${JSON.stringify(hostileNames[2])} });
${circuits.join("\n")}
`;

  test.each(["one-line", "wiring"] as const)(
    "are text to an XML parser, and nothing else, in the %s view",
    async (view) => {
      const editor = await start({ files: { "van.ts": hostile } });
      editor.open("van.ts");
      const { scenarios } = await diagramOf(editor, { view });
      const { svg, elements, title } = await pictureOf(editor, { view, scenario: scenarios[0]! });
      const { tags, attributes, ids, texts } = readSvg(svg);
      expect([...tags].filter((tag) => elementIs(tag) === "refused")).toEqual([]);
      expect([...attributes].filter((name) => /^on|href|style|src/i.test(name))).toEqual([]);
      expect(ids.sort()).toEqual(elements.map(({ id }) => id).sort());
      expect(texts.join("\n")).toContain("<script>alert(1)</script>");
      // No character that hides or reverses neighbouring text gets out, in the picture or beside it.
      const said = JSON.stringify([
        title,
        scenarios,
        elements.map(({ id, name, description, findings }) => [id, name, description, findings]),
      ]);
      for (const text of [svg.replaceAll("\n", ""), said]) {
        expect(text).not.toMatch(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]/u);
      }
    },
  );
});
