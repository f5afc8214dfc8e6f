import type { Judgement } from "../../judge.ts";
import { displayName } from "../../model/display-name.ts";
import type { Body, Layout, TerminalSpot } from "../../model/placement/layout.ts";
import { counted } from "../../rules/wording/format-number.ts";
import type { Box } from "../diagram/drawing.ts";
import { elementIds } from "../diagram/element-ids.ts";
import { drawMark, type MarkKind, markPx, worstOf } from "../diagram/finding-mark.ts";
import { type FindingsByPlace, findingsByPlace } from "../diagram/found-here.ts";
import type { Point } from "../diagram/graph.ts";
import type { FoundHere } from "../diagram/schematic.ts";
import { createPen, type Stroke, type SvgWriter } from "../diagram/svg-writer.ts";
import { aroundPoints, commonBox, contains, grown, middleOf, overlaps, sidesOf, without } from "./boxes.ts";
import { dimensions, type Marked } from "./dimensions.ts";
import { frontSheet, type Unplaced } from "./front-sheet.ts";
import type { FrontElement, FrontView, FrontViewOptions } from "./front-view.ts";
import { drawLabel, LabelPlacer, labelOf, labelsWithin, type PlacedLabel } from "./labels.ts";
import { type LanePiece, lineInLanes, piecesOf, placeOnPath } from "./lanes.ts";
import { lengthOnTape, sizeOnTape, type TapeUnit } from "./lengths-on-tape.ts";
import { type Scale, scaleOf, trueSize } from "./scale.ts";
import {
  type BodyHere,
  type ChannelHere,
  type LeadHere,
  type Opening,
  type SurfaceContent,
  surfaceContent,
} from "./surface-content.ts";

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
  return content && new FrontDrawing(plan, content, options).drawn();
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
    return content ? [new FrontDrawing(plan, content, { medium: "paper", title }, trueSize).template()] : [];
  });
}

/** The state of one drawing while it is made: the room that labels have taken, and the elements so far. */
class FrontDrawing {
  readonly #pen: SvgWriter;
  readonly #scale: Scale;
  readonly #unit: TapeUnit;
  readonly #board: Box;
  readonly #placer: LabelPlacer;
  readonly #found: FindingsByPlace;
  readonly #idOf = elementIds();
  readonly #elements: FrontElement[] = [];
  readonly #marks = new Set<MarkKind>();
  readonly #layout: Layout;

  constructor(
    private readonly plan: Judgement,
    private readonly content: SurfaceContent,
    private readonly options: FrontViewOptions,
    scale: Scale = scaleOf(content.surface),
  ) {
    const { surface } = content;
    this.#layout = plan.placement!.layout;
    this.#pen = createPen(options.medium);
    this.#scale = scale;
    this.#unit = surface.writtenIn;
    this.#board = this.#scale.box({ x: 0, y: 0, width: surface.width, height: surface.height });
    this.#placer = new LabelPlacer(this.#board);
    this.#found = findingsByPlace(plan);
  }

