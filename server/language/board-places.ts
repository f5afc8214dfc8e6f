import type { BoardUnit } from "../../library/model/length-unit.ts";
import type { Body, Layout, Surface } from "../../library/model/placement/layout.ts";
import type { Change, NamedInPlan, ProposedFix, Settable } from "../../library/rules/finding.ts";
import { listInWords } from "../../library/rules/wording/part-in-words.ts";
import type { CheckedPlan } from "../evaluate/checked-plan.ts";
import { fileName } from "../evaluate/files/file-name.ts";
import { fixedInWords } from "./fixed-in-words.ts";
import type { TriedPlace } from "./messages.ts";
import { plainWords } from "./plain-words.ts";

/** The unit in which a part states its place, or a surface its size; undefined if it states none. */
export function statedUnit(
  { records }: CheckedPlan,
  record: number,
  property: "at" | "size",
): BoardUnit | undefined {
  const names = Object.keys(valuesOf(valuesOf(records[record]?.input)[property]));
  if (names.some((name) => name.endsWith("In"))) return "in";
  return names.some((name) => name.endsWith("Mm")) ? "mm" : undefined;
}

/** The reason why the place of a part cannot be changed from a view, as a sentence; undefined if it can. */
export function whyFixed(plan: CheckedPlan, layout: Layout, body: Body): string | undefined {
  const { record, place } = body;
  const stated = valuesOf(plan.records[record]?.input).at;
  if (stated === undefined) return whyNotPut(plan, layout, record);
  if (place?.kind !== "on surface")
    return "Cannot be put here: its place in the text, or the surface there, has a mistake.";
  const unit = statedUnit(plan, record, "at") ?? "mm";
  for (const side of ["left", "top"] as const) {
    const written = plan.movableAt(record, ["at", sideIn(side, unit)]);
    const shared = { state: "fixed", why: "a shared constant" } as const;
    const fixed = written.state === "written" && written.sets > 1 ? shared : written;
    if (fixed.state === "fixed")
      return `Cannot be moved here: its distance from the ${side} is ${fixedInWords(fixed)}.`;
  }
  const asItIs = (["left", "top"] as const).map((side): Change => {
    const name = sideIn(side, unit);
    return { do: "set", record, path: ["at", name], value: valuesOf(stated)[name] as number };
  });
  const edits = plan.editsOf(fixWith(asItIs));
  return edits?.edits.length === 2 && edits.alsoChanges.length === 0
    ? undefined
    : "Cannot be moved here: no single place in the text sets it.";
}

function whyNotPut(
  plan: CheckedPlan,
  { surfaces }: Pick<Layout, "surfaces">,
  record: number,
): string | undefined {
  const written = plan.movableAt(record, ["at"]);
  if (written.state === "fixed") return `Cannot be put here: it is ${fixedInWords(written)}.`;
  const named = surfaces.flatMap((surface) => nameAt(plan, record, surface.record) ?? []);
  const [first] = named;
  if (!first) return `Cannot be put here: ${withoutName(plan, surfaces, record)}.`;
  const edits = plan.editsOf(
    fixWith([{ do: "set", record, path: ["at"], value: { on: first, leftMm: 0, topMm: 0 } }]),
  );
  if (!edits) return "Cannot be put here: no single place in the text describes it.";
  return edits.alsoChanges.length > 0
    ? `Cannot be put here: it is ${fixedInWords({ why: "from a spread" })}.`
    : undefined;
}

/** The reason why a part without a place cannot be put on this surface from a view, as a sentence; undefined if it can. */
export function whyNotPutOn(
  plan: CheckedPlan,
  layout: Layout,
  { record }: Body,
  surface: Surface,
): string | undefined {
  if (nameAt(plan, record, surface.record)) return whyNotPut(plan, layout, record);
  return whyNotPut(plan, { surfaces: [surface] }, record);
}

