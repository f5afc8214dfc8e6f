/** An amount in the build's currency, as money is written: "1,234.50". */
export function amount(price: number): string {
  return money.format(price);
}

/** "Sum of the stated prices: 1,234.50 EUR; 3 of 12 lines have none and are not in it." */
export function sumInWords(prices: readonly (number | undefined)[], currency: string): string {
  const stated = prices.filter((price) => price !== undefined);
  const sum = stated.reduce((total, price) => total + price, 0);
  const missing = prices.length - stated.length;
  const rest = missing > 0 ? `; ${missing} of ${prices.length} lines have none and are not in it` : "";
  return `Sum of the prices stated in the plan: ${[amount(sum), currency].filter(Boolean).join(" ")}${rest}.`;
}

/** "Price, EUR" */
export function priceTitle(title: string, currency: string): string {
  return currency ? `${title}, ${currency}` : title;
}

const money = new Intl.NumberFormat("en-US", { minimumFractionDigits: 2, maximumFractionDigits: 2 });
