import { expect, test } from "vitest";
import { drawn, fileJudge } from "./drawn-plans.ts";

const judgedFile = fileJudge();

/*
 * Two drawings that were inspected and approved. `npx vitest run -u` writes them anew; look at the pictures before you keep them.
 */
test.each([
  ["battery-and-lamp", "tests/networks/correct/battery-and-lamp.ts", { view: "wiring", scenario: 0 }],
  ["camper-draft", "examples/camper-draft/camper.ts", { view: "one-line" }],
] as const)("%s", async (name, file, options) => {
  const { svg } = await drawn(await judgedFile(file), options);
  await expect(svg).toMatchFileSnapshot(`golden/${name}.svg`);
});
