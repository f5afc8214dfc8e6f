import type { Surface } from "../../model/placement/layout.ts";
import type { Box } from "../diagram/drawing.ts";
import type { Point } from "../diagram/graph.ts";

/** How large a surface is drawn. */
export interface Scale {
  /** 1:5 is 5. */
  readonly oneTo: number;
  readonly pxPerMm: number;
  px(mm: number): number;
  point(at: Point): Point;
  box(of: Box): Box;
}

/** The largest usual scale (ISO 5455, from memory) at which the surface stays within {@link mostPx}. */
export function scaleOf({ width, height }: Pick<Surface, "width" | "height">): Scale {
  const oneTo =
    usualScales.find((one) => {
      const px = pxPerMmAt(one);
      return width * px <= mostPx.width && height * px <= mostPx.height;
    }) ?? usualScales.at(-1)!;
  return scaleAt(oneTo);
}

function scaleAt(oneTo: number): Scale {
  const pxPerMm = pxPerMmAt(oneTo);
  const px = (mm: number) => mm * pxPerMm;
  return {
    ...{ oneTo, pxPerMm, px },
    point: ({ x, y }) => ({ x: px(x), y: px(y) }),
    box: ({ x, y, width, height }) => ({ x: px(x), y: px(y), width: px(width), height: px(height) }),
  };
}

const usualScales = [1, 2, 5, 10, 20, 50, 100];

/** 1:1, for templates. */
export const trueSize = scaleAt(1);

/** Of the picture of a surface: with its dimensions it fits on A3 lying. */
const mostPx = { width: 1_300, height: 850 };

/** An SVG has 96 px an inch. */
function pxPerMmAt(oneTo: number): number {
  return 96 / 25.4 / oneTo;
}
