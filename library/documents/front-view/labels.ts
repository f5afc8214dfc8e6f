import type { Box } from "../diagram/drawing.ts";
import type { Point } from "../diagram/graph.ts";
import type { SvgWriter } from "../diagram/svg-writer.ts";
import { middleOf } from "../diagram/symbols/part-symbol.ts";
import { linesOfText, textWidth, type Weight } from "../diagram/text-measure.ts";
import { aroundPoints, contains, crosses, grown, nearestIn, overlaps, sidesOf } from "./boxes.ts";
import { ThingsNear } from "./things-near.ts";

/** Lines of text as one block. */
export interface Label {
  readonly lines: readonly LabelLine[];
  readonly width: number;
  readonly height: number;
}

interface LabelLine {
  readonly text: string;
  readonly weight: Weight;
  readonly sizePx: number;
}

export interface PlacedLabel {
  readonly label: Label;
  readonly box: Box;
  /** It reads from below to above. */
  readonly turned: boolean;
  /** From the label to the thing that it names, if it is outside of it. */
  readonly leader?: readonly [Point, Point];
}

/** A heading in bold and lines below it, none wider than `mostPx`; a word that is wider is cut. */
export function labelOf(heading: string, below: readonly string[], sizePx: number, mostPx = ledOutPx): Label {
  const lines = [
    ...linesOfText(heading, mostPx, sizePx, "bold").map(
      (text) => ({ text, weight: "bold", sizePx }) as const,
    ),
    ...below.flatMap((line) =>
      linesOfText(line, mostPx, sizePx - 1).map(
        (text) => ({ text, weight: "regular", sizePx: sizePx - 1 }) as const,
      ),
    ),
  ];
  return {
    lines,
    width: lines.reduce(
      (most, { text, sizePx: size, weight }) => Math.max(most, textWidth(text, size, weight)),
      0,
    ),
    height: lines.reduce((sum, line) => sum + leading(line), 0),
  };
}

const ledOutPx = 150;

/** The labels with which a thing is named within itself, the best one first. None of them cuts a word. */
export function labelsWithin(heading: string, below: readonly string[], roomPx: number): readonly Label[] {
  return [11, 10, 9, 8].flatMap((sizePx) => {
    if (heading.split(" ").some((word) => textWidth(word, sizePx, "bold") > roomPx)) return [];
    const label = labelOf(heading, below, sizePx, roomPx);
    return label.width <= roomPx ? [label] : [];
  });
}

function leading({ sizePx }: LabelLine): number {
  return sizePx + 2;
}

export function drawLabel(pen: SvgWriter, { label, box, turned, leader }: PlacedLabel): string {
  let down = 0;
  const texts = label.lines.map((line) => {
    const foot = down + line.sizePx * 0.85;
    down += leading(line);
    const style = { sizePx: line.sizePx, weight: line.weight } as const;
    if (turned)
      return pen.text({ x: box.x + foot, y: box.y + box.height / 2 }, line.text, {
        ...style,
        anchor: "middle",
        turned,
      });
    const isBeside = leader !== undefined;
    return pen.text({ x: isBeside ? box.x : box.x + box.width / 2, y: box.y + foot }, line.text, {
      ...style,
      anchor: isBeside ? "start" : "middle",
    });
  });
  return `${leader ? pen.line(leader, "fine") + pen.circle(leader[1], 1.3, "filled") : ""}${texts.join("")}`;
}

/** Finds room for labels: none covers a thing, another label, or the leader of another one. */
export class LabelPlacer {
  readonly #taken: Taken[] = [];
  readonly #takenNear = new ThingsNear<Taken>();
  readonly #leadersNear = new ThingsNear<readonly [Point, Point]>();

  /** Of the board, with the gap between words and the line there. */
  readonly #edges: readonly Box[];
  readonly #onOrBelow: Box;

  /** @param board The picture of the surface; labels without room on it are in a column on its right. */
  constructor(private readonly board: Box) {
    this.#edges = sidesOf(board).map((side) => grown(side, edgePx));
    this.#onOrBelow = { ...board, height: board.height + edgePx + belowPx };
  }

