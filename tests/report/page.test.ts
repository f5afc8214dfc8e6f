import { pathToFileURL } from "node:url";
import { SaxesParser } from "saxes";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { ReportContent } from "../../library/documents/report/report-content.ts";
import { reportHtml } from "../../library/documents/report/report-html.ts";
import { cssString } from "../../library/documents/report/report-style.ts";
import { createChecker } from "../../server/evaluate/checker.ts";
import { diskWorkspace } from "../../server/evaluate/files/disk-workspace.ts";
import { sharedSandbox } from "../../server/evaluate/shared-sandbox.tester.ts";
import { isAsSealed, sealed } from "../../server/output/seal.ts";
import { reported, reportedOf } from "./reported-plan.ts";

interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly parents: readonly string[];
}

interface Parsed {
  readonly elements: readonly Element[];
  readonly text: string;
  /** The content of the only style sheet. */
  readonly style: string;
}

/** Read by an independent parser of XML, strictly: text that is not well-formed throws. */
function parse(html: string): Parsed {
  const elements: Element[] = [];
  const open: string[] = [];
  let [text, style] = ["", ""];
  const parser = new SaxesParser({ xmlns: true });
  parser.on("error", (error) => {
    throw error;
  });
  parser.on("opentag", ({ name, attributes }) => {
    const values = Object.entries(attributes).map(([key, { value }]) => [key, value]);
    elements.push({ name, attributes: Object.fromEntries(values), parents: [...open] });
    open.push(name);
  });
  parser.on("closetag", () => void open.pop());
  parser.on("text", (piece) => {
    if (open.at(-1) === "style") style += piece;
    else text += piece;
  });
  parser.on("cdata", () => {
    throw new Error("a page of ours has no CDATA");
  });
  parser.write(html).close();
  return { elements, text, style };
}

const examples = new URL("../../examples/", import.meta.url);
const workspace = diskWorkspace([examples.href]);
const checker = createChecker(workspace, { sandbox: sharedSandbox });
afterAll(() => checker.dispose());

async function exampleContent(file: string): Promise<ReportContent> {
  const plan = await checker.check(pathToFileURL(new URL(file, examples).pathname).href);
  if (plan.state !== "checked") throw new Error("half typed");
  return reportedOf(plan, workspace);
}