/** Why none of these surfaces can be named at the call of a part. */
function withoutName(plan: CheckedPlan, surfaces: readonly Surface[], record: number): string {
  const own = plan.callOf(record).uri;
  const [one, ...others] = surfaces;
  const which = one && others.length === 0 ? plainWords(one.name) : "a surface";
  const elsewhere = [...new Set(surfaces.map((surface) => plan.callOf(surface.record).uri))];
  if (elsewhere.length === 0 || elsewhere.includes(own))
    return others.length === 0
      ? "the surface has no name above it in the text"
      : "no surface has a name above it in the text";
  const [here, ...there] = [own, ...elsewhere].map((uri) => plainWords(fileName(uri)));
  return `${which} is described in ${listInWords(there)}, and ${here} has no name for it: export it there, and import it here`;
}

/** The name of a surface that the call of a part may use: one that it has, or that its file can import without running anything earlier. */
function nameAt(plan: CheckedPlan, record: number, surface: number): NamedInPlan | undefined {
  const { uri, start } = plan.callOf(record);
  const toImport = () => (surface < record ? plan.nameToImport(uri, surface) : undefined);
  const inText = plan.namesAt(uri, start).get(surface) ?? toImport();
  return inText === undefined ? undefined : { inText, reference: { kind: "surface", id: surface } };
}

/** The change that puts parts at places; undefined if one of them cannot be there. */
export function placingOf(
  plan: CheckedPlan,
  layout: Layout,
  places: readonly TriedPlace[],
): ProposedFix | undefined {
  const changes: Change[] = [];
  for (const place of places) {
    const body = layout.bodies.find(({ record }) => record === place.record);
    const made = body && whyFixed(plan, layout, body) === undefined && changesOf(plan, layout, body, place);
    if (!made) return undefined;
    changes.push(...made);
  }
  return fixWith(changes);
}

function changesOf(
  plan: CheckedPlan,
  { surfaces }: Layout,
  { record, place }: Body,
  { on, left, top, turnedDeg }: TriedPlace,
): readonly Change[] | undefined {
  if (!surfaces.some((surface) => surface.record === on)) return undefined;
  const unit = statedUnit(plan, record, "at") ?? statedUnit(plan, on, "size") ?? "mm";
  const distances = { left: distanceIn(left, unit), top: distanceIn(top, unit) };
  if (distances.left === undefined || distances.top === undefined) return undefined;
  const set = (path: readonly string[], value: Settable): Change => ({ do: "set", record, path, value });
  if (!place) {
    const surface = nameAt(plan, record, on);
    if (!surface) return undefined;
    const at: Settable = {
      ...{ on: surface, [sideIn("left", unit)]: distances.left, [sideIn("top", unit)]: distances.top },
      ...(turnedDeg === 0 ? {} : { turnedDeg }),
    };
    return [set(["at"], at)];
  }
  if (place.kind !== "on surface") return undefined;
  const isElsewhere = surfaces[place.surface]!.record !== on;
  const surface = isElsewhere ? nameAt(plan, record, on) : undefined;
  if (isElsewhere && !surface) return undefined;
  const stated = valuesOf(valuesOf(plan.records[record]?.input).at);
  return [
    ...(surface ? [set(["at", "on"], surface)] : []),
    ...(["left", "top"] as const).flatMap((side) => {
      const [name, distance] = [sideIn(side, unit), distances[side]!];
      return stated[name] === distance ? [] : [set(["at", name], distance)];
    }),
    ...(turnedDeg === place.turnedDeg ? [] : [set(["at", "turnedDeg"], turnedDeg)]),
  ];
}

function fixWith(changes: readonly Change[]): ProposedFix {
  return { title: "Place parts", kind: "repair", changes };
}

function sideIn(side: "left" | "top", unit: BoardUnit): string {
  return `${side}${unit === "mm" ? "Mm" : "In"}`;
}

/** To a tenth of a millimetre, or a thousandth of an inch; undefined if no plan may state it. */
function distanceIn(distance: number, unit: BoardUnit): number | undefined {
  const most = unit === "mm" ? 20_000 : 800;
  const fine = unit === "mm" ? 10 : 1_000;
  return distance >= 0 && distance <= most ? Math.round(distance * fine) / fine : undefined;
}

function valuesOf(value: unknown): Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null ? (value as Readonly<Record<string, unknown>>) : {};
}
