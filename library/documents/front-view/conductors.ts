import type { Judgement } from "../../judge.ts";
import type { Point } from "../diagram/graph.ts";
import type { FoundHere } from "../diagram/schematic.ts";
import type { Stroke } from "../diagram/svg-writer.ts";
import { aroundPoints, grown } from "./boxes.ts";
import type { ChannelShape } from "./channels.ts";
import type { FrontDrawing } from "./front-drawing.ts";
import { drawLabel, labelOf, lineOwner, type PlacedLabel } from "./labels.ts";
import { labelBeside } from "./labels-beside.ts";
import { type LanePiece, laneCount, lanePx, lineInLanes, piecesOf, placeOnPath } from "./lanes.ts";
import { piecesOfLine, placesAlong, stepsAlong } from "./lines.ts";
import { nearestPx } from "./shared-lines.ts";
import type { LeadHere } from "./surface-content.ts";

/** A conductor along its way. */
export interface ConductorShape {
  readonly here: LeadHere;
  /** More than one if it leaves the surface in between. */
  readonly lines: readonly (readonly Point[])[];
  readonly found: readonly FoundHere[];
}

/** Side by side in their channels, or on one line if they would be too near to each other; labels keep clear of them. */
export function conductorShapes(
  drawing: FrontDrawing,
  channels: readonly ChannelShape[],
): readonly ConductorShape[] {
  const { content, found, placer } = drawing;
  const lanes = new Map(
    channels.map(({ here, widthPx, lanes }) => {
      const count = laneCount(lanes);
      const room = Math.min(lanePx, (widthPx - 3) / Math.max(1, count));
      const gap = room < nearestPx ? 0 : room;
      const besides = [...lanes].map(([lead, lane]) => [lead, (lane - (count - 1) / 2) * gap] as const);
      return [here.index, { course: here.path, besides: new Map(besides) }] as const;
    }),
  );
  return content.leads.map((here) => {
    const { lead, way } = here;
    const lines: LanePiece[][] = [[]];
    for (const { channel, surface, path } of way.stretches) {
      if (surface !== content.index || !path) {
        if (lines.at(-1)!.length > 0) lines.push([]);
        continue;
      }
      const { course, besides } = (channel === undefined ? undefined : lanes.get(channel)) ?? {};
      const beside = besides?.get(lead.index) ?? 0;
      const isForward = !course || placeOnPath(course, path[0]!) <= placeOnPath(course, path.at(-1)!);
      const drawn = path.map((point) => drawing.scale.point(point));
      lines.at(-1)!.push(...piecesOf(drawn, isForward ? beside : -beside));
    }
    const drawn = lines.filter((line) => line.length > 0).map(lineInLanes);
    const boxes = drawn.flatMap(piecesOfLine).map((piece) => grown(aroundPoints(piece), 1));
    for (const box of boxes) placer.take(box, lineOwner);
    const foundHere = found.ofConductor(lead.record, lead.role);
    drawing.mark(foundHere, placesAlong(drawn), boxes);
    return { here, lines: drawn, found: foundHere };
  });
}

/**
 * The numbers of conductors beside both ends, by the index of the conductor. Those that find no room there share a place for each
 * terminal, led out of the crowd.
 */
export function conductorNumbers(
  drawing: FrontDrawing,
  conductors: readonly ConductorShape[],
): readonly (readonly PlacedLabel[])[] {
  const placed = conductors.map((): PlacedLabel[] => []);
  const crowded = new Map<string, Numbered[]>();
  for (const end of conductors.flatMap((shape, index) => numberedEnds(drawing, shape, index))) {
    const label = numberAt(drawing, end);
    if (label) placed[end.index]!.push(label);
    else {
      const { x, y } = end.line[0]!;
      const place = `${Math.round(x)} ${Math.round(y)}`;
      crowded.set(place, [...(crowded.get(place) ?? []), end]);
    }
  }
  for (const ends of crowded.values())
    for (const [at, label] of ledOut(drawing, ends).entries()) placed[ends[at]!.index]!.push(label);
  return placed;
}

/** The end of a conductor that its number is to be beside. */
interface Numbered {
  readonly index: number;
  /** From that end on. */
  readonly line: readonly Point[];
  readonly number: string;
}

function numberedEnds(
  { options, content }: FrontDrawing,
  { here, lines }: ConductorShape,
  index: number,
): readonly Numbered[] {
  const { lead, way } = here;
  const number = options.numbers?.(lead.record, lead.role) ?? "";
  const [first, last] = [lines[0], lines.at(-1)];
  if (number === "" || !first || !last) return [];
  const isHere = (stretch: (typeof way.stretches)[number] | undefined) => stretch?.surface === content.index;
  return [
    ...(isHere(way.stretches[0]) ? [{ index, number, line: first }] : []),
    ...(isHere(way.stretches.at(-1)) ? [{ index, number, line: [...last].reverse() }] : []),
  ];
}

export function drawConductor(
  drawing: FrontDrawing,
  { here, lines, found }: ConductorShape,
  numbers: readonly PlacedLabel[],
): string {
  const { pen, options, plan } = drawing;
  const { name, record, role } = here.lead;
  const number = options.numbers?.(record, role) ?? "";
  const which = role === "cable" ? undefined : role;
  return drawing.draw(
    {
      ...{ kind: "conductor", name, record, found },
      ...{ role: which, elementId: `conductor-${record}-${role}` },
      sentence: `${number === "" ? "Conductor" : `Conductor ${number}`}: ${name}${which ? `, ${which}` : ""}.`,
      box: aroundPoints(lines.flat()),
    },
    ...lines.map((line) => pen.line(line, strokeOf(plan, record, role))),
    ...numbers.map((label) => drawLabel(pen, label)),
  );
}

const numberPx = 9;
/** From the end of a conductor to its number. */
const farthestNumberPx = 160;

/** Near the end of a conductor. */
function numberAt({ placer }: FrontDrawing, { line, number }: Numbered): PlacedLabel | undefined {
  return labelBeside(placer, labelOf(number, [], numberPx), stepsAlong(line, 12, farthestNumberPx));
}

/** One below the other, with a single line that leads to their terminal. */
function ledOut({ placer }: FrontDrawing, ends: readonly Numbered[]): readonly PlacedLabel[] {
  const { line } = ends[0]!;
  const [near] = stepsAlong(line, 6, Number.POSITIVE_INFINITY);
  const labels = ends.map(({ number }) => labelOf(number, [], numberPx));
  const { box, leader } = placer.beside(
    { ...(near?.at ?? line[0]!), width: 0, height: 0 },
    {
      lines: labels.flatMap(({ lines }) => lines),
      width: labels.reduce((most, { width }) => Math.max(most, width), 0),
      height: labels.reduce((sum, { height }) => sum + height, 0),
    },
  );
  let { y } = box;
  return labels.map((label, index) => {
    const { width, height } = label;
    const one = { label, box: { x: box.x, y, width, height }, turned: false };
    y += height;
    return index === 0 && leader ? { ...one, leader } : one;
  });
}

function strokeOf({ network }: Judgement, record: number, role: string): Stroke {
  if (role !== "cable") return role === "return" ? "negative" : "positive";
  const index = network?.network.conductors.findIndex((one) => one.record === record) ?? -1;
  const side = network?.result?.topology.conductorSides[index];
  if (side === "positive" || side === "negative") return side;
  return side === "series-link" ? "link" : "unknown";
}
