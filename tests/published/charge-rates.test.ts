import { expect, test } from "vitest";
import { usualChargeRates } from "../../library/standards/usual-charge-rates.ts";
import { type Confirmed, expectSameCells, published } from "./published-data.ts";

interface ChargeRates {
  readonly confirmed: Confirmed;
  readonly rows: readonly { readonly chemistry: string; readonly bulk_rate_C: readonly [number, number] }[];
}

// Recalled, not seen: this compares two copies and proves nothing.
test("usual charging rates (unconfirmed figures: two copies agree, neither was checked)", () => {
  const { rows, confirmed } = published<ChargeRates>("charge-rates.json");
  const least = new Map(rows.map(({ chemistry, bulk_rate_C: [rate] }) => [chemistry, rate]));
  const greatest = new Map(rows.map(({ chemistry, bulk_rate_C: [, rate] }) => [chemistry, rate]));
  expectSameCells(new Map(Object.entries(usualChargeRates.leastPerAh)), least, 4);
  expectSameCells(new Map(Object.entries(usualChargeRates.greatestPerAh)), greatest, 4);
  expect(usualChargeRates.source.confirmed).toBe(confirmed);
});
