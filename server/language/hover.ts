import type { Hover, Position } from "vscode-languageserver-types";
import { working as reckoning } from "../../library/documents/working.ts";
import { asGiven, figure, tellApart, withUnit } from "../../library/rules/figures.ts";
import type { JudgedCircuit } from "../../library/rules/rule.ts";
import { sizeInWords } from "../../library/rules/sized-fix.ts";
import { ampacitySourceInWords, sourceInWords } from "../../library/rules/source-in-words.ts";
import type { PlacedFinding, Spot } from "../evaluate/checked-plan.ts";
import type { Uri } from "../evaluate/workspace.ts";
import { loadInWords } from "./circuit-in-words.ts";
import { several } from "./counts.ts";
import type { Working } from "./messages.ts";
import { markdownWords, plainWords } from "./plain-words.ts";
import type { PlanInView } from "./plan-in-view.ts";

/**
 * What a circuit carries and may carry, what it loses, how warm it gets and what may protect it, each against its limit and with
 * its source; on the call of a circuit or any of its values. Undefined anywhere else.
 */
export function hover(view: PlanInView, uri: Uri, position: Position): Hover | undefined {
  const spot = spotAt(view, uri, position);
  if (!spot) return undefined;
  const judged = circuitsAt(view, spot);
  const findings = findingsElsewhere(view, spot, view.offset(uri, position)!);
  const unjudged = unjudgedAt(view, spot);
  if (judged.length + findings.length + unjudged.length === 0) return undefined;
  const shown = judged.slice(0, mostCircuits);
  const parts = [
    ...shown.map((one) => `**${markdownWords(one.circuit.name)}**: ${summary(one)}`),
    ...unjudged,
    judged.length > shown.length
      ? `… and ${several(judged.length - shown.length, "other circuit")} with this value.`
      : "",
    findings.length > 0
      ? `**Found elsewhere in this circuit**\n\n${findings.map(findingInWords).join("\n")}`
      : "",
    shown[0] ? `---\n\n**How this was worked out**\n\n${reckoning(shown[0])}` : "",
    view.current ? "" : "_As of the last complete text._",
  ];
  const range = view.range(spot.place);
  return {
    contents: { kind: "markdown", value: parts.filter((part) => part !== "").join("\n\n") },
    ...(range ? { range } : {}),
  };
}

/** The whole reckoning of the circuit at a position, for a page of its own. */
export function working(view: PlanInView, uri: Uri, position: Position): Working | undefined {
  const spot = spotAt(view, uri, position);
  const judged = spot && circuitsAt(view, spot)[0];
  if (!judged) return undefined;
  return {
    circuit: plainWords(judged.circuit.name),
    markdown: `# ${markdownWords(judged.circuit.name)}\n\n${summary(judged)}\n\n## How this was worked out\n\n${reckoning(judged)}`,
  };
}

function spotAt(view: PlanInView, uri: Uri, position: Position): Spot | undefined {
  const offset = view.offset(uri, position);
  return offset === undefined ? undefined : view.plan.at(uri, offset);
}

function circuitsAt({ plan }: PlanInView, { record, alsoSets }: Spot): JudgedCircuit[] {
  const records = [record, ...alsoSets];
  return plan.judgement.circuits.filter(({ circuit }) => records.includes(circuit.record));
}

/** A circuit that cannot be judged says so; silence would read as "nothing found". */
function unjudgedAt({ plan }: PlanInView, { record, alsoSets }: Spot): string[] {
  return plan.judgement.model.unjudged
    .filter((one) => record === one.record || alsoSets.includes(one.record))
    .slice(0, mostCircuits)
    .map(
      ({ name }) =>
        `**${markdownWords(name)}**: not judged, because a value of it or of the build cannot be used.`,
    );
}

/**
 * On the call, all of its circuit; on a value, those inside it. Not those under the cursor: the editor shows them itself, right
 * above this.
 */
function findingsElsewhere(
  { plan }: PlanInView,
  { record, path, place }: Spot,
  offset: number,
): PlacedFinding[] {
  return plan.findings.filter(({ finding: { at }, place: { uri, start, end } }) => {
    if (uri === place.uri && start <= offset && offset <= end) return false;
    if ("record" in at && at.record === record && path.length === 0) return true;
    return uri === place.uri && start >= place.start && end <= place.end;
  });
}

function findingInWords({ finding, message }: PlacedFinding): string {
  const accepted = finding.accepted === undefined ? "" : ` _accepted: ${markdownWords(finding.accepted)}_`;
  return `- ${finding.severity} \`${finding.rule}\`: ${markdownWords(message)}${accepted}`;
}

