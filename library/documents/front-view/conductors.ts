import type { Judgement } from "../../judge.ts";
import type { Point } from "../diagram/graph.ts";
import type { Stroke } from "../diagram/svg-writer.ts";
import { aroundPoints, grown, overlaps } from "./boxes.ts";
import { type ChannelShape, leadsIn } from "./channels.ts";
import type { FrontDrawing, Noted } from "./front-drawing.ts";
import { drawLabel, labelOf, lineOwner, type PlacedLabel } from "./labels.ts";
import { type LanePiece, lanePx, lineInLanes, piecesOf, placeOnPath } from "./lanes.ts";
import { piecesOfLine, placesAlong, stepsAlong } from "./lines.ts";
import type { LeadHere } from "./surface-content.ts";

/** A conductor along its way. */
export interface ConductorShape extends Noted {
  readonly here: LeadHere;
  /** More than one if it leaves the surface in between. */
  readonly lines: readonly (readonly Point[])[];
}

/** Side by side in their channels; labels keep clear of them. */
export function conductorShapes(
  drawing: FrontDrawing,
  channels: readonly ChannelShape[],
): readonly ConductorShape[] {
  const { content, found, placer } = drawing;
  const lanes = new Map(
    channels.map(({ here, widthPx }) => {
      const inIt = leadsIn(content, here.index);
      const gap = Math.min(lanePx, (widthPx - 3) / Math.max(1, inIt.length));
      const besides = inIt.map((lead, at) => [lead, (at - (inIt.length - 1) / 2) * gap] as const);
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
    for (const piece of drawn.flatMap(piecesOfLine)) placer.take(grown(aroundPoints(piece), 1), lineOwner);
    return {
      ...{ here, lines: drawn },
      ...drawing.noted(found.ofConductor(lead.record, lead.role), placesAlong(drawn)),
    };
  });
}

export function drawConductor(drawing: FrontDrawing, shape: ConductorShape): string {
  const { here, lines } = shape;
  const { lead, way } = here;
  const { pen, content, options } = drawing;
  const { name, record } = lead;
  const number = options.numbers?.(record, lead.role) ?? "";
  const role = lead.role === "cable" ? undefined : lead.role;
  const [first, last] = [lines[0], lines.at(-1)];
  const ends = [
    ...(first && way.stretches[0]?.surface === content.index ? [first] : []),
    ...(last && way.stretches.at(-1)?.surface === content.index ? [[...last].reverse()] : []),
  ];
  const tags = number === "" ? [] : ends.map((line) => numberAt(drawing, line, number));
  return drawing.draw(
    {
      ...shape,
      ...{ kind: "conductor", name, record, role, elementId: `conductor-${record}-${lead.role}` },
      sentence: `${number === "" ? "Conductor" : `Conductor ${number}`}: ${name}${role ? `, ${role}` : ""}.`,
      box: aroundPoints(lines.flat()),
    },
    ...lines.map((line) => pen.line(line, strokeOf(drawing.plan, record, lead.role))),
    ...tags.map((tag) => drawLabel(pen, tag)),
  );
}

/** From the end of a conductor to its number. */
const farthestNumberPx = 160;

/** The number of a conductor near its end, beside its line. */
function numberAt({ placer }: FrontDrawing, line: readonly Point[], number: string): PlacedLabel {
  const label = labelOf(number, [], 9);
  const { width, height } = label;
  for (const { at, along } of stepsAlong(line, 12, farthestNumberPx))
    for (const side of [1, -1]) {
      const middle = {
        x: at.x - along.y * side * (width / 2 + 3),
        y: at.y + along.x * side * (height / 2 + 2),
      };
      const box = { x: middle.x - width / 2, y: middle.y - height / 2, width, height };
      if (placer.taken.some((other) => overlaps(other, box, 1))) continue;
      placer.take(box);
      return { label, box, turned: false };
    }
  const [near] = stepsAlong(line, 6, Number.POSITIVE_INFINITY);
  return placer.beside({ ...(near?.at ?? line[0]!), width: 0, height: 0 }, label);
}

function strokeOf({ network }: Judgement, record: number, role: string): Stroke {
  if (role !== "cable") return role === "return" ? "negative" : "positive";
  const index = network?.network.conductors.findIndex((one) => one.record === record) ?? -1;
  const side = network?.result?.topology.conductorSides[index];
  if (side === "positive" || side === "negative") return side;
  return side === "series-link" ? "link" : "unknown";
}
