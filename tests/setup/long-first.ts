import { BaseSequencer, type TestSpecification } from "vitest/node";

/** The files that take longest, longest first: begun last, one of them would keep one worker busy while the others have ended. */
const long = [
  "server/command/check-cache.test.ts",
  "tests/examples/shared-builds.test.ts",
  "tests/properties/every-property/every-property.test.ts",
  "tests/hostile/closed-plans.test.ts",
  "tests/protocol/heavy-plans.test.ts",
  "tests/typing/every-prefix.test.ts",
  "tests/properties/stating-the-truth.test.ts",
  "tests/diagram/labels-apart.test.ts",
  "tests/package/package.test.ts",
  "tests/builds/builds.test.ts",
  "tests/hostile/read-and-run.test.ts",
  "tests/protocol/half-typed.test.ts",
  "tests/examples/examples.test.ts",
];

/**
 * Begins with the files that each need a process of their own, and with those that share theirs apart: a shared process ends when the
 * next file does not share it. Then come the long ones, even in a fresh clone, where Vitest does not know yet how long each file takes.
 */
export class LongFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const placeOf = ({ moduleId, project }: TestSpecification) => {
      if (project.name === "alone") return -2;
      if (project.name === "apart") return -1;
      const place = long.findIndex((name) => moduleId.endsWith(`/${name}`));
      return place === -1 ? long.length : place;
    };
    return (await super.sort(files)).sort((one, other) => placeOf(one) - placeOf(other));
  }
}
