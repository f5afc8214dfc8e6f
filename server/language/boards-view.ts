import { groupedBy } from "../../library/analysis/grouped-by.ts";
import type { Placement } from "../../library/analysis/placement/placement.ts";
import { overlap } from "../../library/analysis/placement/rectangles.ts";
import { laidLengthM } from "../../library/analysis/placement/run-ways.ts";
import { metresPerInch } from "../../library/model/length-limits.ts";
import type { BoardUnit } from "../../library/model/length-unit.ts";
import type { Body, Lead, Surface } from "../../library/model/placement/layout.ts";
import { counted, formatExact } from "../../library/rules/wording/format-number.ts";
import { lengthInUnit } from "../../library/rules/wording/lengths.ts";
import { listInWords } from "../../library/rules/wording/part-in-words.ts";
import type { CheckedPlan, PlacedFinding } from "../evaluate/checked-plan.ts";
import { fileName } from "../evaluate/files/file-name.ts";
import { keyOf, keysOf, severityOrder } from "../evaluate/fixes/finding-keys.ts";
import { surfacesLeftOut } from "../evaluate/surfaces-left-out.ts";
import { boardPicture } from "./board-picture.ts";
import { statedUnit, whyFixed } from "./board-places.ts";
import { factsOf } from "./element-facts.ts";
import type { BoardConductor, BoardPart, BoardSurface, BoardsView } from "./messages.ts";
import { plainWords } from "./plain-words.ts";
import type { PlanInView } from "./plan-in-view.ts";
import { versionsOf } from "./versions-in-view.ts";

/**
 * The surfaces of a plan with their parts, channels and conductors. `tried` is the plan with parts at other places; the parts that can be
 * moved are always those of the text.
 */
export function boardsView(
  view: PlanInView,
  { conductors, tried }: { readonly conductors: boolean; readonly tried?: CheckedPlan },
): BoardsView {
  const { plan } = view;
  const shown = tried ?? plan;
  const { placement } = shown.judgement;
  const head = {
    ...{ uri: view.client(plan.root).uri, versions: versionsOf(view), current: view.current },
    title: plainWords(plan.judgement.model.build.name ?? fileName(plan.root)),
  };
  const notes = notesOf(shown);
  if (!placement || placement.layout.surfaces.length === 0)
    return { ...head, ...{ notes, surfaces: [], parts: [], conductors: [] } };
  const { layout } = placement;
  const findings = findingsByRecord(shown);
  return {
    ...{ ...head, notes },
    surfaces: layout.surfaces.map((surface, index) => ({
      ...surfaceOf(view, surface),
      picture: boardPicture(shown.judgement, index, { title: head.title, conductors }),
    })),
    parts: layout.bodies
      .filter((body) => isShown(shown, body))
      .map((body) => partOf(view, placement, body, findings.get(body.record) ?? [])),
    conductors: conductorsOf(shown, (record) => locationOf(view, record)),
    ...(tried ? { tried: differenceOf(plan, tried) } : {}),
  };
}

/** A surface that was not read is never passed by in silence. */
function notesOf(plan: CheckedPlan): readonly string[] {
  const { placement, model, problems } = plan.judgement;
  const isEmpty = !placement || placement.layout.surfaces.length === 0;
  const leftOut = surfacesLeftOut(plan);
  const later = isEmpty ? "its surfaces are not known" : "later parts are not shown";
  const notes = [
    ...(problems.length > 0 ? [`The plan was not run to its end: ${later}.`] : []),
    ...(leftOut.length > 0
      ? [plainWords(`Not shown, because of a mistake in the text: ${listInWords(leftOut, 3)}.`)]
      : []),
    ...(model.networkUnread && !isEmpty ? ["The network could not be read: no drop is known."] : []),
  ];
  return isEmpty && notes.length === 0 ? [noSurface] : notes;
}

const noSurface =
  "The plan has no surface: surface({ size: { widthMm: 1_200, heightMm: 800 } }) describes a board or a wall, and at: { on: board, leftMm: 120, topMm: 80 } puts a part on it.";

/** A part at the end of a channel is on no surface, and one mounted on another part moves with it. */
function isShown({ records }: CheckedPlan, { record, place }: Body): boolean {
  if (place?.kind === "at end") return false;
  const statesPlace = (records[record]?.input as { readonly at?: unknown } | undefined)?.at !== undefined;
  return statesPlace || place === undefined;
}

function surfaceOf(view: PlanInView, surface: Surface): Omit<BoardSurface, "picture"> {
  const { record, name, width, height } = surface;
  const unit = statedUnit(view.plan, record, "size") ?? "mm";
  return {
    ...{ record, name: plainWords(name), width, height, unit },
    size: `${inUnit(width, unit)} × ${inUnit(height, unit)} ${unit}`,
    ...locationOf(view, record),
  };
}

function partOf(
  view: PlanInView,
  { layout }: Placement,
  body: Body,
  findings: readonly PlacedFinding[],
): BoardPart {
  const { record, name, size, place } = body;
  const unit = statedUnit(view.plan, record, "at");
  const own = view.plan.judgement.placement?.layout;
  const bodyInText = own?.bodies[body.index];
  const fixed = own && bodyInText?.record === record ? whyFixed(view.plan, own, bodyInText) : undefined;
  const severity = findings
    .map(({ finding }) => finding.severity)
    .sort((one, other) => severityOrder[one] - severityOrder[other])[0];
  return {
    ...{ record, name: plainWords(name) },
    ...(size && { size: { width: size.width, height: size.height } }),
    ...(place?.kind === "on surface" && {
      place: placeOf(layout.surfaces[place.surface]!.record, body, place, layout.bodies, unit ?? "mm"),
    }),
    ...(unit && { unit }),
    ...(fixed !== undefined && { fixed }),
    ...(severity && { severity }),
    findings: findings.map(({ message }) => plainWords(message)),
    ...locationOf(view, record),
  };
}

