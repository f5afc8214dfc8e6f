import type { Box } from "../diagram/drawing.ts";

/** Things of a picture by the squares that their boxes touch: a question about one place looks at those near it alone. */
export class ThingsNear<Thing> {
  readonly #squares = new Map<number, Thing[]>();

  add(box: Box, thing: Thing): void {
    someSquare(box, (square) => {
      const there = this.#squares.get(square);
      if (there) there.push(thing);
      else this.#squares.set(square, [thing]);
      return false;
    });
  }

  /** Whether one of those that may touch a box matches; a thing in several squares may be asked for more than once. */
  some(box: Box, matches: (thing: Thing) => boolean): boolean {
    return someSquare(box, (square) => this.#squares.get(square)?.some(matches) ?? false);
  }
}

const squarePx = 64;
/** More than there are squares from the top of a picture to its bottom. */
const rows = 2 ** 20;

function someSquare({ x, y, width, height }: Box, matches: (square: number) => boolean): boolean {
  const [firstRow, lastRow] = [Math.floor(y / squarePx), Math.floor((y + height) / squarePx)];
  const lastColumn = Math.floor((x + width) / squarePx);
  for (let column = Math.floor(x / squarePx); column <= lastColumn; column++)
    for (let row = firstRow; row <= lastRow; row++) if (matches(column * rows + row)) return true;
  return false;
}
