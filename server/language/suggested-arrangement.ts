import { arrangeInSteps } from "../../library/analysis/placement/arrangement.ts";
import {
  arrangementTask,
  lengthsCompared,
  type NewFindings,
  partsToPlace,
  partsWithoutRoom,
  whyNone,
} from "../../library/documents/suggested-places.ts";
import {
  leftOutInWords,
  lengthsGained,
  suggestionCaution,
  totalInWords,
} from "../../library/documents/suggestion-in-words.ts";
import { metresPerInch } from "../../library/model/length-limits.ts";
import type { Body } from "../../library/model/placement/layout.ts";
import { counted } from "../../library/rules/wording/format-number.ts";
import { listInWords } from "../../library/rules/wording/part-in-words.ts";
import { bodyInWords } from "../../library/rules/wording/placement-in-words.ts";
import type { CheckedPlan } from "../evaluate/checked-plan.ts";
import { fileName } from "../evaluate/files/file-name.ts";
import type { Uri } from "../evaluate/workspace.ts";
import { placingOf, statedUnit, whyNotPutOn } from "./board-places.ts";
import { countsInWords, countsOf } from "./counts.ts";
import type { TriedPlace } from "./messages.ts";
import { plainWords } from "./plain-words.ts";

/** Arrangements of the parts that a view can put on a surface, in one file, the best one first; a sentence if there are none. */
export type FoundPlaces =
  | {
      readonly state: "found";
      readonly arrangements: readonly (readonly TriedPlace[])[];
      readonly leftOut: readonly string[];
      /** The sentence if none of them can be suggested. `tried`: the findings that each brings. */
      none(tried: readonly NewFindings[]): string;
    }
  | { readonly state: "none"; readonly message: string };

/**
 * Looks for places on a surface, in steps of a few milliseconds. Each yields a sentence about the progress.
 *
 * @param on Record of the surface.
 * @param isOpen Whether a file is open: only there can places be written.
 */
export function* findPlaces(
  plan: CheckedPlan,
  on: number,
  isOpen: (uri: Uri) => boolean,
): Generator<string, FoundPlaces> {
  const { model, placement, problems } = plan.judgement;
  const none = (why: string): FoundPlaces => ({ state: "none", message: plainWords(why) });
  if (model.invalid.length > 0 || model.networkUnread || problems.length > 0)
    return none("No arrangement is suggested while a value of the plan is refused, or the plan ends early.");
  const surface = placement?.layout.surfaces.findIndex(({ record }) => record === on) ?? -1;
  if (!placement || surface < 0) return none("The plan no longer has this surface.");
  const { layout } = placement;
  const { name } = layout.surfaces[surface]!;
  const { movable, leftOut } = partsToPlace(layout, surface, plan.records);
  const writable = partsOfOneFile(plan, surface, movable, isOpen);
  const remarks = [
    ...leftOutInWords({ leftOut, withoutRoom: partsWithoutRoom(layout, surface) }),
    ...writable.leftOut,
  ];
  if (writable.bodies.length === 0)
    return none(
      [
        remarks.length > 0
          ? `No part without a place can be put on ${name}.`
          : `Every part of the plan has a place, and keeps it: no arrangement of ${name} is suggested.`,
        ...remarks,
      ].join(" "),
    );
  const unit = statedUnit(plan, on, "size") ?? "mm";
  const search = arrangeInSteps(arrangementTask(plan.judgement, surface, writable.bodies));
  let step = search.next();
  for (; !step.done; step = search.next())
    yield `Looking for places: search ${step.value.start} of ${step.value.starts}.`;
  const found = step.value;
  const noPlaces = (tried: readonly NewFindings[]) =>
    `No places on ${name}: ${whyNone(layout, surface, writable.bodies, tried)}.`;
  if (found.length === 0) return none(noPlaces([]));
  const inUnit = (mm: number) => (unit === "mm" ? mm : mm / (metresPerInch * 1_000));
  return {
    state: "found",
    arrangements: found.map(({ places }) =>
      places.map(({ body, outline: { x, y }, turnedDeg }) => ({
        ...{ record: layout.bodies[body]!.record, on, left: inUnit(x), top: inUnit(y), turnedDeg },
      })),
    ),
    leftOut: remarks,
    none: (tried) => plainWords(noPlaces(tried)),
  };
}

