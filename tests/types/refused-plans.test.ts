import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { planCompiler } from "./compiler.ts";

const plans = readFileSync(new URL("refused-plans.ts", import.meta.url), "utf8");

it.each([
  ["a builder's usual settings", {}],
  [
    "the strictest settings",
    { exactOptionalPropertyTypes: true, noUncheckedIndexedAccess: true, noImplicitAny: true },
  ],
])("refuses what it must and nothing else, with %s", (_, options) => {
  const found = planCompiler(options).diagnostics(plans);
  const drawn = found.map(({ start = 0, messageText }) => [
    plans.slice(0, start).split("\n").length,
    messageText,
  ]);
  expect(drawn).toEqual([]);
});
