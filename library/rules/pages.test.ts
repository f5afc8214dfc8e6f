import { spawnSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { testWorld } from "../analysis/energy/world.tester.ts";
import { judge } from "../judge.ts";
import { runExample } from "./page.tester.ts";
import { rules } from "./registry.ts";

/** The same on every page and in this order: a reader then knows where to look. */
const headings = [
  "What it found",
  "Why it matters",
  "How it is worked out",
  "Wrong",
  "Right",
  "What it does not check",
  "When to accept it",
  "Source",
];

describe.each(rules.map((rule) => ({ rule, id: rule.id })))("the page of $id", ({ rule }) => {
  const url = new URL(`./${rule.id}.md`, import.meta.url);
  const page = existsSync(url) ? readFileSync(url, "utf8") : "";

  it("has every heading, in order, with something under it", () => {
    const sections = page.split(/^## /m).slice(1);
    expect(sections.map((section) => section.split("\n")[0])).toEqual(headings);
    for (const section of sections) expect(section.split("\n").slice(1).join("").trim()).not.toBe("");
  });

  it("shows plans that are wrong, and this rule says so", () => {
    // An endless plan has to meet a limit, so it is given a short one: a busy machine cannot fail it.
    const limitMs = rule.id === "plan/too-slow" ? 500 : undefined;
    for (const code of plansUnder("Wrong", page)) {
      const { records, problems } = runExample(code, limitMs);
      expect(
        judge(records, problems, undefined, testWorld).findings.map((finding) => finding.rule),
      ).toContain(rule.id);
    }
  });

  it("shows plans that are right, and nothing is said of them at warning or above", () => {
    for (const code of plansUnder("Right", page)) {
      const { records, problems } = runExample(code);
      const { findings } = judge(records, problems, undefined, testWorld);
      expect(findings.filter(({ severity }) => severity === "error" || severity === "warning")).toEqual([]);
      expect(findings.map((finding) => finding.rule)).not.toContain(rule.id);
    }
  });

  it("has one sentence a line", () => {
    // A line with two sentences contains a full stop, a space and a capital letter. Lists, tables, code and the head may.
    const prose = withoutHead(page)
      .replaceAll(/^```[\s\S]*?^```/gm, "")
      .split("\n");
    expect(prose.filter((line) => /[a-z0-9)`%][.?!] [A-Z]/.test(line))).toEqual([]);
  });

  it("links only to what is there", () => {
    const links = [...page.matchAll(/\]\(([^)#]+)(#[^)]*)?\)/g)].map(([, link]) => link ?? "");
    const broken = links.filter((link) => !existsSync(new URL(link, url)));
    expect(broken).toEqual([]);
  });
});

it("the register, the ids that a plan may accept, the heads of the pages and the table of rules are up to date", () => {
  const script = fileURLToPath(new URL("./write-docs.mjs", import.meta.url));
  const { status, stdout, stderr } = spawnSync(process.execPath, [script, "--check"], { encoding: "utf8" });
  expect({ status, stderr, stdout: stdout.trim() }).toEqual({
    status: 0,
    stderr: "",
    stdout: "All lists, heads and tables are up to date.",
  });
});

/** At least one plan, else the calling test fails. */
function plansUnder(heading: string, page: string): string[] {
  const section = page.split(/^## /m).find((candidate) => candidate.startsWith(`${heading}\n`)) ?? "";
  const plans = [...section.matchAll(/^```ts\n([\s\S]*?)^```/gm)].map(([, code]) => code ?? "");
  expect(plans, `plans under "${heading}"`).not.toEqual([]);
  return plans;
}

function withoutHead(page: string): string {
  return page.split("<!-- head:end -->").at(-1) ?? "";
}