/** The parts whose place can be written, all in one file that is open: the one that has most of them. */
function partsOfOneFile(
  plan: CheckedPlan,
  surface: number,
  movable: readonly Body[],
  isOpen: (uri: Uri) => boolean,
): { readonly bodies: readonly Body[]; readonly leftOut: readonly string[] } {
  const layout = plan.judgement.placement!.layout;
  const { record: on } = layout.surfaces[surface]!;
  const byReason = new Map<string, Body[]>();
  const byFile = new Map<string, Body[]>();
  const add = (to: Map<string, Body[]>, key: string, body: Body) =>
    to.set(key, [...(to.get(key) ?? []), body]);
  for (const body of movable) {
    const atCorner = { record: body.record, on, left: 0, top: 0, turnedDeg: 0 } as const;
    const why = whyNotPutOn(plan, layout, body, layout.surfaces[surface]!);
    const fix = why === undefined ? placingOf(plan, layout, [atCorner]) : undefined;
    const file = fix && plan.editsOf(fix)?.edits[0]?.uri;
    if (file === undefined) add(byReason, why ?? "No single place in the text describes it.", body);
    else if (!isOpen(file))
      add(
        byReason,
        `Their places are written in ${fileName(file)}, which is not open: open it, and suggest again.`,
        body,
      );
    else add(byFile, file, body);
  }
  const [first, ...others] = [...byFile].toSorted(([, one], [, other]) => other.length - one.length);
  const inWords = (bodies: readonly Body[]) => listInWords(bodies.map(bodyInWords));
  const leftOut = [
    ...[...byReason].map(([why, bodies]) => `Left out: ${inWords(bodies)}. ${why}`),
    ...others.map(
      ([file, bodies]) =>
        `Left out, because one step changes one file: ${inWords(bodies)}, in ${fileName(file)}. Suggest again once these places are taken.`,
    ),
  ];
  return { bodies: first?.[1] ?? [], leftOut };
}

/** Sentences about the plan with these places, against the plan of the text. */
export function factsOfPlaces(
  before: CheckedPlan,
  after: CheckedPlan,
  { places, leftOut }: { readonly places: readonly TriedPlace[]; readonly leftOut: readonly string[] },
): readonly string[] {
  const { layout } = after.judgement.placement!;
  const records = new Set(places.map(({ record }) => record));
  const { runs, total } = lengthsCompared(
    before.judgement,
    after.judgement,
    new Set(layout.bodies.flatMap(({ record, index }) => (records.has(record) ? [index] : []))),
  );
  return [
    `Places for ${counted(places.length, "part")}; every other part keeps its own.`,
    ...(total
      ? [
          totalInWords(total, after.judgement.model.lengthUnit),
          ...(total.suggestedCopperKg < total.todayCopperKg
            ? []
            : ["That is no less copper than today: the suggestion only gives the parts a place."]),
          "Lengths that the plan states stay in the text.",
        ]
      : [
          runs.length === 0
            ? "No run of the plan ends at these parts."
            : "No run has a known length both today and with these places.",
        ]),
    ...lengthsGained(runs, after.judgement.model.lengthUnit),
    `Findings today: ${findingsInWords(before)}. With these places: ${findingsInWords(after)}.`,
    ...leftOut,
    suggestionCaution,
  ].map((fact) => plainWords(fact));
}

/** Hints and accepted findings aside. */
function findingsInWords(plan: CheckedPlan): string {
  return countsInWords({ ...countsOf(plan), hints: 0, accepted: 0 });
}
