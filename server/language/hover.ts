import type { Hover, Position } from "vscode-languageserver-types";
import { derivation as reckoning } from "../../library/documents/derivation.ts";
import { networkDerivation } from "../../library/documents/network-derivation.ts";
import type { Part } from "../../library/model/network.ts";
import type { JudgedPlan, JudgedRun } from "../../library/rules/rule.ts";
import { kindInWords } from "../../library/rules/wording/part-in-words.ts";
import type { PlacedFinding, ValueAtPosition } from "../evaluate/checked-plan.ts";
import type { Uri } from "../evaluate/workspace.ts";
import { circuitSummary } from "./circuit-summary.ts";
import { unsolvedSummary } from "./conductor-table.ts";
import { several } from "./counts.ts";
import { energySummary, periodSummary } from "./energy-summary.ts";
import type { Working } from "./messages.ts";
import { networkAt } from "./network-at.ts";
import { partSummary } from "./part-summary.ts";
import { markdownWords, plainWords } from "./plain-words.ts";
import type { PlanInView } from "./plan-in-view.ts";
import { scenarioSummary } from "./scenario-summary.ts";
import { terminalSummary } from "./terminal-summary.ts";

/**
 * Current, ampacity, drop, temperature and permitted protection of a circuit or cable; the output or input of a part, in each
 * scenario; the result of a scenario: each against its limit and with its source; the energy of all of them in each period. On the call or any of its values; on the name
 * of a terminal, the conductors connected there. Undefined anywhere else.
 */
export function hover(view: PlanInView, uri: Uri, position: Position): Hover | undefined {
  const spot = spotAt(view, uri, position);
  if (!spot) return undefined;
  const subjects = subjectsAt(view, spot);
  const findings = findingsElsewhere(view, spot, view.offset(uri, position)!);
  const unjudged = unjudgedAt(view, spot);
  if (subjects.length + findings.length + unjudged.length === 0) return undefined;
  const shown = subjects.slice(0, mostSubjects);
  const parts = [
    ...shown.map(({ heading, summary }) => `${heading}${summary()}`),
    ...unjudged,
    subjects.length > shown.length
      ? `… and ${several(subjects.length - shown.length, `other ${kindOfAll(subjects)}`)} with this value.`
      : "",
    findings.length > 0
      ? `**Found elsewhere in this ${shown[0]?.kind ?? "call"}**\n\n${findingsInWords(findings)}`
      : "",
    shown[0]?.judged ? `---\n\n**How this was worked out**\n\n${reckoning(shown[0].judged)}` : "",
    view.current ? "" : "_As of the last complete text._",
  ];
  const range = view.range(spot.place);
  return {
    contents: { kind: "markdown", value: parts.filter((part) => part !== "").join("\n\n") },
    ...(range ? { range } : {}),
  };
}

/** The whole derivation for a position, as a page of its own. */
export function working(view: PlanInView, uri: Uri, position: Position): Working | undefined {
  const spot = spotAt(view, uri, position);
  const subject = spot && subjectsAt(view, spot)[0];
  if (!subject) return undefined;
  const { network } = view.plan.judgement;
  const steps = [
    subject.judged ? reckoning(subject.judged) : "",
    network && !(subject.judged && !subject.judged.circuit.inNetwork) ? networkDerivation(network) : "",
  ];
  return {
    circuit: plainWords(subject.name),
    markdown: `# ${markdownWords(subject.name)}\n\n${subject.summary()}\n\n## How this was worked out\n\n${steps.filter((step) => step !== "").join("\n\n")}`,
  };
}

function spotAt(view: PlanInView, uri: Uri, position: Position): ValueAtPosition | undefined {
  const offset = view.offset(uri, position);
  return offset === undefined ? undefined : view.plan.at(uri, offset);
}

/** One subject of a hover. */
interface Subject {
  readonly kind: "circuit" | "cable" | "part" | "scenario" | "terminal" | "period";
  readonly name: string;
  /** In front of the summary. */
  readonly heading: string;
  readonly summary: () => string;
  /** For a circuit or cable. */
  readonly judged?: JudgedRun;
}

