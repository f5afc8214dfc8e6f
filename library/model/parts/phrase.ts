import type { AmountUnit } from "../property-table.ts";

/** Text with quantities in it. The rooms above format the numbers. */
export type Phrase = readonly (string | Quantity)[];

export interface Quantity {
  readonly value: number;
  readonly unit: AmountUnit;
  /** It is calculated, and shown with three figures. Without this, as the plan states it. */
  readonly rounded?: true;
}
