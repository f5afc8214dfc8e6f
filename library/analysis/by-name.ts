/** Compares by name: an order that does not follow from the order of the plan's statements. */
export function byName(
  { name: one }: { readonly name: string },
  { name: other }: { readonly name: string },
): number {
  return one < other ? -1 : one > other ? 1 : 0;
}
