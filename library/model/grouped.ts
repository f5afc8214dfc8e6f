const threeDecimals = new Intl.NumberFormat("en-US", { maximumFractionDigits: 3 });

/** Thousands separated, and at most three decimals: "1,200", "0.125". */
export function grouped(value: number): string {
  return threeDecimals.format(value);
}
