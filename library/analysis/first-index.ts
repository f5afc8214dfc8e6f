/**
 * The first index of a list for which a test holds, by bisection: the test must hold for every later item too. Returns the
 * length of the list if it holds for none.
 */
export function firstIndex<Item>(items: ArrayLike<Item>, test: (item: Item) => boolean): number {
  let [low, high] = [0, items.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (test(items[middle]!)) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** Whether one of some ascending numbers lies between two, both included. */
export function holdsOneOf(ascending: Int32Array, from: number, to: number): boolean {
  const first = firstIndex(ascending, (number) => number >= from);
  return first < ascending.length && ascending[first]! <= to;
}
