import { BaseSequencer, type TestSpecification } from "vitest/node";

/** The files that take longest, longest first: begun last, one of them would keep one worker busy while the others have ended. */
const long = [
  "tests/typing/every-prefix.test.ts",
  "tests/hostile/closed-plans.test.ts",
  "tests/growth/growth.test.ts",
  "server/command/merge.test.ts",
  "server/command/check-cache.test.ts",
  "tests/diagram/labels-apart.test.ts",
  "tests/examples/examples.test.ts",
  "tests/published/sarif/sarif.test.ts",
];

/** Begins with the long files, even in a fresh clone, where Vitest does not know yet how long each file takes. */
export class LongFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const placeOf = ({ moduleId }: TestSpecification) => {
      const place = long.findIndex((name) => moduleId.endsWith(`/${name}`));
      return place === -1 ? long.length : place;
    };
    return (await super.sort(files)).sort((one, other) => placeOf(one) - placeOf(other));
  }
}
