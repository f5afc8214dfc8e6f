import type { Severity } from "../../rules/finding.ts";
import type { Point } from "./graph.ts";
import type { FoundHere } from "./schematic.ts";
import type { SvgWriter } from "./svg-writer.ts";

/** The mark of a place: its worst open severity, or that all its findings are accepted. */
export type MarkKind = Severity | "accepted";

/** Width and height of a mark. */
export const markPx = 14;

export function worstOf(found: readonly FoundHere[]): MarkKind | undefined {
  const open = found.filter(({ accepted }) => !accepted).map(({ severity }) => severity);
  return (
    bySeverity.find((severity) => open.includes(severity)) ?? (found.length > 0 ? "accepted" : undefined)
  );
}

/** Each kind has its own shape and letter, to be recognised without colours. */
export function drawMark(pen: SvgWriter, kind: MarkKind, { x, y }: Point): string {
  const { letter, corners, sizePx, down } = looks[kind];
  const half = markPx / 2;
  const shape =
    corners.length === 0
      ? pen.circle({ x, y }, half - 0.5, "empty", "mark")
      : pen.line(
          [...corners, ...corners.slice(0, 2)].map(([dx, dy]) => ({ x: x + dx * half, y: y + dy * half })),
          "mark",
        );
  return shape + pen.text({ x, y: y + down }, letter, { sizePx, weight: "bold", anchor: "middle" });
}

export const markWords: Readonly<Record<MarkKind, string>> = {
  error: "error",
  warning: "warning",
  info: "worth knowing",
  hint: "hint",
  accepted: "accepted by the builder",
};

export const bySeverity: readonly Severity[] = ["error", "warning", "info", "hint"];

interface Look {
  readonly letter: string;
  /** Of the outline, in halves of the size around the middle; none for a circle. */
  readonly corners: readonly (readonly [number, number])[];
  readonly sizePx: number;
  /** From the middle down to the foot of the letter. */
  readonly down: number;
}

const cut = 0.42;

const looks: Readonly<Record<MarkKind, Look>> = {
  error: {
    letter: "E",
    corners: [
      [-cut, -1],
      [cut, -1],
      [1, -cut],
      [1, cut],
      [cut, 1],
      [-cut, 1],
      [-1, cut],
      [-1, -cut],
    ],
    sizePx: 9,
    down: 3.3,
  },
  warning: {
    // No letter, as on a road sign: in the middle of a triangle there is no room for one.
    letter: "!",
    corners: [
      [0, -1.15],
      [1.15, 0.95],
      [-1.15, 0.95],
    ],
    sizePx: 8,
    down: 4.5,
  },
  info: { letter: "i", corners: [], sizePx: 9, down: 3.3 },
  hint: {
    letter: "h",
    corners: [
      [-0.9, -0.9],
      [0.9, -0.9],
      [0.9, 0.9],
      [-0.9, 0.9],
    ],
    sizePx: 9,
    down: 3.3,
  },
  accepted: {
    letter: "a",
    corners: [
      [0, -1.1],
      [1.1, 0],
      [0, 1.1],
      [-1.1, 0],
    ],
    sizePx: 7.5,
    down: 2.7,
  },
};
