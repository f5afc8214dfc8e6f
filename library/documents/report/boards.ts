import type { Placement } from "../../analysis/placement/placement.ts";
import { lengthOfPath } from "../../analysis/placement/rectangles.ts";
import type { Body, Channel } from "../../model/placement/layout.ts";
import { formatExact } from "../../rules/wording/format-number.ts";
import { drawFrontViews } from "../front-view/draw-front-view.ts";
import { lengthOnTape, sizeOnTape, type TapeUnit } from "../front-view/lengths-on-tape.ts";
import { conductorsInChannels } from "../front-view/surface-content.ts";
import { counted } from "../schedules/cells.ts";
import type { Cell, Table } from "../table.ts";
import { numbers, tableOf, words } from "../table-of.ts";
import type { Chapter, ReportContext } from "./chapter.ts";
import type { Block } from "./report-content.ts";

/** Where things are: the front view of each surface, the places and the channels; no chapter for a plan without surfaces. */
export function boardsChapter({ judgement, file, revision }: ReportContext): readonly Chapter[] {
  const { placement } = judgement;
  const views = drawFrontViews(judgement, {
    ...{ medium: "paper", title: file },
    ...(revision !== undefined && { revision }),
  });
  const [first] = views;
  if (!placement || !first) return [];
  const unit = placement.layout.surfaces[0]!.writtenIn;
  const figures = views.flatMap((view, index): readonly Block[] => {
    const { svg, widthPx, heightPx, description, elements, surfaceName } = view;
    return [
      ...(index > 0 ? [{ kind: "newPage", orientation: orientationOf(view) } as const] : []),
      {
        ...{ kind: "figure", svg, widthPx, heightPx },
        caption: `Front view of ${surfaceName}, to scale`,
        description: [description, ...elements.map((element) => element.description)].join(" "),
      },
    ];
  });
  const silent = notJudged(placement);
  return [
    { id: "boards", title: "Boards and places", orientation: orientationOf(first), blocks: figures },
    {
      id: "places",
      title: "Places and channels",
      orientation: "portrait",
      blocks: [
        { kind: "table", table: placesTable(placement, unit) },
        ...(placement.layout.channels.length > 0
          ? [
              {
                kind: "table",
                table: channelsTable(placement, conductorsInChannels(judgement, placement), unit),
              } as const,
            ]
          : []),
        ...(silent.length > 0
          ? [{ kind: "notice", title: "Not judged about these places", lines: silent } as const]
          : []),
      ],
    },
  ];
}

function orientationOf({ widthPx, heightPx }: { readonly widthPx: number; readonly heightPx: number }) {
  return widthPx >= heightPx ? "landscape" : "portrait";
}

function lengthCell(mm: number, unit: TapeUnit): Cell {
  return { value: mm, text: lengthOnTape(mm, unit) };
}

function placesTable({ layout }: Placement, unit: TapeUnit): Table {
  const onSurface = ({ place }: Body) => (place?.kind === "on surface" ? place : undefined);
  const where = ({ place }: Body) => {
    if (!place) return "no place yet";
    if (place.kind === "on surface") return layout.surfaces[place.surface]!.name;
    const beyond = place.beyondMm === 0 ? "" : `, ${lengthOnTape(place.beyondMm, unit)} ${unit} beyond it`;
    return `at the end of ${layout.channels[place.channel]!.name}${beyond}`;
  };
  return tableOf<Body>(
    {
      id: "part-places",
      title: "Places of the parts",
      notes: ["Left and top are from the top left corner of the surface to that of the part as it hangs."],
    },
    [
      words("part", "Part", ({ name }) => name),
      words("surface", "Where", where),
      numbers("left", `Left, ${unit}`, (body) => {
        const place = onSurface(body);
        return place ? lengthCell(place.outline.x, unit) : null;
      }),
      numbers("top", `Top, ${unit}`, (body) => {
        const place = onSurface(body);
        return place ? lengthCell(place.outline.y, unit) : null;
      }),
      words("size", `Width × height × depth, ${unit}`, ({ size }) =>
        size
          ? `${sizeOnTape(size, unit)}${size.depth === undefined ? "" : ` × ${lengthOnTape(size.depth, unit)}`}`
          : "not stated",
      ),
      words("position", "Position", (body) => onSurface(body)?.position ?? ""),
      ...ifStated(layout.bodies, ({ heatW }) => heatW, "heatW", "Heat, W"),
      ...ifStated(layout.bodies, ({ massKg }) => massKg, "massKg", "Mass, kg"),
      ...(layout.bodies.some((body) => needsOf(body) !== "") ? [words<Body>("needs", "Needs", needsOf)] : []),
    ],
    layout.bodies,
  );
}

