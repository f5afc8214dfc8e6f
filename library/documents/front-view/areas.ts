import type { Box } from "../diagram/drawing.ts";
import type { Stroke } from "../diagram/svg-writer.ts";
import { commonBox, grown, without } from "./boxes.ts";
import type { FrontDrawing } from "./front-drawing.ts";
import { drawLabel, labelOf, labelsWithin, lineOwner, type PlacedLabel } from "./labels.ts";
import { lengthOnTape } from "./lengths-on-tape.ts";

/** A rectangle of the surface that is not a part. */
interface Area {
  readonly outline: Box;
  readonly name: string;
  readonly words: readonly string[];
  readonly stroke: Stroke;
  readonly fill: "slanted" | "dotted" | "level";
}

/** Areas of the surface, and the water in the bilge: hatchings under the parts, outlines and names over them. */
export function drawAreas(
  drawing: FrontDrawing,
  bodies: readonly Box[],
  bilge: BilgeWater | undefined,
): { readonly under: string; readonly over: string } {
  const { pen, scale, board, placer } = drawing;
  const drawn = areasOf(drawing).flatMap(({ outline, name, words, stroke, fill }) => {
    const box = commonBox(scale.box(outline), board);
    if (!box) return [];
    const label = areaLabel(drawing, box, name, words);
    placer.take(box, areaOwner);
    const hatched = without(box, [...bodies, grown(label.box, 2)]);
    return [{ under: pen.hatched(hatched, fill), over: pen.rect(box, stroke) + drawLabel(pen, label) }];
  });
  return {
    under: drawn.map(({ under }) => under).join(""),
    over: drawn.map(({ over }) => over).join("") + (bilge ? bilgeWater(drawing, bilge) : ""),
  };
}

/** The highest water in the bilge, on an upright surface. */
interface BilgeWater {
  readonly mm: number;
  readonly line: Box;
}

/** Labels keep clear of its line. */
export function bilgeWaterShape({ scale, board, placer, content }: FrontDrawing): BilgeWater | undefined {
  const { bilgeWaterMm: mm, orientation, height } = content.surface;
  if (mm === undefined || orientation !== "vertical" || mm >= height) return undefined;
  const line = { x: board.x, y: scale.px(height - mm), width: board.width, height: 0 };
  placer.take(grown(line, 1), lineOwner);
  return { mm, line };
}

/** No body has it: areas yield to everything. */
const areaOwner = Number.NEGATIVE_INFINITY;

/** Fixtures, places that are kept free, and those out of reach. */
function areasOf({ content, unit }: FrontDrawing): readonly Area[] {
  const { fixtures, keepFree, outOfReach } = content.surface;
  return [
    ...fixtures.map((one): Area => {
      const kind = one.name.includes(one.fixture) ? [] : [one.fixture];
      const distance =
        one.distanceMm === undefined ? [] : [`keep ${lengthOnTape(one.distanceMm, unit)} ${unit} away`];
      return {
        ...{ outline: one, name: one.name, words: [...kind, ...distance] },
        ...{ stroke: "chain", fill: "level" },
      };
    }),
    ...keepFree.map(
      (one): Area => ({
        ...{ outline: one, name: one.name, words: one.name.includes("kept free") ? [] : ["keep free"] },
        ...{ stroke: "thin", fill: "slanted" },
      }),
    ),
    ...outOfReach.map(
      (one): Area => ({
        ...{ outline: one, name: "out of reach", words: [], stroke: "dotted", fill: "dotted" },
      }),
    ),
  ];
}

function areaLabel({ placer }: FrontDrawing, box: Box, name: string, words: readonly string[]): PlacedLabel {
  const room = grown(box, -3);
  return (
    placer.within(room, labelsWithin(name, words, room.width), areaOwner) ??
    (room.height > room.width
      ? placer.within(room, labelsWithin(name, words, room.height), areaOwner, true)
      : undefined) ??
    placer.beside(box, labelOf(name, words, 10))
  );
}

function bilgeWater({ pen, placer, unit }: FrontDrawing, { line, mm }: BilgeWater): string {
  const { x, y, width } = line;
  const drawn = pen.line(
    [
      { x, y },
      { x: x + width, y },
    ],
    "chain",
  );
  const words = `bilge water ${lengthOnTape(mm, unit)} ${unit}`;
  return drawn + drawLabel(pen, placer.beside(line, labelOf(words, [], 10)));
}
