import type { Schematic } from "./schematic.ts";

/**
 * The parts in the order an eye meets them along the lines: from the first source of the plan outwards, each branch to its end
 * before the next, in the order of the plan. Drawn in this order from top to bottom, few lines cross; and a part added later does
 * not reorder the others.
 */
export function readingOrder({ parts, lines }: Schematic): readonly number[] {
  const onwards: number[][] = parts.map(() => []);
  const entered = new Set<number>();
  for (const { from, to, forward } of lines) {
    const [first, then] = forward ? [from.part, to.part] : [to.part, from.part];
    onwards[first]!.push(then);
    if (first !== then) entered.add(then);
  }
  const order: number[] = [];
  const seen = new Set<number>();
  const follow = (start: number) => {
    // An explicit stack instead of recursion: a chain of parts may be as long as a plan.
    const ahead = [start];
    for (let part = ahead.pop(); part !== undefined; part = ahead.pop()) {
      if (seen.has(part)) continue;
      seen.add(part);
      order.push(part);
      for (const next of onwards[part]!.toReversed()) ahead.push(next);
    }
  };
  parts.forEach((_, part) => {
    if (!entered.has(part)) follow(part);
  });
  // The remaining parts are in circles.
  parts.forEach((_, part) => {
    follow(part);
  });
  return order;
}
