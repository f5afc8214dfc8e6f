import { existsSync, readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { acceptableRules } from "../model/acceptable-rules.ts";
import { ruleById, rules } from "./registry.ts";

const here = new URL(".", import.meta.url);
/** Folders of code that rules share; their files are not rules. */
const shared = new Set(["wording", "fixes"]);
const folders = readdirSync(here, { withFileTypes: true }).filter(
  (entry) => entry.isDirectory() && !shared.has(entry.name),
);
const idsInFolders = folders.flatMap(({ name }) =>
  readdirSync(new URL(`${name}/`, here))
    .filter((file) => /^[a-z-]+\.ts$/.test(file))
    .map((file) => `${name}/${file.replace(/\.ts$/, "")}`),
);

describe("the register", () => {
  it("holds every rule that has a file, and no other, once each", () => {
    expect(rules.map(({ id }) => id).sort()).toEqual(idsInFolders.sort());
  });

  it("finds a rule by its id", () => {
    expect(ruleById("conductor/ampacity")?.id).toBe("conductor/ampacity");
    expect(ruleById("conductor/colour")).toBeUndefined();
  });

  it("agrees with the words of a plan on which rules can be accepted", () => {
    const acceptable = rules.filter((rule) => rule.acceptable).map(({ id }) => id);
    expect(acceptable.sort()).toEqual([...acceptableRules].sort());
  });
});

describe.each(rules.map((rule) => ({ id: rule.id, rule })))("$id", ({ id, rule }) => {
  it("is defined in the file of its name, with page and cases beside it", () => {
    const source = readFileSync(new URL(`${id}.ts`, here), "utf8");
    expect(source).toContain(`id: "${id}"`);
    expect(existsSync(new URL(`${id}.md`, here)), "page").toBe(true);
    const cases = readFileSync(new URL(`${id}.test.ts`, here), "utf8");
    expect(cases).toContain("testRule(");
    expect(cases).toContain(`from "./${id.split("/")[1]}.ts"`);
  });

  it("has a short title, one sentence why, and sources that say what they are", () => {
    expect(rule.title.split(" ").length).toBeLessThanOrEqual(8);
    expect(rule.why).toMatch(/^[A-Z].*[^.]\.$/);
    expect(rule.sources.length).toBeGreaterThan(0);
    for (const { document, section, authority } of rule.sources) {
      expect(document).not.toBe("");
      if (authority === "regulation" || authority === "standard") expect(section).not.toBe("");
    }
  });

  it("has no title twice, former ones included: a rule is found by each of them", () => {
    const titles = rules.flatMap(({ title, formerTitles = [] }) => [title, ...formerTitles]);
    expect(new Set(titles.map((title) => title.toLowerCase())).size).toBe(titles.length);
  });
});