describe.each([
  "first-circuit/plan.ts",
  "library-bus/bus.ts",
  "faulty-workshop/workshop.ts",
  "faulty-workshop/yard.ts",
])("the page of %s", (file) => {
  let content: ReportContent;
  let html: string;
  let page: Parsed;

  beforeAll(async () => {
    content = await exampleContent(file);
    html = reportHtml(content);
    page = parse(html);
  });

  const named = (...names: readonly string[]) => page.elements.filter(({ name }) => names.includes(name));

  test("holds nothing that runs", () => {
    expect(
      named(
        "script",
        "iframe",
        "object",
        "embed",
        "link",
        "form",
        "input",
        "base",
        "audio",
        "video",
        "foreignObject",
      ),
    ).toEqual([]);
    const handlers = page.elements.flatMap(({ attributes }) =>
      Object.keys(attributes).filter((key) => /^on/i.test(key)),
    );
    expect(handlers).toEqual([]);
  });

  test("leads nowhere but within itself", () => {
    const ids = new Set(page.elements.flatMap(({ attributes }) => attributes.id ?? []));
    for (const { name, attributes } of page.elements) {
      for (const [key, value] of Object.entries(attributes)) {
        if (/^(src|srcset|data|action|poster|background|ping|cite)$/i.test(key))
          expect([name, key, value]).toEqual([]);
        if (/href$/i.test(key))
          expect([value, ids.has(value.slice(1)) && value.startsWith("#")]).toEqual([value, true]);
        for (const [, target] of value.matchAll(/url\(([^)]*)\)/g))
          expect([target, target!.startsWith("#") && ids.has(target!.slice(1))]).toEqual([target, true]);
      }
    }
    expect(page.style).not.toMatch(/url\(|@import|@font-face|expression\(|https?:/);
  });

  test("tells the browser to load nothing either", () => {
    const policy = page.elements.find(
      ({ attributes }) => attributes["http-equiv"] === "Content-Security-Policy",
    );
    expect(policy?.attributes.content).toMatch(/^default-src 'none';/);
    expect(policy?.attributes.content).not.toMatch(/script-src|\*|https?:|'self'/);
  });

  test("names every element once, in the page and in its drawings", () => {
    const ids = page.elements.flatMap(({ attributes }) => attributes.id ?? []);
    expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([]);
    const pointers = page.elements.flatMap(({ attributes }) =>
      [attributes["aria-labelledby"], attributes["aria-describedby"]].flatMap(
        (value) => value?.split(" ") ?? [],
      ),
    );
    expect(pointers.filter((id) => !ids.includes(id))).toEqual([]);
  });

  test("has its language, one title, and headings that skip no level", () => {
    expect(page.elements[0]).toMatchObject({ name: "html", attributes: { lang: "en" } });
    const levels = named("h1", "h2", "h3", "h4").map(({ name }) => Number(name[1]));
    expect(levels.filter((level) => level === 1)).toEqual([1]);
    levels.reduce((before, level) => {
      expect(level).toBeLessThanOrEqual(before + 1);
      return level;
    });
  });

  test("every table has a caption and heads with a scope; every drawing has a name", () => {
    const tables = content.blocks.filter(({ kind }) => kind === "table").length;
    expect(named("table").length).toBe(tables);
    expect(named("caption").length).toBe(tables);
    for (const { attributes } of named("th")) expect(attributes.scope).toMatch(/^(col|row)$/);
    const drawings = named("svg").filter(({ parents }) => !parents.includes("svg"));
    expect(drawings.length).toBe(content.blocks.filter(({ kind }) => kind === "figure").length);
    for (const { attributes } of drawings) {
      expect(attributes.role).toMatch(/^(img|group)$/);
      expect(attributes["aria-label"] ?? attributes["aria-labelledby"]).toBeTruthy();
    }
  });

  test("is known again as a file of ours, and the same content gives the same bytes", () => {
    expect(isAsSealed("bus.html", sealed("bus.html", html))).toBe(true);
    expect(reportHtml(content)).toBe(html);
  });
});

describe("names and reasons from a plan are text and nothing else", () => {
  const planNamed = (name: string) => {
    // A colour and a label are cut to 40 characters, which is enough.
    const [text, short] = [JSON.stringify(name), JSON.stringify([...name].slice(0, 40).join(""))];
    return `import { battery, build, cable, circuit, fusePanel, scenario } from "loomwright";
build({ name: ${text}, voltage: 12, insulationC: 105 });
const bank = battery({ name: ${text}, chemistry: "AGM", capacityAh: 100, source: ${text} });
const panel = fusePanel({ name: ${text}, positions: 4 });
cable({ name: ${text}, from: bank.positive, to: panel.feed, lengthFt: 3, gauge: 4, colour: ${short}, protect: 80 });
cable({ name: "back", from: panel.negative, to: bank.negative, lengthFt: 3, gauge: 4, label: ${short} });
circuit({ name: ${text}, from: panel.branch, load: 8, oneWayFt: 60, gauge: 16, protect: 10, accept: { "conductor/voltage-drop": ${text} } });
scenario({ name: ${text} });
`;
  };
  const corpus = [
    "<script>alert(1)</script>",
    "</style><script>alert(1)</script>",
    "</title></svg></table><img src=x onerror=alert(1)>",
    '" onmouseover="alert(1)',
    "' autofocus onfocus='alert(1)",
    "]]><!--<b>--><![CDATA[",
    "&lt;b&gt; &amp; &#60;i>",
    "javascript:alert(1)",
    "url(https://example.invalid/x.png)",
    "}*{background:url(//example.invalid)}@import '//example.invalid'",
    "\\22 ; } </style>",
    "\u202Efdp.exe\u202C \u2066x\u2069 \u200Bzero",
    "nul\u0000 bell\u0007 line\u2028 return\r\n tab\t",
    "lone \uD800 half, \uFFFF not a character",
    "[S1] [F1] (F1)",
    "😀 Ωμέγα קבל 電池",
  ];

  /** Controls except line breaks, characters that change the text direction, invisible ones, halves of characters. */
  const hidden = /(?![\n\u200c\u200d])[\p{Cc}\p{Cf}\p{Cs}\p{Cn}]/u;

  let plain: Parsed;
  beforeAll(async () => {
    plain = parse(reportHtml(await reported(planNamed("lamp"))));
  });

  /** Links lead to numbers in the text, and drawings wrap their words: neither depends on the name. */
  const shapeOf = ({ elements }: Parsed) =>
    elements
      .filter(({ name, parents }) => name !== "a" && !parents.includes("svg"))
      .map(({ name, attributes, parents }) =>
        [parents.length, name, ...Object.keys(attributes).sort()].join(" "),
      );

  test.each(corpus)("%j", async (name) => {
    const html = reportHtml(await reported(planNamed(name)));
    const page = parse(html);
    expect(shapeOf(page)).toEqual(shapeOf(plain));
    const kinds = (parsed: Parsed) => [...new Set(parsed.elements.map((element) => element.name))].sort();
    expect(kinds(page).filter((kind) => !kinds(plain).includes(kind) && kind !== "a")).toEqual([]);
    for (const { attributes } of page.elements)
      for (const key of Object.keys(attributes)) expect(key).not.toMatch(/^on/i);
    for (const { attributes } of page.elements)
      if (attributes.href) expect(attributes.href).toMatch(/^#[\w-]+$/);
    const withoutStrings = ({ style }: Parsed) => style.replace(/"(?:[^"\\]|\\.)*"/g, '""');
    expect(withoutStrings(page)).toBe(withoutStrings(plain));
    expect([...html].filter((character) => hidden.test(character))).toEqual([]);
  });

  test("ordinary ones arrive as they are", async () => {
    for (const name of ["<script>alert(1)</script>", "&lt;b&gt; &amp; &#60;i>", "😀 Ωμέγα קבל 電池"])
      expect(parse(reportHtml(await reported(planNamed(name)))).text).toContain(name);
  });

  test("a string of the style sheet ends where it ends", () => {
    expect(cssString('a"b')).toBe('"a\\22 b"');
    expect(cssString("</style>\\\n")).toBe('"\\3c \\2f style\\3e \\5c \\a "');
    expect(cssString("😀")).toBe('"\\1f600 "');
  });
});
