/**
 * A queue of numbers, least distance first, and of equal distances the least number: the order is total, so that a search gives the same
 * way on every machine. A binary heap of our own: 30 lines, and a library would still need this order.
 */
export class MinQueue {
  readonly #items: (readonly [distance: number, item: number])[] = [];

  push(distance: number, item: number): void {
    const items = this.#items;
    let at = items.length;
    items.push([distance, item]);
    while (at > 0) {
      const parent = (at - 1) >> 1;
      if (!comesBefore(items[at]!, items[parent]!)) return;
      [items[at], items[parent]] = [items[parent]!, items[at]!];
      at = parent;
    }
  }

  pop(): readonly [distance: number, item: number] | undefined {
    const items = this.#items;
    const first = items[0];
    const last = items.pop();
    if (!first || !last || items.length === 0) return first;
    items[0] = last;
    for (let at = 0; ; ) {
      let least = at;
      for (const child of [2 * at + 1, 2 * at + 2])
        if (child < items.length && comesBefore(items[child]!, items[least]!)) least = child;
      if (least === at) return first;
      [items[at], items[least]] = [items[least]!, items[at]!];
      at = least;
    }
  }
}

function comesBefore(one: readonly [number, number], other: readonly [number, number]): boolean {
  return one[0] < other[0] || (one[0] === other[0] && one[1] < other[1]);
}
