import type { Drawing, DrawnElement, View } from "../../library/documents/diagram/drawing.ts";
import type { Judgement } from "../../library/judge.ts";
import type { SourceRange } from "../evaluate/checked-plan.ts";
import { fileName } from "../evaluate/files/file-name.ts";
import { factsOf } from "./element-facts.ts";
import type { Diagram, DiagramElement, Picture } from "./messages.ts";
import { plainWords } from "./plain-words.ts";
import type { PlanInView } from "./plan-in-view.ts";
import { versionsOf } from "./versions-in-view.ts";

/** The content of a picture: its view, and the scenario of its figures (index in the network's scenarios; undefined: none). */
export interface Shown {
  readonly view: View;
  readonly scenario: number | undefined;
  /** The colour edition. */
  readonly colours: boolean;
}

/** A plan's picture with its links to the current texts. Every text of it is fit to be shown as plain text. */
export function diagram(view: PlanInView, shown: Shown, drawing: Drawing): Diagram {
  const names = scenarioNames(view.plan.judgement);
  const scenario = shown.scenario === undefined ? undefined : names[shown.scenario];
  return {
    uri: view.client(view.plan.root).uri,
    versions: versionsOf(view),
    title: titleOf(view),
    current: view.current,
    view: shown.view,
    colours: shown.colours,
    notes: notesOf(view, shown.scenario, drawing),
    picture: pictureOf(view, drawing),
    scenarios: names,
    ...(scenario === undefined ? {} : { scenario }),
  };
}

/** For a plan without any complete text so far, or one that could not be checked: `why` states the reason in a sentence. */
export function withoutPicture(
  root: { readonly uri: string; readonly version: number | null },
  { view, colours }: Pick<Shown, "view" | "colours">,
  why: string,
): Diagram {
  return {
    uri: root.uri,
    versions: root.version === null ? {} : { [root.uri]: root.version },
    title: plainWords(fileName(root.uri)),
    current: true,
    ...{ view, colours },
    notes: [plainWords(why)],
    scenarios: [],
  };
}

/** As they are shown and requested. */
export function scenarioNames({ model }: Judgement): string[] {
  return (model.network?.scenarios ?? []).map(({ name }) => plainWords(name));
}

function titleOf({ plan }: PlanInView): string {
  return plainWords(plan.judgement.model.build.name ?? fileName(plan.root));
}

/**
 * If something is missing from the picture, its notices are repeated beside it, because the foot of the picture may be out of
 * sight: silence must not mean "all of it is in the picture".
 */
function notesOf({ plan }: PlanInView, scenario: number | undefined, { notices }: Drawing): string[] {
  const { model, network, problems } = plan.judgement;
  const unsolved = scenario !== undefined && network?.result.scenarios[scenario]?.state === "unsolved";
  const missing = model.networkUnread || model.unjudged.length > 0 || unsolved;
  return [
    ...(problems.length > 0
      ? ["The plan was not run to its end: its later parts are not in the picture."]
      : []),
    ...(missing ? notices.map(plainWords) : []),
  ];
}

function pictureOf(view: PlanInView, { svg, elements }: Drawing): Picture {
  const { parts = [] } = view.plan.judgement.network?.network ?? {};
  const battery = parts.find(({ kind }) => kind === "battery");
  const start =
    battery && elements.find(({ kind, records }) => kind === "part" && records.includes(battery.record));
  return {
    svg,
    elements: elements.map((element) => elementOf(view, element)),
    ...(start ? { start: start.id } : {}),
  };
}

function elementOf(view: PlanInView, drawn: DrawnElement): DiagramElement {
  const { id, kind, name, description, severity, findings, box } = drawn;
  const location = locationOf(view, drawn);
  return {
    id,
    kind,
    name: plainWords(name),
    description: plainWords(description),
    findings: findings.map(plainWords),
    facts: (drawn.records[0] === undefined ? [] : factsOf(view.plan.judgement, drawn.records[0])).map(
      ({ label, value }) => ({ label, value: plainWords(value) }),
    ),
    box,
    ...(severity === undefined ? {} : { severity }),
    ...(location ? { location } : {}),
  };
}

/**
 * The call that made it, or the value in that call that states it. If several records share the name, a click leads to the first.
 */
function locationOf(view: PlanInView, { records, property }: DrawnElement): DiagramElement["location"] {
  const [record] = records;
  if (record === undefined) return undefined;
  const call = view.plan.callOf(record);
  const value = property && view.plan.placeOf(record, [property]);
  // A value that many share is elsewhere; then the call is nearer to the clicked element.
  const place = value && isWithin(value, call) ? value : call;
  const range = view.span(place);
  return range && { uri: view.client(place.uri).uri, range };
}

function isWithin(inner: SourceRange, outer: SourceRange): boolean {
  return inner.uri === outer.uri && inner.start >= outer.start && inner.end <= outer.end;
}
