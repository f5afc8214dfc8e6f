import MarkdownIt from "markdown-it";
import { describe, expect, test } from "vitest";
import { judge } from "../../judge.ts";
import { recordsOf } from "../../model/sample-plan.tester.ts";
import { build } from "../../plan/build.ts";
import { circuit } from "../../plan/circuit.ts";
import { continueNumberingAt } from "../../plan/numbering.ts";
import type { ComparedPlan } from "./compared-plan.ts";
import { describeDiff } from "./difference-in-words.ts";
import { differenceMarkdown } from "./difference-markdown.ts";
import { planDifference } from "./plan-difference.ts";

/** An independent reader, as strict and as eager to link as a forge's. */
const reader = new MarkdownIt({ html: true, linkify: true });

interface Lamp {
  readonly name?: string;
  readonly loadA?: number;
  readonly reason?: string;
}

function plan({ name = "lamp", loadA = 2, reason }: Lamp = {}) {
  continueNumberingAt(0);
  const accept = reason === undefined ? {} : { accept: { "protection/below-load": reason } };
  return judge(
    recordsOf([
      build({ insulationC: 105 }),
      circuit({ name, load: loadA, oneWayFt: 10, gauge: 14, protect: 5, ...accept }),
    ]),
    [],
  );
}

const compared = (before: Lamp, after: Lamp): ComparedPlan => ({
  ...({ path: "hut.ts", movedFrom: undefined, state: "compared" } as const),
  difference: planDifference(plan(before), plan(after)),
});

const labels = { before: "HEAD (1a2b3c4)", after: "the working tree" };

const told = (plans: readonly ComparedPlan[]) =>
  differenceMarkdown(
    { before: "HEAD (1a2b3c4)", after: "the working tree", plans, notes: [] },
    { all: false },
  );

test("a pull request reads what changed, what that does, and which finding came", () => {
  // 14 AWG, 105 °C: 35 A (33 CFR 183.425 Table 5); 2 and 7 A behind a fuse for 5 A.
  expect(told([compared({}, { loadA: 7 })])).toMatchInlineSnapshot(`
    "**HEAD (1a2b3c4) → the working tree**

    ### hut.ts

    1 changed · 1 error appeared

    **Changes**

    | Item | Property | Before | After |
    | --- | --- | --- | --- |
    | circuit lamp | load | 2 A | 7 A |

    **Figures of the changed items**

    | Item | Figure | Before | After | Limit | Left |
    | --- | --- | --- | --- | --- | --- |
    | circuit lamp | drop | 0.893 % | 3.16 % | limit 10 % | 91 % → 68 % |

    **Findings**

    |  | Severity | About | Finding | Rule |
    | --- | --- | --- | --- | --- |
    | new | error | lamp | The 5 A fuse is below the load of 7 A and would blow in ordinary use: use a 10 A fuse. | protection/below-load |

    _Compared as planned and worked out by Loomwright, a planning aid; not as built. Local codes rule._

    <!-- made by Loomwright -->
    "
  `);
});

describe("changes by less than a tenth of the figure's own limit", () => {
  // 14 AWG over 20 ft of round trip: the drop is 0.893 % for 2 A, and its limit is 10 %: a tenth is 1 %, reached at 4.24 A.
  test.each([
    [4.2, false],
    [4.3, true],
  ])("2 A to %d A: shown %s", (loadA, shown) => {
    const block = describeDiff(compared({}, { loadA }), labels, { all: false }).blocks.find(
      ({ title }) => title === "Figures of the changed items",
    );
    expect(block?.rows.map(([, figure]) => figure)).toEqual(shown ? ["drop"] : []);
    expect(block?.folded?.words).toBe(shown ? undefined : "1 smaller change");
  });

  test("are folded, and rows like the others on request", () => {
    const plans = [compared({}, { loadA: 3 })];
    expect(told(plans)).toContain("<details><summary>1 smaller change</summary>");
    const all = differenceMarkdown({ ...labels, plans, notes: [] }, { all: true });
    expect(all).not.toContain("<details>");
    expect(all).toContain("| circuit lamp | drop |");
  });

  test("a figure that crosses its limit is always shown", () => {
    // The limit of 10 % is reached between the two, and a tenth of it is 2.2 A at most.
    const { blocks } = describeDiff(compared({ loadA: 20.5 }, { loadA: 22.4 }), labels, { all: false });
    const figures = blocks.find(({ title }) => title === "Figures of the changed items");
    expect(figures?.rows).toHaveLength(1);
    expect(figures?.rows[0]?.at(-1)).toContain("past its limit");
  });
});

test("nothing changed: a line", () => {
  expect(told([compared({}, {})])).toContain("hut.ts: no change in the build");
});

test("many plans without a difference are folded", () => {
  const same = compared({}, {});
  const text = told(Array.from({ length: 6 }, (_, index) => ({ ...same, path: `hut-${index}.ts` })));
  expect(text).toContain("<details><summary>6 plans without a difference</summary>");
  expect(reader.render(text).match(/<li>/g)).toHaveLength(6);
});

describe("names and reasons of a plan mean nothing", () => {
  const cases = [
    "a | b",
    "`x` ``",
    "<img src=x onerror=alert(1)>",
    "</details>",
    "[a](http://b.example)",
    "![a](b)",
    "https://b.example www.b.example mailto:a@b.example",
    "**a** _b_ ~~c~~",
    "# a",
    "- a",
    "a\nb",
    "&lt;b&gt;",
    "\\",
    "$a$",
  ];
  test.each(cases)("%j", (name) => {
    const text = told([compared({ name, loadA: 7 }, { name, loadA: 8, reason: `because ${name}` })]);
    const page = reader.render(text);
    expect(page).not.toMatch(/<(?:a|img|code|s|h1|script|li)\b/);
    expect(page.match(/<h3>/g)).toHaveLength(1);
    // The closing line; and the heads of the page and of each table.
    expect(page.match(/<em>/g)).toHaveLength(1);
    expect(page.match(/<strong>/g)).toHaveLength(1 + page.split("<table>").length - 1);
    // Every table is a table, with rows as wide as its head.
    for (const [table] of page.matchAll(/<table>[\s\S]*?<\/table>/g)) {
      const [head, ...rows] = [...table.matchAll(/<tr>[\s\S]*?<\/tr>/g)].map(
        ([row]) => row.match(/<t[hd]/g)?.length,
      );
      expect(rows.length).toBeGreaterThan(0);
      for (const row of rows) expect(row).toBe(head);
    }
    expect(page.match(/<table>/g)?.length).toBeGreaterThan(1);
  });

  test.each(["@team", "#12", "GH-12", "owner/repo#12"])("%s links nobody and nothing", (name) => {
    const text = told([compared({ name }, { name, loadA: 3 })]);
    // The patterns that a forge looks for after it has read the Markdown.
    expect(reader.render(text).replaceAll("&#8203;", "\u200b")).not.toMatch(/@\w|#\d|GH-\d/);
  });
});
