import { copperKg, copperMm2M, crossSectionMm2 } from "../analysis/copper-area.ts";
import { arrange } from "../analysis/placement/arrangement.ts";
import { type ArrangedBody, type ArrangementTask, turnsOn } from "../analysis/placement/arrangement-board.ts";
import { waysOfRuns } from "../analysis/placement/run-ways.ts";
import type { Judgement } from "../judge.ts";
import type { BoardUnit, LengthUnit } from "../model/length-unit.ts";
import type { Body, Layout } from "../model/placement/layout.ts";
import { isObject } from "../model/plain-values.ts";
import type { PlanRecord } from "../model/record.ts";
import { boardOf } from "../rules/board.ts";
import type { Finding } from "../rules/finding.ts";
import { ruleById } from "../rules/registry.ts";
import { counted, withUnit } from "../rules/wording/format-number.ts";
import { listInWords } from "../rules/wording/part-in-words.ts";
import { bodyInWords } from "../rules/wording/placement-in-words.ts";
import { addedFindings } from "./fewer-sizes/added-findings.ts";

/** Places for the parts that have a size and no place yet, on one surface; without places if `why` says the reason. */
export interface SuggestedPlaces {
  readonly surface: string;
  /** Index of the record of the surface. */
  readonly record: number;
  /** In which the plan writes that surface: the places are whole millimetres, or eighths of an inch. */
  readonly unit: BoardUnit;
  /** In the order of the plan. */
  readonly places: readonly SuggestedPlace[];
  /** Why there are none: no part to place, no arrangement found, or none without a new finding. */
  readonly why?: string;
  /** True: no part is without a place, or none that could get one. */
  readonly nothingToPlace: boolean;
  /** Parts without a place that were left out, in words. */
  readonly leftOut: readonly { readonly part: string; readonly because: LeftOut }[];
  /** Parts on the surface for which no room was kept, because they state no size. */
  readonly withoutRoom: readonly string[];
  /** In which people read the lengths. */
  readonly lengthUnit: LengthUnit;
  /** The runs at the parts with a suggested place, in the order of the plan. */
  readonly runs: readonly ComparedRun[];
  /** Of the runs whose length is known today and with these places; undefined if there is none. */
  readonly total?: ComparedTotal | undefined;
  /** Information about the plan with these places that it does not have today. No error and no warning is new. */
  readonly added: readonly Finding[];
}

interface SuggestedPlace {
  /** Index of the record of the part. */
  readonly record: number;
  readonly name: string;
  readonly leftMm: number;
  readonly topMm: number;
  readonly turnedDeg: 0 | 90 | 180 | 270;
}

type LeftOut = "no size" | "cannot be mounted so" | "mounted on another part";

/** Lengths of all conductors of a run together, m; undefined if they are not known. */
interface ComparedRun {
  readonly name: string;
  readonly todayM: number | undefined;
  readonly suggestedM: number | undefined;
}

interface ComparedTotal {
  readonly runs: number;
  readonly todayM: number;
  readonly suggestedM: number;
  readonly todayCopperKg: number;
  readonly suggestedCopperKg: number;
}

/**
 * Suggests places on a surface, of which the whole plan was judged: no error and no warning is new with them. It changes records, not
 * text.
 *
 * @param surface Index of the surface in the layout.
 * @param judge The engine, over the changed records; it runs once for each arrangement that was found.
 */
