import { expect, test } from "vitest";
// @ts-expect-error plain JavaScript, for the script that runs it as it is
import { nearTests } from "../setup/near-tests.mjs";

/** Composed, because writing it out would make this file near it. */
const rule = (ending: string) => `library/rules/bus/studs.${ending}`;

/** This file names other files, and so is near them. */
const own = "tests/repository/near-tests.test.ts";

function near(...files: string[]) {
  const found = nearTests(files) as { readonly tests: readonly string[]; readonly runTheBuild: boolean };
  return { ...found, tests: found.tests.filter((file) => file !== own) };
}

test("a rule's near tests are its own and those of all rules; not every test that judges a plan", () => {
  const { tests, runTheBuild } = near(rule("ts"));
  expect(tests).toEqual(
    expect.arrayContaining(["library/rules/bus/studs.test.ts", "library/rules/pages.test.ts"]),
  );
  expect(tests.length).toBeLessThan(15);
  expect(runTheBuild).toBe(false);
  expect(near(rule("md")).tests).toContain("library/rules/pages.test.ts");
});

test("a page, a table and a snapshot are near the tests that read them", () => {
  expect(near("README.md").tests).toContain("tests/repository/readme.test.ts");
  expect(near("tests/published/awg.json").tests).toEqual(["tests/published/resistance.test.ts"]);
  expect(near("tests/types/completions.snap").tests).toEqual(["tests/types/completions.test.ts"]);
});

test("a changed test is near itself, and is known to run the build through its helpers", () => {
  const ofServer = "tests/protocol/heavy-plans.test.ts";
  expect(near(ofServer)).toEqual({ tests: [ofServer], runTheBuild: true });
});

test("a file that is gone has no tests of its own", () => {
  expect(near("library/rules/bus/gone.test.ts").tests).toEqual([]);
});