/** A column of figures that few plans state. */
function ifStated(
  bodies: readonly Body[],
  figure: (body: Body) => number | undefined,
  id: string,
  title: string,
) {
  if (bodies.every((body) => figure(body) === undefined)) return [];
  return [
    numbers<Body>(id, title, (body) => {
      const value = figure(body);
      return value === undefined ? null : { value, text: formatExact(value) };
    }),
  ];
}

/** "stays cool, terminals covered". */
function needsOf({ keepCool, terminalsCovered }: Body): string {
  return [keepCool ? "stays cool" : "", terminalsCovered ? "terminals covered" : ""]
    .filter(Boolean)
    .join(", ");
}

function channelsTable({ layout }: Placement, conductors: readonly number[], unit: TapeUnit): Table {
  const nameOf = (surface: number) => layout.surfaces[surface]!.name;
  const course = ({ course: one }: Channel) => {
    if (one.kind === "along") return `along ${nameOf(one.surface)}`;
    return `from ${nameOf(one.from.surface)} to ${one.to ? nameOf(one.to.surface) : "a free end"}`;
  };
  return tableOf<{ readonly channel: Channel; readonly conductors: number }>(
    {
      id: "channels",
      title: "Channels",
      notes: ["Conductors whose way is not known are counted in none."],
    },
    [
      words("channel", "Channel", ({ channel }) => channel.name),
      words("way", "Kind", ({ channel }) => channel.way),
      words("course", "Course", ({ channel }) => course(channel)),
      numbers("length", `Length, ${unit}`, ({ channel: { course: one } }) =>
        lengthCell(one.kind === "along" ? lengthOfPath(one.path) : one.lengthMm, unit),
      ),
      numbers("conductors", "Conductors in it", (row) => counted(row.conductors)),
    ],
    layout.channels.map((channel, index) => ({ channel, conductors: conductors[index]! })),
  );
}

/** The places and ways that are not judged, and why, in sentences. */
function notJudged({ layout, ways }: Placement): readonly string[] {
  const { bodies, leads } = layout;
  const namesOf = (list: readonly { readonly name: string }[]) =>
    [...new Set(list.map(({ name }) => name))].join(", ");
  const onSurfaces = bodies.filter(({ place }) => place?.kind === "on surface");
  const without: readonly (readonly [list: readonly { readonly name: string }[], sentence: string])[] = [
    [bodies.filter(({ place }) => !place), "Without a place"],
    [onSurfaces.filter(({ size }) => !size), "Without a size, so neither overlap nor fit is judged"],
    [
      onSurfaces.filter(({ size, air }) => size && Object.keys(air).length === 0),
      "Without stated air, so the room around it is not judged",
    ],
    [
      onSurfaces.filter(({ size, terminals }) => size && Object.keys(terminals).length === 0),
      "Without stated places of terminals, which are taken in the middle of the part",
    ],
    [
      leads.filter(({ index }) => ways[index]!.state === "not placed"),
      "Conductors whose way is not known, because a part at an end has no place",
    ],
    [
      leads.filter(({ index }) => ways[index]!.state === "no way"),
      "Conductors without a way between their ends",
    ],
  ];
  return without.flatMap(([list, sentence]) => (list.length === 0 ? [] : [`${sentence}: ${namesOf(list)}.`]));
}