export function suggestedPlaces(
  records: readonly PlanRecord[],
  judgement: Judgement,
  surface: number,
  judge: (records: readonly PlanRecord[]) => Judgement,
): SuggestedPlaces {
  const { layout: stated, lengthUnit } = judgement.model;
  const layout = stated!;
  const { name, record, writtenIn: unit } = layout.surfaces[surface]!;
  const { movable, leftOut } = partsToPlace(layout, surface, records);
  const withoutRoom = partsWithoutRoom(layout, surface);
  const nothingToPlace = movable.length === 0;
  const none = (why: string): SuggestedPlaces => ({
    ...{
      surface: name,
      record,
      unit,
      lengthUnit,
      places: [],
      why,
      nothingToPlace,
      leftOut,
      withoutRoom,
      runs: [],
      added: [],
    },
  });
  if (nothingToPlace)
    return none(
      leftOut.length > 0 ? "no part without a place can be placed" : "every part of the plan has a place",
    );
  const tried = arrange(arrangementTask(judgement, surface, movable)).map(({ places }) => {
    const after = judge(withPlaces(records, layout, surface, places));
    return { places, after, ...newWith(judgement, after) };
  });
  const best = bestOf(tried);
  if (!best) return none(whyNone(layout, surface, movable, tried));
  const { places, after, notes } = best;
  return {
    ...{ surface: name, record, unit, lengthUnit, nothingToPlace, leftOut, withoutRoom },
    places: places.map(({ body, outline, turnedDeg }) => {
      const { record, name } = layout.bodies[body]!;
      return { record, name, leftMm: outline.x, topMm: outline.y, turnedDeg };
    }),
    ...lengthsCompared(judgement, after, new Set(places.map(({ body }) => body))),
    added: notes,
  };
}

/** The findings of the plan with places that it does not have today: errors and warnings that are not accepted, and information. */
export interface NewFindings {
  readonly worse: readonly Finding[];
  readonly notes: readonly Finding[];
}

export function newWith(before: Judged, after: Judged): NewFindings {
  const added = addedFindings(before.findings, after.findings).filter(
    ({ accepted }) => accepted === undefined,
  );
  const isNote = ({ severity }: Finding) => severity === "info";
  return {
    worse: added.filter((one) => one.severity !== "hint" && !isNote(one)),
    notes: added.filter(isNote),
  };
}

type Judged = Pick<Judgement, "findings">;

/** Of arrangements, the best one first, the one without a new error or warning that brings the least information; undefined if none is. */
export function bestOf<Tried extends NewFindings>(tried: readonly Tried[]): Tried | undefined {
  return tried
    .filter(({ worse }) => worse.length === 0)
    .toSorted((one, other) => one.notes.length - other.notes.length)[0];
}

/** The search for places of some parts of {@link partsToPlace}. */
export function arrangementTask(
  judgement: Judgement,
  surface: number,
  bodies: readonly Body[],
): ArrangementTask {
  const { facts } = boardOf(judgement)!;
  const sections = new Map(
    judgement.circuits.map(({ circuit: { record, conductor } }) => [
      record,
      crossSectionMm2(conductor) * conductor.parallel,
    ]),
  );
  return {
    ...{ facts, surface, bodies: bodies.map(({ index }) => index) },
    copperMm2: facts.layout.leads.map(({ record }) => sections.get(record) ?? 0),
  };
}

/** Parts on a surface for which no room is kept, because they state no size. */
export function partsWithoutRoom({ bodies }: Layout, surface: number): readonly string[] {
  return bodies
    .filter(({ size, place }) => !size && place?.kind === "on surface" && place.surface === surface)
    .map(bodyInWords);
}

/** The parts without a place: those for which a surface may have one, and the others with the reason. */
export function partsToPlace(
  layout: Layout,
  surface: number,
  records: readonly PlanRecord[],
): { readonly movable: readonly Body[]; readonly leftOut: SuggestedPlaces["leftOut"] } {
  const movable: Body[] = [];
  const leftOut: { readonly part: string; readonly because: LeftOut }[] = [];
  for (const body of layout.bodies) {
    if (body.place) continue;
    const because = isMounted(records[body.record]!)
      ? "mounted on another part"
      : !body.size
        ? "no size"
        : turnsOn(body, layout.surfaces[surface]!).length === 0
          ? "cannot be mounted so"
          : undefined;
    if (because) leftOut.push({ part: bodyInWords(body), because });
    else movable.push(body);
  }
  return { movable, leftOut };
}

/** A device on a terminal of another part has its place there. */
function isMounted({ word, input }: PlanRecord): boolean {
  return word !== "circuit" && isObject(input) && isObject(input.on) && input.on.kind === "terminal";
}

