import { expect, test } from "vitest";
import { conductorColours } from "../../library/standards/conductor-colours.ts";
import { type Confirmed, published } from "./published-data.ts";

interface Colours {
  readonly confirmed: Confirmed;
  readonly dc_positive: string;
  readonly dc_negative: readonly string[];
  readonly bonding: readonly string[];
}

// ISO 10133, identification of conductors. Recalled, not seen: this compares two copies and does not verify the standard.
test("colours of conductors (unconfirmed: two copies agree, neither was checked)", () => {
  const printed = published<Colours>("conductor-colours.json");
  const { positive, negative, bonding, source } = conductorColours;
  expect(printed.dc_positive.split(",")[0]).toBe(positive);
  expect([negative, bonding]).toEqual([printed.dc_negative, printed.bonding]);
  expect(source.confirmed).toBe(printed.confirmed);
});
