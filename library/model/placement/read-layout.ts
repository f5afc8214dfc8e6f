import type { BuildValues } from "../build-properties.ts";
import { displayName } from "../display-name.ts";
import type { NetworkRecords } from "../network-records.ts";
import { isObject } from "../plain-values.ts";
import type { Properties, PropertyTable, ValuesOf } from "../property-table.ts";
import { acceptedIn } from "../read-run.ts";
import { readValues } from "../read-values.ts";
import { isPlacementWord, type PlacementWord, type PlanRecord } from "../record.ts";
import type { InvalidValue } from "../run.ts";
import { keptIfEqual } from "../same-plain-data.ts";
import { type ChannelValues, channelProperties } from "./channel-properties.ts";
import { type CompartmentValues, compartmentProperties } from "./compartment-properties.ts";
import { longMillimetres, millimetres, pointOf, rectangleOf, sizeOf } from "./in-millimetres.ts";
import type {
  Channel,
  ChannelInside,
  Compartment,
  Fixture,
  Layout,
  PlaceOnSurface,
  Rectangle,
  Surface,
  Surroundings,
} from "./layout.ts";
import { type Identity, type LayoutContext, referred } from "./layout-context.ts";
import { readBodies } from "./read-bodies.ts";
import { readLeads } from "./read-leads.ts";
import { type SurfaceValues, surfaceProperties } from "./surface-properties.ts";

/**
 * The layout of a plan, and the errors in it, none of which stops a network: a surface, channel or place with a refused value is left
 * out. Undefined if the plan has no surface, channel or compartment.
 */
export function readLayout(
  records: readonly PlanRecord[],
  found: NetworkRecords,
  build: BuildValues,
): ReadLayout {
  if (!records.some(statesPlaces)) return { layout: undefined, invalid: [] };
  const invalid: InvalidValue[] = [];
  const context: LayoutContext = {
    records,
    refuse(record, name, refusals) {
      for (const refusal of refusals) invalid.push({ record, name, ...refusal, serves: "places" });
    },
    known: { compartment: new Map(), surface: new Map(), channel: new Map() },
  };
  const compartments = readAll(context, "compartment", compartmentProperties, compartmentFrom);
  const surfaces = readAll(context, "surface", surfaceProperties, surfaceFrom(compartments));
  const channels = readAll(context, "channel", channelProperties, channelFrom(compartments, surfaces));
  const bodies = readBodies(found, surfaces, context);
  const leads = readLeads(found, context);
  if (!records.some(({ word }) => isPlacementWord(word))) return { layout: undefined, invalid };
  return { layout: kept(build, { compartments, surfaces, channels, bodies, leads }), invalid };
}

function statesPlaces({ word, input }: PlanRecord): boolean {
  if (isPlacementWord(word)) return true;
  return isObject(input) && ["at", "through", "terminalsAt"].some((name) => input[name] !== undefined);
}

/** The same object for an edit that moves nothing. */
const kept = keptIfEqual<BuildValues, Layout>();

export interface ReadLayout {
  readonly layout: Layout | undefined;
  readonly invalid: readonly InvalidValue[];
}

type Make<Values, Made> = (values: Values, from: Identity, context: LayoutContext) => Made | undefined;

function readAll<Shape extends Properties, Made>(
  context: LayoutContext,
  word: PlacementWord,
  table: PropertyTable<Shape>,
  make: Make<ValuesOf<Shape>, Made>,
): readonly Made[] {
  const all: Made[] = [];
  context.records.forEach((entry, record) => {
    if (entry.word !== word) return;
    const { values, invalid } = readValues(entry.input, table);
    const stated = (values as { readonly name?: string }).name ?? "";
    const name = displayName(stated) || displayName(entry.fallbackName);
    context.refuse(record, name, invalid);
    const made = make(values, { record, name }, context);
    if (made === undefined) return;
    context.known[word].set(record, all.length);
    all.push(made);
  });
  return all;
}

const compartmentFrom: Make<CompartmentValues, Compartment> = (values, from) => {
  const { ambientC, engineSpace, walls, outsideC, inletCm2, outletCm2 } = values;
  return {
    accept: acceptedIn(values.accept),
    ...from,
    ...surroundings({ ambientC, engineSpace }),
    ...(walls && walls.length > 0 && { walls: walls as NonNullable<Compartment["walls"]> }),
    ...(outsideC !== undefined && { outsideC }),
    ...(inletCm2 !== undefined && { inletCm2 }),
    ...(outletCm2 !== undefined && { outletCm2 }),
  };
};

/** Its own, or else those of the places that it is in, the nearest first. */
function surroundings(...places: readonly (MaybeSurroundings | undefined)[]): Surroundings {
  const ambientC = places.find((place) => place?.ambientC !== undefined)?.ambientC;
  const engineSpace = places.find((place) => place?.engineSpace !== undefined)?.engineSpace;
  return { ...(ambientC !== undefined && { ambientC }), ...(engineSpace !== undefined && { engineSpace }) };
}