  drawn(): FrontView {
    const { content, options } = this;
    const { surface } = content;
    const pen = this.#pen;
    // Conductors first: a part takes all findings of its record that are left.
    const channels = content.channels.map((channel) => this.#channelShape(channel));
    const lines = options.conductors ? this.#wireShapes(channels) : [];
    const shapes = content.bodies.map((here) => this.#shapeOf(here));
    const openings = content.openings.map((opening) => this.#openingShape(opening));
    const bands = channels.map(({ points, widthPx }) => tubeEdges(pen, points, widthPx)).join("");
    const within = shapes.map((shape) => this.#labelWithin(shape));
    const areas = this.#areas(shapes.map(({ box }) => box));
    const names = channels.map((channel) => this.#channelLabel(channel));
    const wires = lines.map((line) => this.#wire(line));
    const bodies = shapes.map((shape, index) => this.#body(shape, within[index]));
    const tubes = channels.map((channel, index) => this.#channel(channel, names[index]!));
    const holes = openings.map((opening) => this.#opening(opening));
    const taken = this.#placer.hiding;
    const along = this.#dimensions(shapes, channels, openings, taken);
    const unplaced = content.unplaced.map((body) => this.#unplaced(body));
    const onSurface = this.#found.ofRecord(surface.record);
    const surfaceMark = this.#markOf(onSurface);
    const id = this.#idOf("surface", surface.name);
    const description = [
      `${surfaceInWords(surface, this.#unit)}.`,
      ...onSurface.map(({ message }) => message),
    ].join(" ");
    this.#elements.unshift(
      this.#element(
        "surface",
        { id, name: surface.name, record: surface.record, description, box: this.#board },
        onSurface,
      ),
    );
    const drawn = [
      areas.under,
      bands,
      pen.group(
        {
          classes: classesOf("loomwright-surface", onSurface),
          ...{ id, elementId: `surface-${surface.record}`, data: { surface: surface.record } },
          ...{ title: surface.name, description },
        },
        pen.rect(this.#board, "edge"),
      ),
      ...tubes,
      ...holes,
      ...bodies,
      ...wires,
      areas.over,
      along.svg,
    ].join("");
    const left = this.#found.left();
    return frontSheet(pen, {
      ...{ drawn, options, content, scale: this.#scale, board: this.#board, unplaced, along },
      columnPx: this.#columnPx(),
      lowestPx: this.#lowestPx(),
      elements: this.#elements,
      heading: `${surface.name}: ${surfaceInWords(surface, this.#unit)}`,
      surfaceMark,
      unit: this.#unit,
      plan: displayName(this.plan.model.build.name ?? options.title ?? "") || "plan without a name",
      notices: this.#notices(left),
      signs: {
        marks: this.#marks,
        air: shapes.some(({ here }) => Object.keys(here.body.air).length > 0),
        terminals: shapes.some(({ terminals }) => terminals.some(({ spot }) => spot.leaves !== "front")),
        frontTerminals: shapes.some(({ terminals }) => terminals.some(({ spot }) => spot.leaves === "front")),
        channels: channels.length > 0,
        openings: openings.length > 0,
        conductors: options.conductors === true && content.leads.length > 0,
      },
    });
  }

  template(): Template {
    const { content, options } = this;
    const { surface } = content;
    const pen = this.#pen;
    const shapes = content.bodies.map((here) => this.#shapeOf(here));
    const channels = content.channels.map((channel) => this.#channelShape(channel));
    const openings = content.openings.map((opening) => this.#openingShape(opening));
    const within = shapes.map((shape) => this.#labelWithin(shape));
    const areas = this.#areas(shapes.map(({ box }) => box));
    const names = channels.map((channel) => this.#channelLabel(channel));
    const drawn = [
      ...channels.map(({ points, widthPx }) => tubeEdges(pen, points, widthPx)),
      pen.rect(this.#board, "edge"),
      ...channels.map((channel, index) => this.#channel(channel, names[index]!)),
      ...openings.map((opening) => this.#opening(opening)),
      ...shapes.map((shape, index) => this.#body(shape, within[index])),
      areas.over,
    ].join("");
    const plan = displayName(this.plan.model.build.name ?? options.title ?? "") || "plan without a name";
    return {
      plan,
      surface: content.index,
      surfaceName: surface.name,
      title: `${plan}, drilling template of ${surface.name}`,
      description: `${surface.name} in true size: ${surfaceInWords(surface, this.#unit)}, with ${counted(content.bodies.length, "part")}.`,
      drawn,
      widthPx: this.#board.width + this.#columnPx(),
      heightPx: this.#lowestPx(),
      content,
    };
  }

  get #isTemplate(): boolean {
    return this.#scale === trueSize;
  }

  /** Width that labels need on the right of the surface. */
  #columnPx(): number {
    const right = this.#board.x + this.#board.width;
    return this.#placer.taken.reduce((most, { x, width }) => Math.max(most, x + width - right), 0);
  }

  /** The bottom of the surface, or of parts and labels beyond it. */
  #lowestPx(): number {
    return this.#placer.taken.reduce((most, { y, height }) => Math.max(most, y + height), this.#board.height);
  }

  #notices(left: readonly FoundHere[]): readonly string[] {
    const { layout, ways } = this.plan.placement!;
    const noWay = layout.leads.filter(({ index }) => ways[index]!.state !== "found");
    const open = left.filter(({ accepted }) => !accepted).length;
    const { bodies } = this.content;
    const sizeless = bodies.filter(({ body }) => !body.size).map(({ body }) => body.name);
    return [
      ...(this.plan.model.networkUnread
        ? ["A value of the network was refused: parts and conductors may be missing here."]
        : []),
      ...(noWay.length > 0
        ? [
            `${counted(noWay.length, "conductor")} of the plan ${noWay.length === 1 ? "has" : "have"} no way that is known, and ${noWay.length === 1 ? "is" : "are"} counted in no channel.`,
          ]
        : []),
      ...(sizeless.length > 0 ? [`Without a stated size, shown as a point: ${sizeless.join(", ")}.`] : []),
      ...(open > 0
        ? [
            `${counted(open, "finding")} about conductors, other surfaces or the plan ${open === 1 ? "is" : "are"} not marked here: see the report.`,
          ]
        : []),
    ];
  }

  #element(
    kind: FrontElement["kind"],
    about: Pick<FrontElement, "id" | "name" | "record" | "description"> & { readonly box?: Box },
    found: readonly FoundHere[],
  ): FrontElement {
    const worst = worstOf(found);
    return {
      ...{ kind, ...about },
      severity: worst === "accepted" ? undefined : worst,
      findings: found.map(({ message }) => message),
    };
  }

  /** A template has no marks: it is drawn on the board, and the findings are in the report. */
  #markOf(found: readonly FoundHere[]): MarkKind | undefined {
    if (this.#isTemplate) return undefined;
    const kind = worstOf(found);
    if (kind) this.#marks.add(kind);
    return kind;
  }

  #placedMark(kind: MarkKind | undefined, places: readonly Point[]): Mark | undefined {
    const at = kind && this.#placer.signPlace(places, aroundMark);
    return at && { kind, at };
  }

  #shapeOf(here: BodyHere): Shape {
    const { body, place } = here;
    const box = this.#scale.box(place.outline);
    const isPoint = box.width === 0 || box.height === 0;
    const room = isPoint ? grown(box, pointPx) : box;
    const found = this.#found.ofRecord(body.record);
    const kind = this.#markOf(found);
    const roomy = room.width >= 40 && room.height >= 30;
    this.#placer.take(room, body.index);
    const terminals = Object.entries(body.terminals).flatMap(([name, spots]) =>
      spots.map((spot) => ({ name, spot, at: this.#scale.point(spot) })),
    );
    for (const { at, spot } of terminals)
      this.#placer.take(grown(aroundPoints(lugOf(at, spot)), terminalPx + 1));
    const inset = markPx / 2 + 3;
    const [left, right, top] = [room.x, room.x + room.width, room.y];
    const within = [
      { x: right - inset, y: top + inset },
      { x: left + inset, y: top + inset },
      { x: right - inset, y: top + room.height - inset },
      { x: left + inset, y: top + room.height - inset },
    ];
    const beside = { x: right + markPx / 2 + 1, y: top - markPx / 2 + 2 };
    const mark = this.#placedMark(kind, [...(roomy ? within : []), beside]);
    const air = isPoint ? undefined : this.#airOf(body, box);
    if (air) for (const side of sidesOf(air)) this.#placer.take(grown(side, 1), lineOwner);
    return { here, box: room, isPoint, air, found, mark, terminals };
  }

  #words({ body, place }: BodyHere): readonly string[] {
    const { size } = body;
    if (!size) return [];
    const depth = size.depth === undefined ? [] : [`${lengthOnTape(size.depth, this.#unit)} deep`];
    const turned = place.turnedDeg === 0 ? [] : [place.position];
    const { x, y } = place.outline;
    const at = `left ${lengthOnTape(x, this.#unit)}, top ${lengthOnTape(y, this.#unit)}`;
    if (this.#isTemplate) return [at, sizeOnTape(place.outline, this.#unit), ...turned];
    return [sizeOnTape(place.outline, this.#unit), ...depth, ...turned];
  }

  #labelWithin({ here, box, isPoint }: Shape): PlacedLabel | undefined {
    if (isPoint) return undefined;
    const room = grown(box, -4);
    if (room.width < 12 || room.height < 8) return undefined;
    const words = this.#words(here);
    const { name, index } = here.body;
    const variants = (roomPx: number) => [
      ...labelsWithin(name, words, roomPx),
      ...(words.length > 1 ? labelsWithin(name, [words.join(" · ")], roomPx) : []),
    ];
    const upright = this.#placer.within(room, variants(room.width), index);
    if (upright || room.height < 1.3 * room.width) return upright;
    return this.#placer.within(room, variants(room.height), index, true);
  }

  #body(shape: Shape, within: PlacedLabel | undefined): string {
    const { here, box, isPoint, air, found, mark, terminals } = shape;
    const { body } = here;
    const pen = this.#pen;
    const label = within ?? this.#placer.beside(box, labelOf(body.name, this.#words(here), 10));
    const id = this.#idOf("part", body.name);
    const description = this.#describe(here, found);
    this.#elements.push(
      this.#element("body", { id, name: body.name, record: body.record, description, box }, found),
    );
    return pen.group(
      {
        classes: classesOf("loomwright-part", found),
        ...{ id, elementId: `body-${body.record}` },
        data: { body: body.record, surface: this.content.surface.record },
        ...{ title: body.name, description },
      },
      isPoint ? cross(pen, middleOf(box)) : pen.rect(box),
      air ? pen.rect(air, "hidden") : "",
      ...terminals.map(({ name, spot, at }) => drawTerminal(pen, name, spot, at)),
      drawLabel(pen, label),
      mark ? drawMark(pen, mark.kind, mark.at) : "",
    );
  }

  #describe({ body, place }: BodyHere, found: readonly FoundHere[]): string {
    const unit = this.#unit;
    const { x, y } = place.outline;
    const size = body.size
      ? `${sizeOnTape(place.outline, unit)} ${unit}${body.size.depth === undefined ? "" : `, ${lengthOnTape(body.size.depth, unit)} ${unit} deep`}`
      : "size not stated";
    return [
      `${body.name}: ${size}; ${lengthOnTape(x, unit)} ${unit} from the left edge and ${lengthOnTape(y, unit)} ${unit} from the top edge, ${place.position}.`,
      ...found.map(({ message }) => message),
    ].join(" ");
  }

  /** The air that a part needs, on its stated sides, as far as the surface goes. */
  #airOf({ air }: Body, box: Box): Box | undefined {
    const px = (mm: number | undefined) => this.#scale.px(mm ?? 0);
    if (!Object.values(air).some((mm) => mm > 0)) return undefined;
    const [left, top] = [px(air.left), px(air.top)];
    const whole = {
      x: box.x - left,
      y: box.y - top,
      width: box.width + left + px(air.right),
      height: box.height + top + px(air.bottom),
    };
    return commonBox(whole, this.#board);
  }

  #channelShape(here: ChannelHere): ChannelShape {
    const { channel, path } = here;
    const points = path.map((point) => this.#scale.point(point));
    const inside = channel.inside;
    const stated = inside && (inside.shape === "round" ? inside.diameter : inside.width);
    const lanes = this.options.conductors ? this.#leadsIn(here.index).length : 0;
    const widthPx =
      stated === undefined
        ? Math.max(unknownChannelPx, lanes * lanePx + 3)
        : Math.max(this.#scale.px(stated), 3);
    const found = this.#found.ofRecord(channel.record);
    const kind = this.#markOf(found);
    const boxes = points.slice(1).map((to, index) => grown(aroundPoints([points[index]!, to]), widthPx / 2));
    for (const box of boxes) this.#placer.take(box, -1 - here.index);
    const mark = this.#placedMark(kind, [beyond(points[1]!, points[0]!, -12), ...placesAlong([points])]);
    return { here, points, widthPx, found, mark, boxes };
  }

  #leadsIn(channel: number): readonly number[] {
    return this.content.leads
      .filter(({ way }) => way.stretches.some((stretch) => stretch.channel === channel))
      .map(({ lead }) => lead.index);
  }

  #channelLabel({ here, points, widthPx, boxes }: ChannelShape): PlacedLabel {
    const { name } = here.channel;
    const count = counted(here.conductors, "conductor");
    const unbroken = Number.POSITIVE_INFINITY;
    const labels = [10, 9, 8].flatMap((sizePx) => [
      labelOf(`${name} · ${count}`, [], sizePx, unbroken),
      labelOf(name, [count], sizePx, unbroken),
    ]);
    const segments = points
      .slice(1)
      .map((to, index) => [points[index]!, to] as const)
      .sort((one, other) => lengthOf(other) - lengthOf(one));
    const others = this.#placer.taken.filter((box) => !boxes.includes(box));
    for (const label of labels)
      for (const [from, to] of segments) {
        const isUpright = Math.abs(to.y - from.y) > Math.abs(to.x - from.x);
        const [width, height] = isUpright ? [label.height, label.width] : [label.width, label.height];
        if (label.width > lengthOf([from, to]) - 8) continue;
        const isInside = widthPx >= label.height + 1 && !this.options.conductors;
        const beside = (widthPx + label.height) / 2 + 2;
        const aside = Math.max(0, (widthPx - label.height) / 2 - 1);
        for (const away of isInside ? [0, aside, -aside] : [-beside, beside])
          for (const share of [0.5, 0.3, 0.7, 0.15, 0.85, 0.05, 0.95]) {
            const middle = { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share };
            const box = {
              x: middle.x - width / 2 + (isUpright ? away : 0),
              y: middle.y - height / 2 + (isUpright ? 0 : away),
              ...{ width, height },
            };
            const crossed = isInside ? others : this.#placer.taken;
            if (!contains(this.#board, box) || crossed.some((other) => overlaps(other, box, 1))) continue;
            this.#placer.take(box);
            return { label, box, turned: isUpright };
          }
      }
    const [[from, to]] = segments as [readonly [Point, Point]];
    const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2, width: 0, height: 0 };
    return this.#placer.beside(grown(middle, widthPx / 2), labelOf(`${name} · ${count}`, [], 10));
  }

  #channel({ here, points, widthPx, found, mark }: ChannelShape, label: PlacedLabel): string {
    const pen = this.#pen;
    const { channel, conductors } = here;
    const id = this.#idOf("channel", channel.name);
    const description = [
      `${channel.name}: ${channel.way} with ${counted(conductors, "conductor")}.`,
      ...found.map(({ message }) => message),
    ].join(" ");
    this.#elements.push(
      this.#element(
        "channel",
        { id, name: channel.name, record: channel.record, description, box: aroundPoints(points) },
        found,
      ),
    );
    return pen.group(
      {
        classes: classesOf("loomwright-channel", found),
        ...{ id, elementId: `channel-${channel.record}` },
        data: { channel: channel.record, surface: this.content.surface.record },
        ...{ title: channel.name, description },
      },
      pen.band(points, widthPx, "inside"),
      drawLabel(pen, label),
      mark ? drawMark(pen, mark.kind, mark.at) : "",
    );
  }

  #openingShape(opening: Opening): OpeningShape {
    const at = this.#scale.point(opening.at);
    const inside = opening.channel.inside;
    const diameter = inside && (inside.shape === "round" ? inside.diameter : inside.width);
    const radius = Math.max(5, diameter === undefined ? 0 : this.#scale.px(diameter) / 2);
    const found = this.#found.ofRecord(opening.channel.record);
    const kind = this.#markOf(found);
    this.#placer.take(grown({ ...at, width: 0, height: 0 }, radius + 1));
    const aside = radius + markPx / 2 + 2;
    const mark = this.#placedMark(
      kind,
      [-1, 1].flatMap((down) => [1, -1].map((side) => ({ x: at.x + side * aside, y: at.y + down * aside }))),
    );
    return { opening, at, radius, found, mark };
  }

  #opening({ opening, at, radius, found, mark }: OpeningShape): string {
    const pen = this.#pen;
    const { channel, conductors, to, ends, lengthMm } = opening;
    const leads = to !== undefined ? `to ${to}` : ends.length > 0 ? `to ${ends.join(", ")}` : "to a free end";
    const words = [leads, `${this.#longLength(lengthMm)} · ${counted(conductors, "conductor")}`];
    const box = grown({ ...at, width: 0, height: 0 }, radius);
    const label = this.#placer.beside(box, labelOf(channel.name, words, 10));
    const id = this.#idOf("channel", channel.name);
    const description = [
      `${channel.name}: ${channel.way} ${words.join(", ")}.`,
      ...found.map(({ message }) => message),
    ].join(" ");
    this.#elements.push(
      this.#element("channel", { id, name: channel.name, record: channel.record, description, box }, found),
    );
    const slant = radius * Math.SQRT1_2;
    const isAgain = this.#drawnOpenings.has(channel.record);
    this.#drawnOpenings.add(channel.record);
    return pen.group(
      {
        classes: classesOf("loomwright-channel", found),
        ...{ id, elementId: `channel-${channel.record}${isAgain ? "-end" : ""}` },
        data: { channel: channel.record, surface: this.content.surface.record },
        ...{ title: channel.name, description },
      },
      pen.circle(at, radius),
      pen.line(
        [
          { x: at.x - slant, y: at.y - slant },
          { x: at.x + slant, y: at.y + slant },
        ],
        "fine",
      ),
      pen.line(
        [
          { x: at.x - slant, y: at.y + slant },
          { x: at.x + slant, y: at.y - slant },
        ],
        "fine",
      ),
      drawLabel(pen, label),
      mark ? drawMark(pen, mark.kind, mark.at) : "",
    );
  }

  readonly #drawnOpenings = new Set<number>();

  #longLength(mm: number): string {
    if (this.#unit === "in")
      return mm < 304.8 ? `${lengthOnTape(mm, "in")} in` : `${lengthOnTape(mm / 12, "in")} ft`;
    return mm < 1_000 ? `${lengthOnTape(mm, "mm")} mm` : `${lengthOnTape(mm / 1_000, "mm")} m`;
  }

  /** Rectangles of the surface: kept free, out of reach, fixtures, and the water in the bilge. */
  #areas(bodies: readonly Box[]): { readonly under: string; readonly over: string } {
    const { surface } = this.content;
    const pen = this.#pen;
    const under: string[] = [];
    const over: string[] = [];
    const area = (outline: Box, name: string, words: readonly string[], look: AreaLook) => {
      const box = commonBox(this.#scale.box(outline), this.#board);
      if (!box) return;
      const room = grown(box, -3);
      const label =
        this.#placer.within(room, labelsWithin(name, words, room.width), areaOwner) ??
        (room.height > room.width
          ? this.#placer.within(room, labelsWithin(name, words, room.height), areaOwner, true)
          : undefined) ??
        this.#placer.beside(box, labelOf(name, words, 10));
      const apart = [
        ...bodies,
        ...this.#placer.taken.filter((one) => label.box === one).map((one) => grown(one, 2)),
      ];
      if (look.fill) under.push(pen.hatched(without(box, apart), look.fill));
      over.push(pen.rect(box, look.stroke), drawLabel(pen, label));
      this.#placer.take(box, areaOwner);
    };
    const unit = this.#unit;
    for (const one of surface.fixtures) {
      const distance =
        one.distanceMm === undefined ? [] : [`keep ${lengthOnTape(one.distanceMm, unit)} ${unit} away`];
      area(one, one.name, [...(one.name.includes(one.fixture) ? [] : [one.fixture]), ...distance], {
        stroke: "chain",
        fill: "level",
      });
    }
    for (const one of surface.keepFree)
      area(
        one,
        one.name,
        ["keep free"].filter(() => !one.name.includes("kept free")),
        { stroke: "thin", fill: "slanted" },
      );
    for (const one of surface.outOfReach) area(one, "out of reach", [], { stroke: "dotted", fill: "dotted" });
    const { bilgeWaterMm } = surface;
    if (bilgeWaterMm !== undefined && surface.orientation === "vertical" && bilgeWaterMm < surface.height) {
      const y = this.#scale.px(surface.height - bilgeWaterMm);
      over.push(
        pen.line(
          [
            { x: 0, y },
            { x: this.#board.width, y },
          ],
          "chain",
        ),
      );
      const line = { x: 0, y, width: this.#board.width, height: 0 };
      over.push(
        drawLabel(
          pen,
          this.#placer.beside(
            line,
            labelOf(`bilge water ${lengthOnTape(bilgeWaterMm, unit)} ${unit}`, [], 10),
          ),
        ),
      );
    }
    return { under: under.join(""), over: over.join("") };
  }

  /** The lines of the conductors; labels keep clear of them. */
  #wireShapes(channels: readonly ChannelShape[]): readonly WireShape[] {
    const lanes = new Map(
      channels.map(({ here, widthPx }) => {
        const inIt = this.#leadsIn(here.index);
        const gap = Math.min(lanePx, (widthPx - 3) / Math.max(1, inIt.length));
        return [
          here.index,
          new Map(inIt.map((lead, at) => [lead, (at - (inIt.length - 1) / 2) * gap])),
        ] as const;
      }),
    );
    return this.content.leads.map((here): WireShape => {
      const { lead, way } = here;
      const lines: LanePiece[][] = [[]];
      for (const { channel, surface, path } of way.stretches) {
        if (surface !== this.content.index || !path) {
          if (lines.at(-1)!.length > 0) lines.push([]);
          continue;
        }
        const course = channels.find(({ here: one }) => one.index === channel)?.here.path;
        const lane = (channel === undefined ? undefined : lanes.get(channel)?.get(lead.index)) ?? 0;
        const isForward = !course || placeOnPath(course, path[0]!) <= placeOnPath(course, path.at(-1)!);
        const drawn = path.map((point) => this.#scale.point(point));
        lines.at(-1)!.push(...piecesOf(drawn, isForward ? lane : -lane));
      }
      const points = lines.filter((line) => line.length > 0).map(lineInLanes);
      for (const line of points)
        for (const [index, to] of line.slice(1).entries())
          this.#placer.take(grown(aroundPoints([line[index]!, to]), 1), lineOwner);
      const found = this.#found.ofConductor(lead.record, lead.role);
      const kind = this.#markOf(found);
      return { here, points, found, mark: this.#placedMark(kind, placesAlong(points)) };
    });
  }

  #wire({ here, points, found, mark }: WireShape): string {
    const pen = this.#pen;
    const { lead, way } = here;
    const number = this.options.numbers?.(lead.record, lead.role) ?? "";
    const role = lead.role === "cable" ? undefined : lead.role;
    const { name } = lead;
    const id = this.#idOf("conductor", name, role);
    const description = [
      `${number === "" ? "Conductor" : `Conductor ${number}`}: ${name}${role ? `, ${role}` : ""}.`,
      ...found.map(({ message }) => message),
    ].join(" ");
    const box = aroundPoints(points.flat());
    this.#elements.push(
      this.#element("conductor", { id, name, record: lead.record, description, box }, found),
    );
    const begins = way.stretches[0]?.surface === this.content.index;
    const ends = way.stretches.at(-1)?.surface === this.content.index;
    const [first, last] = [points[0], points.at(-1)];
    const tags =
      number === ""
        ? []
        : [
            ...(first && begins ? [this.#numberAt(first, number)] : []),
            ...(last && ends ? [this.#numberAt([...last].reverse(), number)] : []),
          ];
    return pen.group(
      {
        classes: classesOf("loomwright-conductor", found),
        ...{ id, elementId: `conductor-${lead.record}-${lead.role}`, data: { conductor: lead.record } },
        ...{ title: name, description },
      },
      ...points.map((line) => pen.line(line, this.#strokeOf(lead.record, lead.role))),
      ...tags.map((tag) => drawLabel(pen, tag)),
      mark ? drawMark(pen, mark.kind, mark.at) : "",
    );
  }

  /** The number of a conductor near its end, beside its line. */
  #numberAt(line: readonly Point[], number: string): PlacedLabel {
    const label = labelOf(number, [], 9);
    const { width, height } = label;
    for (const { at, along } of stepsAlong(line, 12, farthestNumberPx))
      for (const side of [1, -1]) {
        const middle = {
          x: at.x - along.y * side * (width / 2 + 3),
          y: at.y + along.x * side * (height / 2 + 2),
        };
        const box = { x: middle.x - width / 2, y: middle.y - height / 2, width, height };
        if (this.#placer.taken.some((other) => overlaps(other, box, 1))) continue;
        this.#placer.take(box);
        return { label, box, turned: false };
      }
    const [near] = stepsAlong(line, 6, Number.POSITIVE_INFINITY);
    return this.#placer.beside({ ...(near?.at ?? line[0]!), width: 0, height: 0 }, label);
  }

  #strokeOf(record: number, role: string): Stroke {
    if (role !== "cable") return role === "return" ? "negative" : "positive";
    const { network, result } = this.plan.network ?? {};
    const index = network?.conductors.findIndex((one) => one.record === record) ?? -1;
    const side = result?.topology.conductorSides[index];
    if (side === "positive" || side === "negative") return side;
    return side === "series-link" ? "link" : "unknown";
  }

  #dimensions(
    shapes: readonly Shape[],
    channels: readonly ChannelShape[],
    openings: readonly OpeningShape[],
    taken: readonly Box[],
  ) {
    const { surface } = this.content;
    const unit = this.#unit;
    const points = [
      ...shapes.map(({ here, isPoint, box }) => {
        const { x, y } = here.place.outline;
        return isPoint
          ? { at: { x, y }, near: box }
          : { at: { x, y }, near: { ...box, width: 0, height: 0 } };
      }),
      ...openings.map(({ opening, at }) => ({ at: opening.at, near: { ...at, width: 0, height: 0 } })),
      ...channels.flatMap(({ here, points: drawn }) =>
        here.path.map((at, index) => ({ at, near: { ...drawn[index]!, width: 0, height: 0 } })),
      ),
    ];
    const marked = (axis: "x" | "y", across: "x" | "y"): readonly Marked[] =>
      points.map(({ at, near }) => ({
        at: this.#scale.px(at[axis]),
        far: near[across],
        words: lengthOnTape(at[axis], unit),
      }));
    const top = dimensions(
      this.#pen,
      "top",
      this.#board.width,
      lengthOnTape(surface.width, unit),
      marked("x", "y"),
      taken,
    );
    const left = dimensions(
      this.#pen,
      "left",
      this.#board.height,
      lengthOnTape(surface.height, unit),
      marked("y", "x"),
      taken,
    );
    return { svg: top.svg + left.svg, topPx: top.reach, leftPx: left.reach };
  }

  #unplaced(body: Body): Unplaced {
    const found = this.#found.ofRecord(body.record);
    const kind = this.#markOf(found);
    const id = this.#idOf("part", body.name);
    const description = `${body.name} has no place yet.`;
    this.#elements.push(
      this.#element("body", { id, name: body.name, record: body.record, description }, found),
    );
    return { body, id, description, kind, classes: classesOf("loomwright-part", found) };
  }
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

interface Mark {
  readonly kind: MarkKind;
  readonly at: Point;
}

interface Shape {
  readonly here: BodyHere;
  /** Its outline, or the room of the cross of a part without a size. */
  readonly box: Box;
  readonly isPoint: boolean;
  readonly air: Box | undefined;
  readonly found: readonly FoundHere[];
  readonly mark: Mark | undefined;
  readonly terminals: readonly { readonly name: string; readonly spot: TerminalSpot; readonly at: Point }[];
}

interface ChannelShape {
  readonly here: ChannelHere;
  readonly points: readonly Point[];
  readonly widthPx: number;
  readonly found: readonly FoundHere[];
  readonly mark: Mark | undefined;
  readonly boxes: readonly Box[];
}

interface WireShape {
  readonly here: LeadHere;
  /** More than one line if it leaves the surface in between. */
  readonly points: readonly (readonly Point[])[];
  readonly found: readonly FoundHere[];
  readonly mark: Mark | undefined;
}

interface OpeningShape {
  readonly opening: Opening;
  readonly at: Point;
  readonly radius: number;
  readonly found: readonly FoundHere[];
  readonly mark: Mark | undefined;
}

interface AreaLook {
  readonly stroke: Stroke;
  readonly fill?: "slanted" | "dotted" | "level";
}

const pointPx = 4;
const terminalPx = 2.6;
const lugPx = 9;
const unknownChannelPx = 6;
const lanePx = 3.2;
/** From the end of a conductor to its number. */
const farthestNumberPx = 160;
/** No body has it; a leader may cross a conductor, and the outline of air. */
const lineOwner = Number.MIN_SAFE_INTEGER;
/** No body has it: areas yield to everything. */
const areaOwner = Number.NEGATIVE_INFINITY;

function classesOf(kind: string, found: readonly FoundHere[]): readonly string[] {
  const worst = worstOf(found);
  return worst ? [kind, `loomwright-${worst}`] : [kind];
}

function aroundMark({ x, y }: Point): Box {
  return { x: x - markPx / 2 - 1, y: y - markPx / 2 - 1, width: markPx + 2, height: markPx + 2 };
}

function surfaceInWords(
  {
    orientation,
    width,
    height,
  }: { readonly orientation: string; readonly width: number; readonly height: number },
  unit: TapeUnit,
): string {
  const seen =
    {
      vertical: "vertical, its top edge is up",
      floor: "floor, seen from above",
      ceiling: "ceiling, seen from below",
    }[orientation] ?? orientation;
  return `${seen}, ${sizeOnTape({ width, height }, unit)} ${unit}`;
}

const towards: Readonly<Record<string, Point>> = {
  left: { x: -1, y: 0 },
  right: { x: 1, y: 0 },
  up: { x: 0, y: -1 },
  down: { x: 0, y: 1 },
};

/** From the middle of a terminal to the end of the stroke for its lug. */
function lugOf({ x, y }: Point, { leaves }: TerminalSpot): readonly [Point, Point] {
  const way = towards[leaves ?? ""] ?? { x: 0, y: 0 };
  return [
    { x, y },
    { x: x + way.x * lugPx, y: y + way.y * lugPx },
  ];
}

function drawTerminal(pen: SvgWriter, name: string, spot: TerminalSpot, at: Point): string {
  const [middle, end] = lugOf(at, spot);
  const way = towards[spot.leaves ?? ""];
  const lug = way
    ? pen.line([{ x: middle.x + way.x * terminalPx, y: middle.y + way.y * terminalPx }, end]) +
      pen.line([
        { x: end.x - way.x * 3 - way.y * 2, y: end.y - way.y * 3 - way.x * 2 },
        end,
        { x: end.x - way.x * 3 + way.y * 2, y: end.y - way.y * 3 + way.x * 2 },
      ])
    : "";
  const front = spot.leaves === "front" ? pen.circle(at, 1.1, "filled") : "";
  return pen.group(
    { classes: ["loomwright-terminal"], title: `terminal ${name}` },
    pen.circle(at, terminalPx),
    front,
    lug,
  );
}

function cross(pen: SvgWriter, { x, y }: Point): string {
  return (
    pen.line([
      { x: x - pointPx, y },
      { x: x + pointPx, y },
    ]) +
    pen.line([
      { x, y: y - pointPx },
      { x, y: y + pointPx },
    ])
  );
}

function lengthOf([from, to]: readonly [Point, Point]): number {
  return Math.hypot(to.x - from.x, to.y - from.y);
}

/** Both edges of a channel, and its ends. */
function tubeEdges(pen: SvgWriter, points: readonly Point[], widthPx: number): string {
  const end = (at: Point, from: Point) => {
    const length = lengthOf([from, at]) || 1;
    const x = ((at.y - from.y) / length) * (widthPx / 2);
    const y = ((at.x - from.x) / length) * (widthPx / 2);
    return pen.line([
      { x: at.x - x, y: at.y + y },
      { x: at.x + x, y: at.y - y },
    ]);
  };
  return (
    pen.band(points, widthPx, "edges") + end(points[0]!, points[1]!) + end(points.at(-1)!, points.at(-2)!)
  );
}

/** The point at a distance from the first of two points, away from the other if it is positive. */
function beyond(other: Point, from: Point, by: number): Point {
  const length = lengthOf([other, from]) || 1;
  return { x: from.x + ((from.x - other.x) / length) * by, y: from.y + ((from.y - other.y) / length) * by };
}

/** Points along a line at steps of 4 px from a distance of its start on, with the direction of the line there. */
function stepsAlong(
  line: readonly Point[],
  fromPx: number,
  toPx: number,
): readonly { readonly at: Point; readonly along: Point }[] {
  let before = 0;
  return line.slice(1).flatMap((to, index) => {
    const from = line[index]!;
    const length = lengthOf([from, to]);
    const along = { x: (to.x - from.x) / (length || 1), y: (to.y - from.y) / (length || 1) };
    const steps: { readonly at: Point; readonly along: Point }[] = [];
    const first = Math.max(fromPx, fromPx + Math.ceil((before - fromPx) / 4) * 4);
    for (let place = first; place <= Math.min(before + length, toPx); place += 4)
      steps.push({
        at: { x: from.x + along.x * (place - before), y: from.y + along.y * (place - before) },
        along,
      });
    before += length;
    return steps;
  });
}

/** Places for a mark on a line: the longest straight piece first, its middle before the rest. */
function placesAlong(lines: readonly (readonly Point[])[]): readonly Point[] {
  const pieces = lines.flatMap((line) => line.slice(1).map((to, index) => [line[index]!, to] as const));
  return [...pieces]
    .sort((one, other) => lengthOf(other) - lengthOf(one))
    .flatMap(([from, to]) =>
      [0.5, 0.35, 0.65, 0.2, 0.8].map((share) => ({
        x: from.x + (to.x - from.x) * share,
        y: from.y + (to.y - from.y) * share,
      })),
    );
}
