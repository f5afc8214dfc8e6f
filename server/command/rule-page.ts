import { readFileSync } from "node:fs";

/**
 * The page of a rule for the installed version, as Markdown. Comments for the page generator, which mark its generated head, are
 * removed.
 */
export function rulePage(id: string): string {
  const page = readFileSync(new URL(`../dist/rules/${id}.md`, import.meta.url), "utf8");
  return page.replaceAll(/<!--.*?-->\n?/gs, "").trim();
}
