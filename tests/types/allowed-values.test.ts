import type { AwgSize, FuseFamily, InsulationC, LoadPurpose, Mm2Size, RuleId, Termination } from "loomwright";
import { expect, expectTypeOf, it } from "vitest";
import { acceptableRules } from "../../library/model/acceptable-rules.ts";
import type {
  awgSizes,
  fuseFamilies,
  insulationRatingsC,
  loadPurposes,
  mm2Sizes,
  terminations,
} from "../../library/model/allowed-values.ts";
import { rules } from "../../library/rules/registry.ts";

it("the lists behind the check hold what the types allow", () => {
  // Checked by the compiler.
  expectTypeOf<(typeof awgSizes)[number]>().toEqualTypeOf<AwgSize>();
  expectTypeOf<(typeof mm2Sizes)[number]>().toEqualTypeOf<Mm2Size>();
  expectTypeOf<(typeof insulationRatingsC)[number]>().toEqualTypeOf<InsulationC>();
  expectTypeOf<(typeof fuseFamilies)[number]>().toEqualTypeOf<FuseFamily>();
  expectTypeOf<(typeof loadPurposes)[number]>().toEqualTypeOf<LoadPurpose>();
  expectTypeOf<(typeof terminations)[number]>().toEqualTypeOf<Termination>();
  expectTypeOf<(typeof acceptableRules)[number]>().toEqualTypeOf<RuleId>();
});

it("exactly the rules that can be accepted may be named in a plan", () => {
  const acceptable = rules.filter((rule) => rule.acceptable).map(({ id }) => id);
  expect([...acceptableRules].sort()).toEqual(acceptable.sort());
});
