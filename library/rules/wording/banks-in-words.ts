import type { BankEnergy } from "../../analysis/energy/energy-result.ts";

/** "house + spare", "upper, left and 3 more batteries". Names are as the plan gives them. */
export function banksInWords({ batteries }: Pick<BankEnergy, "batteries">): string {
  const names = batteries.map(({ name }) => name);
  const [first = ""] = names;
  return names.length <= 2 ? names.join(" + ") : `${first} and ${names.length - 1} more batteries`;
}
