import { expect, test } from "vitest";
import { terminalStuds } from "../../library/standards/terminal-studs.ts";
import { type Confirmed, expectSameCells, published } from "./published-data.ts";

interface Studs {
  readonly confirmed: Confirmed;
  readonly rows: readonly { readonly nominal: string; readonly hole_mm: number }[];
}

// Recalled, not seen: this compares two copies and proves nothing.
test("holes of ring terminals (unconfirmed figures: two copies agree, neither was checked)", () => {
  const { rows, confirmed } = published<Studs>("terminal-studs.json");
  const printed = new Map(
    rows.flatMap(({ nominal, hole_mm }) => {
      const [, inch, metric] = /^(.*) \((.*)\)$/.exec(nominal) as unknown as [string, string, string];
      return [
        [inch, hole_mm],
        [metric, hole_mm],
      ] as const;
    }),
  );
  expectSameCells(new Map(Object.entries(terminalStuds.holeMm)), printed, 14);
  expect(terminalStuds.source.confirmed).toBe(confirmed);
});
