import type { Judgement } from "../../judge.ts";
import { counted } from "../../rules/wording/format-number.ts";
import type { Point } from "../diagram/graph.ts";
import { notKeptYet } from "../schedules/cells.ts";
import { bilgeWaterShape, drawAreas } from "./areas.ts";
import { type BodyShape, bodyLabel, bodyShape, drawBody } from "./bodies.ts";
import { type ChannelShape, channelEdges, channelLabel, channelShape, drawChannel } from "./channels.ts";
import { conductorNumbers, conductorShapes, drawConductor } from "./conductors.ts";
import { dimensions, type Marked } from "./dimensions.ts";
import { FrontDrawing } from "./front-drawing.ts";
import { frontSheet } from "./front-sheet.ts";
import type { FrontView, FrontViewOptions } from "./front-view.ts";
import { lengthOnTape, sizeOnTape } from "./lengths-on-tape.ts";
import { drawOpening, type OpeningShape, openingShape } from "./openings.ts";
import { trueSize } from "./scale.ts";
import { drawSharedLines, type SharedLine, sharedLines } from "./shared-lines.ts";
import { type SurfaceContent, surfaceContent } from "./surface-content.ts";

/** The front views of all surfaces of a plan, in its order; none if it has no surface. */
export function drawFrontViews(plan: Judgement, options: FrontViewOptions): readonly FrontView[] {
  const surfaces = plan.placement?.layout.surfaces ?? [];
  return surfaces.flatMap((_, surface) => {
    const sheet = surfaces.length > 1 ? { sheet: { number: surface + 1, of: surfaces.length } } : {};
    return drawFrontView(plan, surface, { ...sheet, ...options }) ?? [];
  });
}

/** The front view of one surface, named by its index in the layout; undefined if the plan has no such surface. */
export function drawFrontView(
  plan: Judgement,
  surface: number,
  options: FrontViewOptions,
): FrontView | undefined {
  const content = surfaceContent(plan, surface);
  return content && sheetOf(new FrontDrawing(plan, content, options));
}

/**
 * All surfaces in true size, to be laid on the boards: without dimensions and findings, each part with its place.
 *
 * @param title of a plan that names no build: its file, say.
 */
export function drawTemplates(plan: Judgement, title: string): readonly Template[] {
  const surfaces = plan.placement?.layout.surfaces ?? [];
  return surfaces.flatMap((_, surface) => {
    const content = surfaceContent(plan, surface);
    return content ? [templateOf(new FrontDrawing(plan, content, { medium: "paper", title }, trueSize))] : [];
  });
}

/** A surface in true size: 96 px an inch. */
export interface Template {
  /** The name of the plan. */
  readonly plan: string;
  /** Index in the surfaces of the layout. */
  readonly surface: number;
  readonly surfaceName: string;
  readonly title: string;
  readonly description: string;
  /** From the top left corner of the surface. */
  readonly drawn: string;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly content: SurfaceContent;
}

function sheetOf(drawing: FrontDrawing): FrontView {
  const { content, options, pen, found, board, unit, scale } = drawing;
  const { surface } = content;
  const onSurface = found.ofRecord(surface.record);
  const words = surfaceWords(drawing);
  const edge = pen.group(
    drawing.announce({
      ...{ kind: "surface", name: surface.name, record: surface.record, sentence: `${words}.` },
      ...{ box: board, found: onSurface },
    }),
    pen.rect(board, "edge"),
  );
  const pieces = piecesOf(drawing);
  const along = dimensionsOf(drawing, pieces);
  const unplaced = content.unplaced.map(({ name, record }) => {
    const here = found.ofRecord(record);
    const sentence = `${name} has no place yet.`;
    const group = drawing.announce({ kind: "body", name, record, sentence, found: here });
    return { name, mark: drawing.markOf(here), words: group };
  });
  const { bodies, channels, openings } = pieces;
  const spots = bodies.flatMap(({ terminals }) => terminals.map(({ spot }) => spot));
  return frontSheet(pen, {
    drawn: pieces.areas.under + pieces.channelEdges + edge + pieces.drawn + along.svg,
    ...{ options, content, scale, board, unplaced, along, unit },
    ...{ columnPx: drawing.columnPx, lowestPx: drawing.lowestPx, elements: drawing.elements },
    heading: `${surface.name}: ${words}`,
    surfaceMark: drawing.markOf(onSurface),
    plan: drawing.planName,
    notices: noticesOf(drawing),
    signs: {
      marks: drawing.marks,
      air: bodies.some(({ here }) => Object.keys(here.body.air).length > 0),
      terminals: spots.some(({ leaves }) => leaves !== "front"),
      frontTerminals: spots.some(({ leaves }) => leaves === "front"),
      channels: channels.length > 0,
      openings: openings.length > 0,
      conductors: options.conductors === true && content.leads.length > 0,
      shared: pieces.shared.length > 0,
    },
  });
}

function templateOf(drawing: FrontDrawing): Template {
  const { content, pen, board, planName } = drawing;
  const { surface } = content;
  const pieces = piecesOf(drawing);
  return {
    plan: planName,
    surface: content.index,
    surfaceName: surface.name,
    title: `${planName}, drilling template of ${surface.name}`,
    description: `${surface.name} in true size: ${surfaceWords(drawing)}, with ${counted(content.bodies.length, "part")}.`,
    drawn: pieces.channelEdges + pen.rect(board, "edge") + pieces.drawn,
    widthPx: board.width + drawing.columnPx,
    heightPx: drawing.lowestPx,
    content,
  };
}

