import { readFileSync } from "node:fs";

/** The page of a rule, of this very version, as Markdown. Its generated head is fenced by comments that only its generator needs. */
export function rulePage(id: string): string {
  const page = readFileSync(new URL(`../dist/rules/${id}.md`, import.meta.url), "utf8");
  return page.replaceAll(/<!--.*?-->\n?/gs, "").trim();
}