/** One line for each limit: the value, the limit, the margin, the source. */
function summary({ circuit, result }: JudgedCircuit): string {
  const { ampacity, drop, protection } = result;
  const rows = [
    carried(circuit, ampacity),
    lost(circuit.systemV, drop),
    circuit.minimumV === undefined ? "" : arriving(circuit.minimumV, drop),
    warmed(ampacity, drop),
    protectedBy(circuit, protection),
  ];
  const heading = `${loadInWords(circuit)}${wattsInWords(circuit)} at ${asGiven(circuit.systemV)} V on ${sizeInWords(circuit.conductor)}`;
  return `${heading}\n\n${rows.filter((row) => row !== "").join("\n")}`;
}

type Result = JudgedCircuit["result"];

function wattsInWords({ loadW, loadAtV }: JudgedCircuit["circuit"]): string {
  if (loadW === undefined) return "";
  return ` (${asGiven(loadW)} W / ${asGiven(loadAtV)} V)`;
}

/** `margin` is empty where there is none to tell, `source` where nothing was judged. */
function row(what: string, is: string, limit: string, margin: string, source: string): string {
  const parts = [`- ${what}: **${is}**`, limit, margin].filter((part) => part !== "").join("; ");
  return source === "" ? parts : `${parts} · _${source}_`;
}

function carried({ loadA }: JudgedCircuit["circuit"], ampacity: Result["ampacity"]): string {
  const source = ampacitySourceInWords(ampacity);
  if (!ampacity.judged) {
    const why =
      ampacity.why === "place-too-hot"
        ? "the place is as hot as the insulation may be"
        : "no table covers it";
    return row("Current", withUnit(loadA, "A"), `not judged: ${why}`, "", source);
  }
  const [load, limit] = tellApart(loadA, ampacity.ampacityA);
  return row(
    "Current",
    `${load} A`,
    `may carry ${limit} A`,
    marginInWords(ampacity.ampacityA - loadA, "A"),
    source,
  );
}

/** The margin in volts: what is left of a percentage would itself be read as a percentage of something. */
function lost(systemV: number, drop: Result["drop"]): string {
  const { dropV, dropPercent, dropLimitPercent, dropLimitSource, overloaded, source } = drop;
  const limitV = (systemV * dropLimitPercent) / 100;
  const [volts, limitVolts] = tellApart(dropV, limitV);
  const [percent, limit] = tellApart(dropPercent, dropLimitPercent);
  const least = overloaded ? "at least " : "";
  return row(
    "Drop, round trip",
    `${least}${volts} V, ${percent} %`,
    `limit ${limitVolts} V, ${limit} %`,
    marginInWords(limitV - dropV, "V"),
    `limit: ${sourceInWords(dropLimitSource)}; resistance: ${sourceInWords(source)}`,
  );
}

function arriving(minimumV: number, { arrivingV }: Result["drop"]): string {
  const [arrives, needed] = tellApart(arrivingV, minimumV);
  return row(
    "Arriving",
    `${arrives} V`,
    `needs ${needed} V`,
    marginInWords(arrivingV - minimumV, "V"),
    "stated in the plan",
  );
}

/** No temperature beyond the limit is named: what an overloaded conductor comes to, nobody can reckon. */
function warmed(ampacity: Result["ampacity"], { conductorC, overloaded }: Result["drop"]): string {
  const { columnC, ambientC } = ampacity;
  const what = "Temperature of the conductor";
  const around = `${withUnit(ambientC, "°C")} around it`;
  if (!ampacity.judged) return row(what, "not judged", `${around}; limit ${withUnit(columnC, "°C")}`, "", "");
  const [is, limit] = tellApart(conductorC, columnC);
  const source = ampacitySourceInWords(ampacity);
  if (overloaded) return row(what, `beyond its limit of ${withUnit(columnC, "°C")}`, around, "", source);
  return row(
    what,
    `${is} °C`,
    `${around}; limit ${limit} °C`,
    marginInWords(columnC - conductorC, "°C"),
    source,
  );
}

function protectedBy({ protection: stated }: JudgedCircuit["circuit"], range: Result["protection"]): string {
  const { minA, maxA, aimA, bestRatingA, source } = range;
  const is = stated ? `${asGiven(stated.ratingA)} A` : "none stated";
  const aim = bestRatingA === undefined ? "" : `, best ${withUnit(bestRatingA, "A")}`;
  const limit =
    maxA === undefined
      ? `allowed from ${withUnit(minA, "A")}; up to what, was not judged`
      : maxA < minA
        ? `none is allowed: the load alone is above ${withUnit(maxA, "A")}`
        : `allowed ${figure(minA)} to ${withUnit(maxA, "A")}, aim ${withUnit(aimA, "A")}${aim}`;
  const possible = maxA !== undefined && maxA >= minA;
  const margin = stated && possible ? marginInWords(maxA - stated.ratingA, "A") : "";
  return row("Protection", is, limit, margin, sourceInWords(source));
}

function marginInWords(margin: number, unit: "A" | "V" | "°C"): string {
  return margin < 0 ? `**${withUnit(-margin, unit)} beyond it**` : `margin ${withUnit(margin, unit)}`;
}

/** More than these in one popup nobody reads. */
const mostCircuits = 3;