interface Pieces {
  readonly bodies: readonly BodyShape[];
  readonly channels: readonly ChannelShape[];
  readonly openings: readonly OpeningShape[];
  readonly areas: { readonly under: string };
  readonly shared: readonly SharedLine[];
  readonly channelEdges: string;
  /** Everything over the edges of the channels and of the surface. */
  readonly drawn: string;
}

/** Everything on the surface. The shapes take their room first; then the labels find theirs, those within a thing before the rest. */
function piecesOf(drawing: FrontDrawing): Pieces {
  const { content, options } = drawing;
  const channels = content.channels.map((channel) => channelShape(drawing, channel));
  const conductors = options.conductors ? conductorShapes(drawing, channels) : [];
  const bodies = content.bodies.map((body) => bodyShape(drawing, body));
  const openings = content.openings.map((opening) => openingShape(drawing, opening));
  const bilge = bilgeWaterShape(drawing);
  const marks = drawing.drawMarks();
  const bodyLabels = bodies.map((body) => bodyLabel(drawing, body));
  const outlines = bodies.map(({ box }) => box);
  const areas = drawAreas(drawing, outlines, bilge);
  const channelLabels = channels.map((channel) => channelLabel(drawing, channel));
  const holes = openings.map((opening) => drawOpening(drawing, opening));
  const parts = bodies.map((body, index) => drawBody(drawing, body, bodyLabels[index]));
  const tubes = channels.map((channel, index) => drawChannel(drawing, channel, channelLabels[index]!));
  const numbers = conductorNumbers(drawing, conductors);
  const wires = conductors.map((conductor, index) => drawConductor(drawing, conductor, numbers[index]!));
  const shared = sharedLines(conductors.map(({ here, lines }) => ({ lines, wires: here.wires })));
  const bands = drawSharedLines(drawing, shared, channels);
  return {
    ...{ bodies, channels, openings, areas, shared },
    channelEdges: channels.map((channel) => channelEdges(drawing, channel)).join(""),
    drawn: [...tubes, ...holes, ...parts, bands, ...wires, areas.over, marks].join(""),
  };
}

/** Running dimensions to the corners of parts, to openings and to the bends of channels. */
function dimensionsOf(
  { pen, scale, board, unit, content, placer }: FrontDrawing,
  { bodies, channels, openings }: Pieces,
) {
  const points: readonly (readonly [onSurface: Point, drawn: Point])[] = [
    ...bodies.map(({ here, box }) => [here.place.outline, box] as const),
    ...openings.map(({ opening, at }) => [opening.at, at] as const),
    ...channels.flatMap(({ here, points: drawn }) =>
      here.path.map((at, index) => [at, drawn[index]!] as const),
    ),
  ];
  const marked = (axis: "x" | "y", across: "x" | "y"): readonly Marked[] =>
    points.map(([at, drawn]) => ({
      at: scale.px(at[axis]),
      far: drawn[across],
      words: lengthOnTape(at[axis], unit),
    }));
  const { width, height } = content.surface;
  const taken = placer.hiding;
  const whole = (mm: number) => lengthOnTape(mm, unit);
  const top = dimensions(pen, "top", board.width, whole(width), marked("x", "y"), taken);
  const left = dimensions(pen, "left", board.height, whole(height), marked("y", "x"), taken);
  return { svg: top.svg + left.svg, topPx: top.reach, leftPx: left.reach };
}

/** Everything that is left out of the picture or unknown. Ask last: findings that no thing has taken are counted. */
function noticesOf({ plan, content, found, options }: FrontDrawing): readonly string[] {
  const { layout, ways } = plan.placement!;
  const noWay = layout.leads.filter(({ index }) => ways[index]!.state !== "found");
  const open = found.left().filter(({ accepted }) => !accepted).length;
  const areNumbered = options.conductors === true && options.numbers !== undefined;
  const isNotKept =
    areNumbered &&
    content.leads.some(({ lead: { record, role } }) => options.numbers!(record, role)?.endsWith("*"));
  const sizeless = content.bodies.filter(({ body }) => !body.size).map(({ body }) => body.name);
  return [
    ...(plan.model.networkUnread
      ? ["A value of the network was refused: parts and conductors may be missing here."]
      : []),
    ...(noWay.length > 0
      ? [
          `${counted(noWay.length, "conductor")} of the plan ${noWay.length === 1 ? "has" : "have"} no way that is known, and ${noWay.length === 1 ? "is" : "are"} counted in no channel.`,
        ]
      : []),
    ...(isNotKept ? [notKeptYet] : []),
    ...(sizeless.length > 0 ? [`Without a stated size, shown as a point: ${sizeless.join(", ")}.`] : []),
    ...(open > 0
      ? [
          `${counted(open, "finding")} about conductors, other surfaces or the plan ${open === 1 ? "is" : "are"} not marked here: see the report.`,
        ]
      : []),
  ];
}

function surfaceWords({ content, unit }: FrontDrawing): string {
  const { orientation, width, height } = content.surface;
  const seen =
    {
      vertical: "vertical, its top edge is up",
      floor: "floor, seen from above",
      ceiling: "ceiling, seen from below",
    }[orientation] ?? orientation;
  return `${seen}, ${sizeOnTape({ width, height }, unit)} ${unit}`;
}
