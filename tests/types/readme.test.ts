import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { planCompiler } from "./compiler.ts";

const readme = readFileSync(new URL("../../library/README.md", import.meta.url), "utf8");
const plans = [...readme.matchAll(/```ts\n([\s\S]*?)```/g)].map(([, plan = ""]) => plan);

it("the plans in the package's README are accepted by the compiler", () => {
  expect(plans.length).toBeGreaterThan(1);
  const compiler = planCompiler();
  for (const plan of plans)
    expect(compiler.diagnostics(plan).map(({ messageText }) => messageText)).toEqual([]);
});