/** Why no arrangement is suggested, as half a sentence. `tried`: those that were found, the best one first. */
export function whyNone(
  layout: Layout,
  surface: number,
  movable: readonly Body[],
  tried: readonly NewFindings[],
): string {
  const [best] = tried;
  if (best) {
    const named = best.worse.map(({ rule, subject }) => `"${ruleById(rule)!.title}" (${subject})`);
    const all = tried.length === 1 ? "the one that was found" : `each of the ${tried.length} that were found`;
    return `no arrangement was found that brings no new finding: ${all} brings at least one, the best of them ${listInWords([...new Set(named)], 3)}`;
  }
  const { width, height } = layout.surfaces[surface]!;
  const large = movable.filter(
    ({ size }) =>
      Math.min(size!.width, size!.height) > Math.min(width, height) ||
      Math.max(size!.width, size!.height) > Math.max(width, height),
  );
  if (large.length > 0)
    return `${listInWords(large.map(bodyInWords))} ${large.length === 1 ? "is" : "are"} larger than the surface`;
  const areaMm2 = (size: { readonly width: number; readonly height: number }) => size.width * size.height;
  const placed = layout.bodies.flatMap(({ size, place }) =>
    size && place?.kind === "on surface" && place.surface === surface ? [areaMm2(size)] : [],
  );
  const needed = [...placed, ...movable.map(({ size }) => areaMm2(size!))].reduce((sum, one) => sum + one, 0);
  const percent = (100 * needed) / (width * height);
  const parts = `${counted(placed.length + movable.length, "part")} with ${withUnit(percent, "%")} of the area of the surface`;
  return percent > 100
    ? `there is no room for ${parts}`
    : `no arrangement was found for ${parts}: channels, the air that parts need and the places kept free or out of reach leave too little room, or the search missed one`;
}

function withPlaces(
  records: readonly PlanRecord[],
  layout: Layout,
  surface: number,
  found: readonly ArrangedBody[],
): readonly PlanRecord[] {
  const on = { kind: "surface", id: layout.surfaces[surface]!.record };
  const changed = [...records];
  for (const { body, outline, turnedDeg } of found) {
    const { record } = layout.bodies[body]!;
    const at = { on, leftMm: outline.x, topMm: outline.y, turnedDeg };
    changed[record] = { ...records[record]!, input: { ...(records[record]!.input as object), at } };
  }
  return changed;
}

/**
 * Lengths of the runs at parts that got a place.
 *
 * @param moved Indices of their bodies.
 */
export function lengthsCompared(
  before: Judgement,
  after: Judgement,
  moved: ReadonlySet<number>,
): Pick<SuggestedPlaces, "runs" | "total"> {
  const { layout, build, lengthUnit } = after.model;
  const ways = waysOfRuns(layout!, build.bench.slackPercent, lengthUnit);
  const concerned = new Set(
    layout!.leads
      .filter(({ from, to }) => moved.has(from.body) || moved.has(to.body))
      .map((lead) => lead.record),
  );
  const compared = before.circuits.flatMap(({ circuit }) => {
    if (!concerned.has(circuit.record)) return [];
    const way = ways.get(circuit.record);
    const copperWith = (lengths: { readonly positiveM: number; readonly negativeM: number }) =>
      copperKg(copperMm2M(lengths, circuit.conductor));
    const { name, positiveM, negativeM = 0 } = circuit;
    const today = positiveM === undefined ? undefined : { positiveM, negativeM };
    return [{ name, today, way, copperWith }];
  });
  const sum = { runs: 0, todayM: 0, suggestedM: 0, todayCopperKg: 0, suggestedCopperKg: 0 };
  for (const { today, way, copperWith } of compared) {
    if (!today || !way) continue;
    sum.runs++;
    sum.todayM += lengthOf(today);
    sum.suggestedM += lengthOf(way);
    sum.todayCopperKg += copperWith(today);
    sum.suggestedCopperKg += copperWith(way);
  }
  return {
    runs: compared.map(({ name, today, way }) => ({
      name,
      todayM: today && lengthOf(today),
      suggestedM: way && lengthOf(way),
    })),
    total: sum.runs > 0 ? sum : undefined,
  };
}

function lengthOf({
  positiveM,
  negativeM,
}: {
  readonly positiveM: number;
  readonly negativeM: number;
}): number {
  return positiveM + negativeM;
}