function subjectsAt({ plan }: PlanInView, spot: ValueAtPosition): Subject[] {
  const { judgement } = plan;
  const records = new Set([spot.record, ...spot.alsoSets]);
  const at = networkAt(judgement, spot);
  const runs = judgement.circuits.filter(({ circuit }) => records.has(circuit.record));
  const named = (kind: Subject["kind"], name: string, summary: () => string): Subject => ({
    ...{ kind, name, summary },
    heading: `**${markdownWords(name)}**: `,
  });
  const circuits = runs.map((judged) => ({
    ...named(judged.circuit.word, judged.circuit.name, () =>
      withEnergy(circuitSummary(judgement, judged), judgement, judged.circuit.record),
    ),
    // A least current is no result: its drop and temperature are not worked out for the reader.
    ...(judged.circuit.loadIsLeast ? {} : { judged }),
  }));
  const period = periodSummary(judgement, spot.record, spot.path[0]);
  if (period) return [named("period", period.name, () => period.text)];
  if (!at) return circuits;
  const { judged, parts, conductors, scenarios, terminal, fed } = at;
  const { network } = judged;
  if (terminal !== undefined) {
    const name = `${network.parts[network.terminals[terminal]!.part]!.name}`;
    return [{ ...named("terminal", name, () => terminalSummary(judged, terminal)), heading: "" }];
  }
  const ofPart = (part: Part) =>
    named("part", part.name || kindInWords(part), () =>
      withEnergy(partSummary(judgement, judged, part), judgement, part.record),
    );
  if (fed) return [ofPart(fed)];
  const judgedRecords = new Set(runs.map(({ circuit }) => circuit.record));
  return [
    ...parts.map(ofPart),
    ...circuits,
    ...conductors.flatMap((index) => {
      const { record, name, run } = network.conductors[index]!;
      return judgedRecords.has(record) ? [] : [named(run.word, name, () => unsolvedSummary(judged, index))];
    }),
    ...scenarios.map((index) =>
      named("scenario", network.scenarios[index]!.name, () => scenarioSummary(judgement, judged, index)),
    ),
  ];
}

function withEnergy(summary: string, judgement: JudgedPlan, record: number): string {
  const energy = energySummary(judgement, record);
  return energy === "" ? summary : `${summary}\n\n${energy}`;
}

/** "circuit" if all are, else a word for anything. */
function kindOfAll(subjects: readonly Subject[]): string {
  const [first] = subjects;
  return first && subjects.every(({ kind }) => kind === first.kind) ? first.kind : "one";
}

/** Reports anything that cannot be judged; silence would read as "nothing found". */
function unjudgedAt({ plan }: PlanInView, { record, alsoSets }: ValueAtPosition): string[] {
  const { model } = plan.judgement;
  const records = new Set([record, ...alsoSets]);
  const circuits = model.unjudged
    .filter((one) => records.has(one.record))
    .slice(0, mostSubjects)
    .map(
      ({ name }) =>
        `**${markdownWords(name)}**: not judged, because a value of it or of the build is invalid.`,
    );
  const known = [...model.circuits, ...model.unjudged].some((one) => one.record === record);
  if (circuits.length > 0 || known || !model.networkUnread || model.build.record === record) return circuits;
  const stopping = model.invalid.filter(({ stopsNetwork }) => stopsNetwork);
  const refused = stopping.slice(0, mostSubjects).map(({ name, path }) => {
    const property = path.length > 0 ? `, ${path.join(".")}` : "";
    return `- ${markdownWords(`${name}${property}`)}`;
  });
  return [
    `**Not judged**, because a value of the network is invalid, so its currents are unknown:\n\n${refused.join("\n")}`,
  ];
}

/**
 * On the call, all of its circuit; on a value, those inside it. Not those under the cursor: the editor shows them itself, right
 * above this.
 */
function findingsElsewhere(
  { plan }: PlanInView,
  { record, path, place }: ValueAtPosition,
  offset: number,
): PlacedFinding[] {
  return plan.findings.filter(({ finding: { at }, place: { uri, start, end } }) => {
    if (uri === place.uri && start <= offset && offset <= end) return false;
    if ("record" in at && at.record === record && path.length === 0) return true;
    return uri === place.uri && start >= place.start && end <= place.end;
  });
}

function findingsInWords(findings: readonly PlacedFinding[]): string {
  const more = findings.length - mostFindings;
  const lines = findings.slice(0, mostFindings).map(findingInWords);
  return [...lines, ...(more > 0 ? [`- … and ${several(more, "other finding")}`] : [])].join("\n");
}

function findingInWords({ finding, message }: PlacedFinding): string {
  const accepted = finding.accepted === undefined ? "" : ` _accepted: ${markdownWords(finding.accepted)}_`;
  return `- ${finding.severity} \`${finding.rule}\`: ${markdownWords(message)}${accepted}`;
}

/** No one reads more than these in one popup. */
const mostSubjects = 3;
/** A call in a loop may have thousands. */
const mostFindings = 20;
