import type { Body, Channel, Compartment, Layout, Rectangle, Surface } from "../../model/placement/layout.ts";
import { grouped } from "../../model/property.ts";
import { type Property, quantity, said, stated } from "./property.ts";

/* Surfaces, channels, compartments and the places of parts in comparable form. Lengths are in mm, as the layout has them. */

export function surfaceProperties(surface: Surface, { compartments }: Layout): Property[] {
  const { width, height, orientation, keepFree, outOfReach, fixtures, bareMetal, openAbove } = surface;
  return [
    quantity("width", "width", width, "mm"),
    quantity("height", "height", height, "mm"),
    ...said(orientation, "orientation", "orientation"),
    ...said(compartments[surface.compartment ?? -1]?.name, "compartment", "compartment"),
    ...surroundings(surface),
    ...said(areas(keepFree), "keepFree", "places kept free"),
    ...said(areas(outOfReach), "outOfReach", "out of reach"),
    ...said(
      listed(
        fixtures.map(
          (one) =>
            `${one.fixture} ${area(one)}${one.distanceMm === undefined ? "" : `, ${one.distanceMm} mm`}`,
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

export function channelProperties(channel: Channel, { surfaces, compartments }: Layout): Property[] {
  const { way, course, inside } = channel;
  return [
    ...said(way, "way", "kind"),
    ...(course.kind === "along"
      ? [
          ...said(surfaces[course.surface]!.name, "on", "on"),
          ...said(course.path.map(({ x, y }) => at(x, y)).join(", "), "path", "path"),
        ]
      : [
          ...said(
            `${surfaces[course.from.surface]!.name}, ${at(course.from.x, course.from.y)}`,
            "from",
            "from",
          ),
          ...said(
            course.to && `${surfaces[course.to.surface]!.name}, ${at(course.to.x, course.to.y)}`,
            "to",
            "to",
          ),
          quantity("length", "length", course.lengthMm / 1_000, "m"),
        ]),
    ...said(
      inside &&
        (inside.shape === "round"
          ? `diameter ${mm(inside.diameter)}`
          : `${mm(inside.width)} × ${mm(inside.height)}`),
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
      listed((walls ?? []).map(({ material, areaM2 }) => `${material} ${areaM2} m²`)),
      "walls",
      "walls",
    ),
    ...stated("outsideC", "temperature outside", outsideC, "°C"),
    ...stated("inletCm2", "openings low down", inletCm2, "cm²"),
    ...stated("outletCm2", "openings at the top", outletCm2, "cm²"),
  ];
}

/** The outline and place of a part, or of the load that a circuit states itself. */
export function placeProperties(body: Body | undefined, { surfaces, channels }: Layout): Property[] {
  if (!body) return [];
  const { size, place, air, terminals } = body;
  return [
    ...(place?.kind === "on surface"
      ? [
          ...said(surfaces[place.surface]!.name, "at.on", "surface"),
          quantity("at.left", "from the left edge", place.outline.x, "mm"),
          quantity("at.top", "from the top edge", place.outline.y, "mm"),
          ...(place.turnedDeg === 0 ? [] : [quantity("at.turned", "turned by", place.turnedDeg, "°")]),
        ]
      : []),
    ...(place?.kind === "at end"
      ? [
          ...said(channels[place.channel]!.name, "at.endOf", "at the end of"),
          quantity("at.beyond", "beyond that end", place.beyondMm / 1_000, "m"),
        ]
      : []),
    ...stated("size.width", "width", size?.width, "mm"),
    ...stated("size.height", "height", size?.height, "mm"),
    ...stated("size.depth", "depth", size?.depth, "mm"),
    ...(["left", "right", "top", "bottom"] as const).flatMap((side) =>
      stated(`air.${side}`, `air, ${side}`, air[side], "mm"),
    ),
    ...said(body.mountingPositions?.join(", "), "mountingPositions", "permitted positions"),
    ...stated("heatW", "heat given off", body.heatW, "W"),
    ...said(body.keepCool || undefined, "keepCool", "must stay cool"),
    ...stated("massKg", "mass", body.massKg, "kg"),
    ...said(body.terminalsCovered, "terminalsCovered", "terminals covered"),
    ...Object.entries(terminals).flatMap(([name, spots]) =>
      said(
        listed(spots.map(({ x, y, leaves }) => `${within(x, y, place)}${leaves ? ` ${leaves}` : ""}`)),
        `terminalsAt.${name}`,
        `place of ${name}`,
      ),
    ),
  ];
}

/** From the part's own corner: a moved part has not other terminals. */
function within(x: number, y: number, place: Body["place"]): string {
  if (place?.kind !== "on surface") return at(x, y);
  return at(x - place.outline.x, y - place.outline.y);
}

function surroundings({ ambientC, engineSpace }: Pick<Surface, "ambientC" | "engineSpace">): Property[] {
  return [
    ...stated("ambientC", "ambient", ambientC, "°C"),
    ...said(engineSpace, "engineSpace", "in an engine space"),
  ];
}

function areas(all: readonly (Rectangle & { readonly name?: string })[]): string | undefined {
  return listed(all.map((one) => `${one.name ? `${one.name} ` : ""}${area(one)}`));
}

function area({ x, y, width, height }: Rectangle): string {
  return `${at(x, y)} (${mm(width)} × ${mm(height)})`;
}

function listed(all: readonly string[]): string | undefined {
  return all.length === 0 ? undefined : all.join("; ");
}

function at(x: number, y: number): string {
  return `${mm(x)} / ${mm(y)}`;
}

function mm(length: number): string {
  return `${grouped(length)} mm`;
}