  /** @param owner The body that the box belongs to: its own label may be in it. */
  take(box: Box, owner?: number): void {
    const taken = { box, owner };
    this.#taken.push(taken);
    this.#takenNear.add(box, taken);
  }

  /**
   * The first of some places where a sign keeps clear of everything, or else of the edge of the board and of the signs, terminals and
   * words that are there; else the nearest such place to the last one. Undefined without a place.
   *
   * @param own Boxes on which the sign may be.
   */
  signPlace(places: readonly Point[], boxAt: (place: Point) => Box, own: readonly Box[]): Point | undefined {
    const others = this.#taken.filter(({ box }) => !own.includes(box));
    const all = [...sidesOf(this.board), ...others.map(({ box }) => box)];
    const words = [
      ...sidesOf(this.board),
      ...others.flatMap(({ box, owner }) => (owner === undefined ? [box] : [])),
    ];
    const isClear = (place: Point, boxes: readonly Box[]) =>
      !boxes.some((box) => overlaps(box, boxAt(place)));
    let place =
      places.find((one) => isClear(one, all)) ?? places.find((one) => isClear(one, words)) ?? places.at(-1);
    for (let away = 8; place && !isClear(place, words); away += 8)
      place =
        directions
          .map(([right, down]) => ({
            x: places.at(-1)!.x + right * away,
            y: places.at(-1)!.y + down * away,
          }))
          .find((one) => isClear(one, words)) ?? place;
    if (place) this.take(boxAt(place));
    return place;
  }

  /** Where no fine line may be: a neighbour whose edge is in line hides nothing of it. */
  get hiding(): readonly Box[] {
    return this.#taken.map(({ box, owner }) => grown(box, owner === undefined ? 1 : -1));
  }

  get taken(): readonly Box[] {
    return this.#taken.map(({ box }) => box);
  }

  /** The first label that has room within a box, as near to its middle as possible. */
  within(room: Box, labels: readonly Label[], owner: number, turned = false): PlacedLabel | undefined {
    const others = [
      ...this.#edges,
      ...this.#taken.flatMap((one) => (one.owner !== owner && !contains(one.box, room) ? [one.box] : [])),
    ];
    for (const label of labels) {
      const [width, height] = turned ? [label.height, label.width] : [label.width, label.height];
      const [freeX, freeY] = [room.width - width, room.height - height];
      if (freeX < 0 || freeY < 0) continue;
      for (const [right, down] of fromTheMiddle) {
        const box = { x: room.x + freeX * right, y: room.y + freeY * down, width, height };
        if (others.some((other) => overlaps(box, other, 1)) || this.#isUnderLeader(box)) continue;
        this.take(box);
        return { label, box, turned };
      }
    }
    return undefined;
  }

  /** Beside a thing, with a line that leads to it. There is always room. */
  beside(target: Box, label: Label): PlacedLabel {
    const placed = this.#near(target, label) ?? this.#inColumn(target, label);
    this.take(placed.box);
    if (placed.leader) this.#leadersNear.add(aroundPoints(placed.leader), placed.leader);
    return placed;
  }

  /** The place with the shortest leader; one that goes over lines counts as longer, and one over parts as longer still. */
  #near(target: Box, label: Label): PlacedLabel | undefined {
    let best: { readonly placed: PlacedLabel; readonly cost: number } | undefined;
    for (let away = 8; away <= farthestPx && away < (best?.cost ?? Number.POSITIVE_INFINITY); away += 8)
      for (const { x, y } of around(target, label, away)) {
        const box = { x, y, width: label.width, height: label.height };
        if (!this.#isWhole(box) || !this.#isFree(apart(box), 2)) continue;
        const leader = leaderTo(target, box);
        const cost = away + this.#crossingCost(target, leader);
        if (cost < (best?.cost ?? Number.POSITIVE_INFINITY))
          best = { placed: { label, box, turned: false, leader }, cost };
      }
    return best?.placed;
  }

  /** Infinite if a leader goes through words. */
  #crossingCost(target: Box, leader: readonly [Point, Point]): number {
    let most = 0;
    this.#takenNear.some(aroundPoints(leader), ({ box, owner }) => {
      if (overlaps(box, target) || !crosses(...leader, box)) return false;
      most = Math.max(most, owner === undefined ? Number.POSITIVE_INFINITY : owner < 0 ? 40 : 120);
      return most === Number.POSITIVE_INFINITY;
    });
    return most;
  }

  /** On the surface or below it; its edge goes through no words. */
  #isWhole(box: Box): boolean {
    return contains(this.#onOrBelow, box) && !this.#edges.some((edge) => overlaps(edge, box));
  }

  /** Right of the surface, where the leader goes through no words, if there is such a place. */
  #inColumn(target: Box, { width, height, ...label }: Label): PlacedLabel {
    const x = this.board.x + this.board.width + columnGapPx;
    const middleY = target.y + (target.height - height) / 2;
    const places: PlacedLabel[] = [];
    for (let step = 0; places.length < columnPlaces; step++)
      for (const y of [middleY + 4 * step, middleY - 4 * step]) {
        const box = { x, y, width, height };
        if (y < this.board.y || !this.#isFree(box, 3)) continue;
        const leader = leaderTo(target, box);
        const placed = { label: { width, height, ...label }, box, turned: false, leader };
        if (this.#crossingCost(target, leader) < Number.POSITIVE_INFINITY) return placed;
        places.push(placed);
      }
    return places[0]!;
  }

  #isFree(box: Box, gap: number): boolean {
    const isTaken = this.#takenNear.some(grown(box, gap), (other) => overlaps(box, other.box, gap));
    return !isTaken && !this.#isUnderLeader(box);
  }

  #isUnderLeader(box: Box): boolean {
    return this.#leadersNear.some(box, (leader) => crosses(...leader, box));
  }
}