function placeOf(
  on: number,
  { index, size }: Body,
  { surface, outline, turnedDeg, position }: Extract<Body["place"], { kind: "on surface" }>,
  bodies: readonly Body[],
  unit: BoardUnit,
): NonNullable<BoardPart["place"]> {
  const { x: left, y: top, width, height } = outline;
  return {
    ...{ on, left, top, width, height, turnedDeg },
    words: `${inUnit(left, unit)} ${unit} from the left, ${inUnit(top, unit)} ${unit} from the top, ${position}`,
    overlaps: bodies.flatMap((other) =>
      other.index !== index &&
      size &&
      other.size &&
      other.place?.kind === "on surface" &&
      other.place.surface === surface &&
      overlap(outline, other.place.outline)
        ? [other.record]
        : [],
    ),
  };
}

function inUnit(lengthMm: number, unit: BoardUnit): string {
  return formatExact(unit === "mm" ? lengthMm : lengthMm / (metresPerInch * 1_000));
}

function conductorsOf(
  plan: CheckedPlan,
  located: (record: number) => Pick<BoardConductor, "location">,
): readonly BoardConductor[] {
  const { judgement } = plan;
  if (!judgement.placement) return [];
  const { layout, ways } = judgement.placement;
  const { build, lengthUnit } = judgement.model;
  const drops = new Map<number, string | undefined>();
  const dropOf = (record: number) => {
    if (!drops.has(record))
      drops.set(record, factsOf(judgement, record).find(({ label }) => label === "Drop")?.value);
    return drops.get(record);
  };
  return layout.leads.map((lead, index) => {
    const way = ways[index]!;
    const drop = dropOf(lead.record);
    return {
      name: plainWords(nameOf(lead)),
      length:
        way.state === "found"
          ? lengthInUnit(laidLengthM(way, build.bench.slackPercent), lengthUnit)
          : way.state === "no way"
            ? "no way between its ends"
            : `not known: ${counted(way.bodies.length, "end")} on no surface`,
      ...(drop !== undefined && { drop: plainWords(drop) }),
      ...located(lead.record),
    };
  });
}

function nameOf({ name, role }: Lead): string {
  return role === "cable" ? name : `${name}, ${role}`;
}

function findingsByRecord({ findings }: CheckedPlan): ReadonlyMap<number, readonly PlacedFinding[]> {
  const by = new Map<number, PlacedFinding[]>();
  for (const placed of findings) {
    const { at, accepted, severity } = placed.finding;
    if (!("record" in at) || accepted !== undefined || severity === "hint") continue;
    const there = by.get(at.record);
    if (there) there.push(placed);
    else by.set(at.record, [placed]);
  }
  return by;
}

function differenceOf(before: CheckedPlan, after: CheckedPlan): NonNullable<BoardsView["tried"]> {
  const [had, has] = [keysOf(before.judgement.findings), keysOf(after.judgement.findings)];
  const wordedIn = (plan: CheckedPlan, without: ReadonlyMap<string, unknown>) =>
    [...plan.findings]
      .sort(worstFirst)
      .flatMap(({ finding, message }) =>
        finding.accepted === undefined && finding.severity !== "hint" && !without.has(keyOf(finding))
          ? [plainWords(message)]
          : [],
      );
  return {
    newFindings: wordedIn(after, had),
    goneFindings: wordedIn(before, has),
    lengths: changedLengths(before, after),
  };
}

function worstFirst({ finding: one }: PlacedFinding, { finding: other }: PlacedFinding): number {
  return severityOrder[one.severity] - severityOrder[other.severity];
}

/** A line for each run: the lengths of its conductors, and its drop once. */
function changedLengths(before: CheckedPlan, after: CheckedPlan): readonly string[] {
  const had = conductorsOf(before, () => ({}));
  const has = conductorsOf(after, () => ({}));
  const leads = after.judgement.placement?.layout.leads ?? [];
  return [...groupedBy(leads, ({ record }) => record).values()].flatMap((ends) => {
    const [first] = ends as [Lead];
    const lengths = ends.flatMap(({ index, role }) => {
      const [was, is] = [had[index]?.length, has[index]!.length];
      return was === undefined || was === is
        ? []
        : [`${role === "cable" ? "" : `${role} `}${fromTo(was, is)}`];
    });
    const [was, is] = [had[first.index]?.drop, has[first.index]!.drop];
    const drop = was && is && was !== is ? [`drop ${fromTo(was, is)}`] : [];
    const changes = [...(lengths.length > 0 ? [lengths.join(", ")] : []), ...drop];
    return changes.length === 0 ? [] : [`${plainWords(first.name)}: ${changes.join("; ")}`];
  });
}

/** "1.1 → 1.2 m, at most 3 m": the words that both end with once. */
function fromTo(was: string, is: string): string {
  const [before, after] = [was.split(" "), is.split(" ")];
  let same = 0;
  while (same < Math.min(before.length, after.length) - 1 && before.at(-1 - same) === after.at(-1 - same))
    same++;
  return `${before.slice(0, before.length - same).join(" ")} → ${is}`;
}

function locationOf(view: PlanInView, record: number): Pick<BoardPart, "location"> {
  const place = view.plan.callOf(record);
  const range = view.span(place);
  return range ? { location: { uri: view.client(place.uri).uri, range } } : {};
}
