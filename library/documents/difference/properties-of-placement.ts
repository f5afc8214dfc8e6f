import type { Body, Channel, Compartment, Layout, Rectangle, Surface } from "../../model/placement/layout.ts";
import { boardUnitOf } from "../../model/unit-of-plan.ts";
import { exactLength, exactShortLength, longUnitOf } from "../../rules/wording/lengths.ts";
import { type Compared, type Property, quantity, said, stated, type Worded } from "./property.ts";

/*
 * Surfaces, channels, compartments and the places of parts in comparable form. Lengths are compared in mm, as the layout has them, and
 * read in the unit of the boards.
 */

export function surfaceProperties(surface: Surface, layout: Layout): Property[] {
  const { compartments } = layout;
  const { mm, area, areas, short } = wordsOn(layout);
  const { width, height, orientation, keepFree, outOfReach, fixtures, bareMetal, openAbove } = surface;
  return [
    ...short("width", "width", width),
    ...short("height", "height", height),
    ...said(orientation, "orientation", "orientation"),
    ...said(compartments[surface.compartment ?? -1]?.name, "compartment", "compartment"),
    ...surroundings(surface),
    ...said(areas(keepFree), "keepFree", "places kept free"),
    ...said(areas(outOfReach), "outOfReach", "out of reach"),
    ...said(
      listed(
        fixtures.map((one) =>
          one.distanceMm === undefined
            ? worded`${one.fixture} ${area(one)}`
            : worded`${one.fixture} ${area(one)}, ${mm(one.distanceMm)}`,
        ),
      ),
      "fixtures",
      "fixtures",
    ),
    ...said(bareMetal || undefined, "bareMetal", "bare metal"),
    ...said(openAbove || undefined, "openAbove", "open above"),
    ...stated("bilgeWaterMm", "bilge water", surface.bilgeWaterMm, "mm"),
    ...stated("carriesKg", "carries", surface.carriesKg, "kg"),
  ];
}

export function channelProperties(channel: Channel, layout: Layout): Property[] {
  const { surfaces, compartments } = layout;
  const { mm, at, long } = wordsOn(layout);
  const { way, course, inside } = channel;
  return [
    ...said(way, "way", "kind"),
    ...(course.kind === "along"
      ? [
          ...said(surfaces[course.surface]!.name, "on", "on"),
          ...said(
            listed(
              course.path.map(({ x, y }) => at(x, y)),
              ", ",
            ),
            "path",
            "path",
          ),
        ]
      : [
          ...said(
            worded`${surfaces[course.from.surface]!.name}, ${at(course.from.x, course.from.y)}`,
            "from",
            "from",
          ),
          ...said(
            course.to && worded`${surfaces[course.to.surface]!.name}, ${at(course.to.x, course.to.y)}`,
            "to",
            "to",
          ),
          ...long("length", "length", course.lengthMm),
        ]),
    ...said(
      inside &&
        (inside.shape === "round"
          ? worded`diameter ${mm(inside.diameter)}`
          : worded`${mm(inside.width)} × ${mm(inside.height)}`),
      "inside",
      "inside",
    ),
    ...stated("fillPercent", "permitted fill", channel.fillPercent, "%"),
    ...stated("bendRadiusMm", "radius of its bends", channel.bendRadiusMm, "mm"),
    ...said(channel.grommet, "grommet", "grommet"),
    ...stated("supportsEveryMm", "distance of supports", channel.supportsEveryMm, "mm"),
    ...said(compartments[channel.compartment ?? -1]?.name, "compartment", "compartment"),
    ...surroundings(channel),
  ];
}

export function compartmentProperties(compartment: Compartment): Property[] {
  const { walls, outsideC, inletCm2, outletCm2 } = compartment;
  return [
    ...surroundings(compartment),
    ...said(
      listed((walls ?? []).map(({ material, areaM2 }) => worded`${material} ${areaM2} m²`)),
      "walls",
      "walls",
    ),
    ...stated("outsideC", "temperature outside", outsideC, "°C"),
    ...stated("inletCm2", "openings low down", inletCm2, "cm²"),
    ...stated("outletCm2", "openings at the top", outletCm2, "cm²"),
  ];
}

