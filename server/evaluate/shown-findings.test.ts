import { expect, test } from "vitest";
import { mostShownOfRule, shownFindings } from "./shown-findings.ts";

const one = (rule: string, severity: "error" | "info", number: number) => ({
  ...{ rule, severity, number },
  file: "plan.ts",
  accepted: false,
});

test("one more than the most is shown rather than counted", () => {
  const items = Array.from({ length: mostShownOfRule + 1 }, (_, number) => one("a", "error", number));
  expect(shownFindings(items, (item) => item)).toEqual({ shown: items, leftOut: [] });
});

test("an error is never left out for information of the same rule", () => {
  const infos = Array.from({ length: 500 }, (_, number) => one("a", "info", number));
  const error = one("a", "error", 500);
  const { shown, leftOut } = shownFindings([...infos, error], (item) => item);
  expect(shown).toEqual([...infos.slice(0, mostShownOfRule - 1), error]);
  expect(leftOut).toEqual([infos.slice(mostShownOfRule - 1)]);
});

test("each rule and each file has its own", () => {
  const items = ["a", "b"].flatMap((rule) =>
    ["plan.ts", "other.ts"].flatMap((file) =>
      Array.from({ length: 150 }, (_, number) => ({ ...one(rule, "error", number), file })),
    ),
  );
  const { shown, leftOut } = shownFindings(items, (item) => item);
  expect(shown).toHaveLength(4 * mostShownOfRule);
  expect(leftOut.map(({ length }) => length)).toEqual([50, 50, 50, 50]);
});
