import type { Point, Rectangle } from "../../model/placement/layout.ts";
import type { Template } from "./draw-front-view.ts";
import { fixingWords } from "./template-svg.ts";

/**
 * The template as DXF, release 12 (group codes and sections after the published DXF reference, from memory): lines, circles and texts on
 * layers. Coordinates are mm from the bottom left corner of the surface, y up; release 12 has no unit of its own, so a text names it.
 */
export function templateDxf({ content, title }: Template): string {
  const { surface, bodies, channels, openings } = content;
  const up = ({ x, y }: Point): Point => ({ x, y: surface.height - y });
  const entities = [
    ...rectangle("SURFACE", { x: 0, y: 0, width: surface.width, height: surface.height }, up),
    ...bodies.flatMap(({ body, place }) => {
      const { outline } = place;
      const spots = Object.values(body.terminals).flat();
      return [
        ...(body.size ? rectangle("PARTS", outline, up) : cross("PARTS", up(outline))),
        text("TEXT", up({ x: outline.x + 3, y: outline.y + 6 }), body.name),
        ...spots.map((spot) => circle("TERMINALS", up(spot), terminalMm)),
      ];
    }),
    ...channels.flatMap(({ path }) =>
      path.slice(1).map((to, index) => line("CHANNELS", up(path[index]!), up(to))),
    ),
    ...openings.flatMap(({ channel, at }) => {
      const middle = up(at);
      const round = channel.inside?.shape === "round" ? channel.inside.diameter : undefined;
      return [
        ...(round === undefined ? [] : [circle("HOLES", middle, round / 2)]),
        ...cross("HOLES", middle),
        text("TEXT", { x: middle.x + 6, y: middle.y + 3 }, channel.name),
      ];
    }),
    ...surface.keepFree.flatMap((area) => [
      ...rectangle("KEEP_FREE", area, up),
      text("TEXT", up({ x: area.x + 3, y: area.y + 6 }), area.name),
    ]),
    ...["All dimensions in mm, scale 1:1.", title, fixingWords].map((words, index) =>
      text("TEXT", { x: 0, y: -8 - 7 * index }, words),
    ),
  ];
  return [
    section("HEADER", [pair(9, "$ACADVER"), pair(1, "AC1009")]),
    section("TABLES", [
      pair(0, "TABLE"),
      pair(2, "LAYER"),
      pair(70, layers.length),
      ...layers.flatMap((name) => [
        pair(0, "LAYER"),
        pair(2, name),
        pair(70, 0),
        pair(62, 7),
        pair(6, "CONTINUOUS"),
      ]),
      pair(0, "ENDTAB"),
    ]),
    section("ENTITIES", entities),
    pair(0, "EOF"),
  ].join("");
}

const layers = ["SURFACE", "PARTS", "TERMINALS", "CHANNELS", "HOLES", "KEEP_FREE", "TEXT"] as const;

type Layer = (typeof layers)[number];

const terminalMm = 3;
const crossMm = 5;
const letterMm = 4;

function pair(code: number, value: string | number): string {
  return `${code}\n${value}\n`;
}

function section(name: string, content: readonly string[]): string {
  return [pair(0, "SECTION"), pair(2, name), ...content, pair(0, "ENDSEC")].join("");
}

function entity(kind: string, layer: Layer, pairs: readonly (readonly [number, string | number])[]): string {
  return [pair(0, kind), pair(8, layer), ...pairs.map(([code, value]) => pair(code, value))].join("");
}

/** To a ten-thousandth of a millimetre. */
function mm(value: number): string {
  return String(Math.round(value * 1e4) / 1e4 + 0);
}

function line(layer: Layer, from: Point, to: Point): string {
  return entity("LINE", layer, [
    [10, mm(from.x)],
    [20, mm(from.y)],
    [11, mm(to.x)],
    [21, mm(to.y)],
  ]);
}

function circle(layer: Layer, middle: Point, radius: number): string {
  return entity("CIRCLE", layer, [
    [10, mm(middle.x)],
    [20, mm(middle.y)],
    [40, mm(radius)],
  ]);
}

function text(layer: Layer, at: Point, words: string): string {
  return entity("TEXT", layer, [
    [10, mm(at.x)],
    [20, mm(at.y)],
    [40, letterMm],
    [1, inAscii(words)],
  ]);
}

/** Release 12 is ASCII: other characters as the escape that later releases read, and control characters as spaces. */
function inAscii(words: string): string {
  return [...words]
    .map((character) => {
      const code = character.codePointAt(0)!;
      if (code < 32 || code === 127) return " ";
      if (code < 127) return character;
      return code > 0xffff ? "?" : `\\U+${code.toString(16).toUpperCase().padStart(4, "0")}`;
    })
    .join("");
}

function rectangle(
  layer: Layer,
  { x, y, width, height }: Rectangle,
  up: (point: Point) => Point,
): readonly string[] {
  const corners = [
    { x, y },
    { x: x + width, y },
    { x: x + width, y: y + height },
    { x, y: y + height },
  ].map(up);
  return corners.map((corner, index) => line(layer, corner, corners[(index + 1) % 4]!));
}

function cross(layer: Layer, { x, y }: Point): readonly string[] {
  return [
    line(layer, { x: x - crossMm, y }, { x: x + crossMm, y }),
    line(layer, { x, y: y - crossMm }, { x, y: y + crossMm }),
  ];
}