/** The outline and place of a part, or of the load that a circuit states itself. */
export function placeProperties(body: Body | undefined, layout: Layout): Property[] {
  if (!body) return [];
  const { surfaces, channels } = layout;
  const { at, long, short } = wordsOn(layout);
  const { size, place, air, terminals } = body;
  return [
    ...(place?.kind === "on surface"
      ? [
          ...said(surfaces[place.surface]!.name, "at.on", "surface"),
          ...short("at.left", "from the left edge", place.outline.x),
          ...short("at.top", "from the top edge", place.outline.y),
          ...(place.turnedDeg === 0 ? [] : [quantity("at.turned", "turned by", place.turnedDeg, "°")]),
        ]
      : []),
    ...(place?.kind === "at end"
      ? [
          ...said(channels[place.channel]!.name, "at.endOf", "at the end of"),
          ...long("at.beyond", "beyond that end", place.beyondMm),
        ]
      : []),
    ...short("size.width", "width", size?.width),
    ...short("size.height", "height", size?.height),
    ...short("size.depth", "depth", size?.depth),
    ...(["left", "right", "top", "bottom"] as const).flatMap((side) =>
      short(`air.${side}`, `air, ${side}`, air[side]),
    ),
    ...said(body.mountingPositions?.join(", "), "mountingPositions", "permitted positions"),
    ...stated("heatW", "heat given off", body.heatW, "W"),
    ...said(body.keepCool || undefined, "keepCool", "must stay cool"),
    ...stated("massKg", "mass", body.massKg, "kg"),
    ...said(body.terminalsCovered, "terminalsCovered", "terminals covered"),
    ...Object.entries(terminals).flatMap(([name, spots]) =>
      said(
        listed(
          spots.map(({ x, y, leaves }) => {
            const spot = at(...fromCorner(x, y, place));
            return leaves ? worded`${spot} ${leaves}` : spot;
          }),
        ),
        `terminalsAt.${name}`,
        `place of ${name}`,
      ),
    ),
  ];
}

function surroundings({ ambientC, engineSpace }: Pick<Surface, "ambientC" | "engineSpace">): Property[] {
  return [
    ...stated("ambientC", "ambient", ambientC, "°C"),
    ...said(engineSpace, "engineSpace", "in an engine space"),
  ];
}

/** From the part's own corner: a moved part has not other terminals. */
function fromCorner(x: number, y: number, place: Body["place"]): readonly [number, number] {
  return place?.kind === "on surface" ? [x - place.outline.x, y - place.outline.y] : [x, y];
}

function listed(all: readonly Worded[], between = "; "): Worded | undefined {
  if (all.length === 0) return undefined;
  return { text: all.map(({ text }) => text).join(between), compare: all.map(comparedBy) };
}

/** A text made of others, with the values in it. */
function worded(texts: readonly string[], ...between: readonly (Worded | string | number)[]): Worded {
  const each = between.map((one) => (typeof one === "object" ? one : { text: `${one}`, compare: one }));
  return {
    text: texts.map((text, at) => `${text}${each[at]?.text ?? ""}`).join(""),
    compare: [...texts, ...each.map(comparedBy)],
  };
}

function comparedBy({ text, compare = text }: Worded): Compared {
  return compare;
}

/** Words and properties in the unit of the boards, each with its value in mm. */
function wordsOn(layout: Layout) {
  const unit = boardUnitOf(layout);
  const worth = (text: string, lengthMm: number): Worded => ({ text, compare: nearestSame(lengthMm) });
  const mm = (lengthMm: number) => worth(exactShortLength(lengthMm, unit), lengthMm);
  const at = (x: number, y: number) => worded`${mm(x)} / ${mm(y)}`;
  const area = ({ x, y, width, height }: Rectangle) => worded`${at(x, y)} (${mm(width)} × ${mm(height)})`;
  const areas = (all: readonly (Rectangle & { readonly name?: string })[]) =>
    listed(all.map((one) => (one.name ? worded`${one.name} ${area(one)}` : area(one))));
  const short = (id: string, words: string, lengthMm: number | undefined) =>
    said(lengthMm === undefined ? undefined : mm(lengthMm), id, words);
  const long = (id: string, words: string, lengthMm: number) =>
    said(worth(exactLength(lengthMm / 1_000, longUnitOf[unit]), lengthMm), id, words);
  return { mm, at, area, areas, short, long };
}

/** Of a length that is a difference of two in inches, the last binary digits are rounded: to a millionth of a millimetre. */
function nearestSame(lengthMm: number): number {
  return Math.round(lengthMm * 1e6) / 1e6;
}