interface MaybeSurroundings {
  readonly ambientC?: number | undefined;
  readonly engineSpace?: boolean | undefined;
}

function surfaceFrom(compartments: readonly Compartment[]): Make<SurfaceValues, Surface> {
  return (values, from, context) => {
    const size = sizeOf(values.size);
    if (!size) return undefined;
    const at = { path: ["compartment"], ...from };
    const compartment = referred(values.compartment, "compartment", at, context);
    const { ambientC, engineSpace, bilgeWaterMm, carriesKg, keepFree = [], outOfReach = [] } = values;
    return {
      accept: acceptedIn(values.accept),
      ...from,
      width: size.width,
      height: size.height,
      writtenIn: values.size?.widthIn === undefined ? "mm" : "in",
      orientation: values.orientation ?? "vertical",
      ...surroundings({ ambientC, engineSpace }, compartments[compartment ?? -1]),
      ...(compartment !== undefined && { compartment }),
      keepFree: keepFree.flatMap((area) => {
        const outline = rectangleOf(area);
        return outline ? [{ name: displayName(area.name ?? "") || "a place kept free", ...outline }] : [];
      }),
      outOfReach: outOfReach.flatMap((area) => rectangleOf(area) ?? []),
      fixtures: (values.fixtures ?? []).flatMap(fixtureFrom),
      bareMetal: values.bareMetal ?? false,
      openAbove: values.openAbove ?? false,
      ...(bilgeWaterMm !== undefined && { bilgeWaterMm }),
      ...(carriesKg !== undefined && { carriesKg }),
    };
  };
}

type WrittenFixture = NonNullable<SurfaceValues["fixtures"]>[number];

function fixtureFrom(written: WrittenFixture, index: number): readonly Fixture[] {
  const outline: Rectangle | undefined = rectangleOf(written);
  const { fixture, distanceMm } = written;
  if (!outline || !fixture) return [];
  const name = displayName(written.name ?? "") || `the ${fixture}`;
  return [{ fixture, name, index, ...outline, ...(distanceMm !== undefined && { distanceMm }) }];
}

function channelFrom(
  compartments: readonly Compartment[],
  surfaces: readonly Surface[],
): Make<ChannelValues, Channel> {
  return (values, from, context) => {
    const course = courseOf(values, from, context);
    if (!course) return undefined;
    const at = { path: ["compartment"], ...from };
    const own = referred(values.compartment, "compartment", at, context);
    const surface = course.kind === "along" ? surfaces[course.surface] : undefined;
    const compartment = own ?? surface?.compartment;
    const { ambientC, engineSpace, fillPercent, bendRadiusMm, grommet, supportsEveryMm } = values;
    const inside = insideOf(values.inside);
    return {
      accept: acceptedIn(values.accept),
      ...from,
      way: values.way ?? "trunking",
      course,
      ...surroundings({ ambientC, engineSpace }, compartments[own ?? -1], surface),
      ...(inside && { inside }),
      ...(fillPercent !== undefined && { fillPercent }),
      ...(bendRadiusMm !== undefined && { bendRadiusMm }),
      ...(grommet !== undefined && { grommet }),
      ...(supportsEveryMm !== undefined && { supportsEveryMm }),
      ...(compartment !== undefined && { compartment }),
    };
  };
}

function courseOf(
  values: ChannelValues,
  from: Identity,
  context: LayoutContext,
): Channel["course"] | undefined {
  if (values.on) {
    const surface = referred(values.on, "surface", { path: ["on"], ...from }, context);
    const path = (values.path ?? []).flatMap((point) => pointOf(point) ?? []);
    if (surface === undefined || path.length < 2 || path.length < (values.path?.length ?? 0))
      return undefined;
    return { kind: "along", surface, path };
  }
  const start = placeOnSurface(values.from, { path: ["from", "on"], ...from }, context);
  const end = placeOnSurface(values.to, { path: ["to", "on"], ...from }, context);
  const lengthMm = longMillimetres(values, "length");
  if (!start || lengthMm === undefined || (values.to && !end)) return undefined;
  return { kind: "between", from: start, lengthMm, ...(end && { to: end }) };
}

function placeOnSurface(
  written: ChannelValues["from"],
  at: Parameters<typeof referred>[2],
  context: LayoutContext,
): PlaceOnSurface | undefined {
  const surface = referred(written?.on, "surface", at, context);
  const point = pointOf(written);
  return surface === undefined || !point ? undefined : { surface, ...point };
}

function insideOf(written: ChannelValues["inside"]): ChannelInside | undefined {
  const diameter = millimetres(written, "diameter");
  if (diameter !== undefined) return { shape: "round", diameter };
  const size = sizeOf(written);
  return size && { shape: "rectangle", width: size.width, height: size.height };
}