interface Taken {
  readonly box: Box;
  readonly owner: number | undefined;
}

/** No body has it; a leader may cross a conductor, and the outline of air. */
export const lineOwner = Number.MIN_SAFE_INTEGER;

const farthestPx = 360;
/** How many places in the column are tried. */
const columnPlaces = 60;
const columnGapPx = 24;
const edgePx = 3;
const belowPx = 120;

/** With the gap between words side by side: at less of it they read as one line. */
function apart({ x, y, width, height }: Box): Box {
  return { x: x - 5, y, width: width + 10, height };
}

const directions = [
  [1, 0],
  [-1, 0],
  [0, -1],
  [0, 1],
  [1, -1],
  [1, 1],
  [-1, -1],
  [-1, 1],
] as const;

/** Places for a label at a distance around a thing, those beside its middle first. */
function around(target: Box, { width, height }: Label, away: number): readonly Point[] {
  const [left, right] = [target.x - away - width, target.x + target.width + away];
  const [above, below] = [target.y - away - height, target.y + target.height + away];
  const middleX = target.x + (target.width - width) / 2;
  const middleY = target.y + (target.height - height) / 2;
  const [mostX, mostY] = [(right - left) / 2, (below - above) / 2];
  const places: Point[] = [];
  for (let aside = 0; aside <= Math.max(mostX, mostY); aside += 12)
    for (const by of aside === 0 ? [0] : [aside, -aside]) {
      if (aside <= mostY) places.push({ x: right, y: middleY + by }, { x: left, y: middleY + by });
      if (aside <= mostX) places.push({ x: middleX + by, y: below }, { x: middleX + by, y: above });
    }
  return places;
}

/** Shares of the free room left and above of a label, the middle first. */
const fromTheMiddle = [0.5, 0.25, 0.75, 0.1, 0.9, 0, 1].flatMap((down) =>
  [0.5, 0.25, 0.75, 0, 1].map((right) => [right, down] as const),
);

/** From a label to a point just within the thing. */
function leaderTo(target: Box, label: Box): readonly [Point, Point] {
  const inset = Math.min(4, target.width / 2, target.height / 2);
  const inner = {
    ...{ x: target.x + inset, y: target.y + inset },
    width: target.width - 2 * inset,
    height: target.height - 2 * inset,
  };
  const middle = middleOf(label);
  const end = nearestIn(inner, middle);
  return [nearestIn(grown(label, 2), end), end];
}
