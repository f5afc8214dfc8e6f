import type { KnownDrop } from "../../library/analysis/circuit-result.ts";
import { designCurrentA } from "../../library/analysis/design-current.ts";
import type { NetworkConductor } from "../../library/model/network.ts";
import type { Run } from "../../library/model/run.ts";
import { sizeOfRunInWords } from "../../library/rules/fixes/sized-fix.ts";
import type { JudgedNetwork, JudgedPlan, JudgedRun } from "../../library/rules/rule.ts";
import { familyInWords } from "../../library/rules/wording/family-in-words.ts";
import {
  exceeds,
  formatDistinct,
  formatExact,
  formatRounded,
  withUnit,
} from "../../library/rules/wording/format-number.ts";
import { occasionInWords } from "../../library/rules/wording/part-in-words.ts";
import {
  ampacitySourceInWords,
  sourceInWords,
  tableSourceInWords,
} from "../../library/rules/wording/source-in-words.ts";
import { conductorTable } from "./conductor-table.ts";
import { conductorFaultRows } from "./fault-rows.ts";
import { limitRow, marginInWords } from "./limit-row.ts";
import { conductorsOf } from "./network-at.ts";
import { lowestVoltageRow } from "./part-summary.ts";
import { markdownWords } from "./plain-words.ts";
import { wayRow } from "./way-row.ts";

/**
 * One line for each limit: the value, the limit, the margin, the source. For a circuit or a cable of a network also the loss on
 * the whole supply path, the dead-short current, and a table of the scenarios.
 */
export function circuitSummary(plan: JudgedPlan, judged: JudgedRun): string {
  const { circuit, result } = judged;
  const { ampacity, drop, protection } = result;
  const wiring = wiringOf(plan, circuit);
  const isKnown = !circuit.loadIsLeast;
  const rows = [
    isKnown ? carried(circuit, ampacity) : "",
    isKnown ? (circuit.word === "cable" ? lostOnCable(drop) : lost(circuit, drop)) : "",
    ...(wiring ? wayRow(plan, wiring.device) : []),
    circuit.minimumV === undefined || wiring || !drop.judged ? "" : arriving(circuit.minimumV, drop),
    ...(wiring && circuit.word === "circuit" ? lowestVoltageRow(wiring.judged, wiring.device) : []),
    isKnown ? warmed(ampacity, drop) : "",
    wiring && isReturn(wiring) ? "" : protectedBy(circuit, protection),
    ...(wiring ? conductorFaultRows(wiring.judged, wiring.conductor) : []),
  ];
  const words = plan.model.networkUnread && circuit.inNetwork ? notInNetwork : isKnown ? "" : currentUnknown;
  const heading = `${isKnown ? "" : "At least "}${loadInWords(circuit)}${wattsInWords(circuit)}${wiring ? flowsIn(wiring, circuit) : ""} at ${formatExact(circuit.systemV)} V on ${sizeOfRunInWords(circuit)}`;
  const table = wiring ? conductorTable(wiring.judged, wiring.conductor, circuit.word) : "";
  return [heading, words, rows.filter((row) => row !== "").join("\n"), table]
    .filter((part) => part !== "")
    .join("\n\n");
}

/** A circuit whose network could not be read is judged by its own statements, and this is reported. */
const notInNetwork =
  "Judged alone, by its stated load or that of a single device: a value of the network is invalid, so its currents are unknown.";

const currentUnknown =
  "Its greatest current is unknown, because the network could not be solved here: current, drop and temperature are not judged beyond this.";

/** The place of a circuit or a cable in the network: its own or its positive conductor, and the part at its end. */
interface Wiring {
  readonly judged: JudgedNetwork;
  readonly conductor: number;
  readonly device: number;
}

function wiringOf({ network: judged }: JudgedPlan, { record, inNetwork }: Run): Wiring | undefined {
  const [conductor] = judged && inNetwork ? conductorsOf(judged, record) : [];
  if (!judged || conductor === undefined) return undefined;
  const { to } = judged.network.conductors[conductor] as NetworkConductor;
  return { judged, conductor, device: judged.network.terminals[to]!.part };
}

/** A conductor that leads back to the bank needs no protection of its own. */
function isReturn({ judged: { result }, conductor }: Wiring): boolean {
  return result.topology.conductorSides[conductor] === "negative";
}

/** Currents of a network are solved to far less than this share of them. */
const solvedTo = 1e-6;

/** The scenario with the maximum current; the circuit's own stated current may be higher. */
function flowsIn({ judged: { network, result }, conductor }: Wiring, { loadA }: Run): string {
  const worst = result.conductors[conductor]?.worst;
  if (!worst) return "";
  const scenario = markdownWords(occasionInWords(network, worst));
  return loadA > worst.currentA * (1 + solvedTo)
    ? ` as stated (at most ${formatDistinct(worst.currentA, loadA)[0]} A flow, ${scenario})`
    : ` ${scenario}`;
}

type Result = JudgedRun["result"];

function wattsInWords({ loadA, loadW, loadAtV }: Run): string {
  if (loadW === undefined) return "";
  // In a network the current may be higher than that of the watts at that voltage.
  return exceeds(loadA, loadW / loadAtV)
    ? ` (${formatExact(loadW)} W)`
    : ` (${formatExact(loadW)} W / ${formatExact(loadAtV)} V)`;
}

function carried(circuit: Run, ampacity: Result["ampacity"]): string {
  const designA = designCurrentA(circuit);
  const source = ampacitySourceInWords(ampacity);
  if (!ampacity.judged) {
    const why =
      ampacity.why === "place-too-hot"
        ? "the place is as hot as the insulation may be"
        : "no table covers it";
    return limitRow("Current", withUnit(designA, "A"), `not judged: ${why}`, "", source);
  }
  const [load, limit] = formatDistinct(designA, ampacity.ampacityA);
  return limitRow(
    "Current",
    `${load} A`,
    `may carry ${limit} A`,
    marginInWords(ampacity.ampacityA - designA, "A"),
    source,
  );
}

/** The margin in volts: a difference of percentages would itself be read as a percentage of something. */
function lost({ systemV, inNetwork }: Run, drop: Result["drop"]): string {
  const what = inNetwork ? "Drop on this circuit, round trip" : "Drop, round trip";
  if (!drop.judged) {
    const limit = `limit ${withUnit(drop.dropLimitPercent, "%")}`;
    return limitRow(what, noLength, limit, "", `limit: ${sourceInWords(drop.dropLimitSource)}`);
  }
  const { dropV, dropPercent, dropLimitPercent, dropLimitSource, overloaded, source } = drop;
  const limitV = (systemV * dropLimitPercent) / 100;
  const [volts, limitVolts] = formatDistinct(dropV, limitV);
  const [percent, limit] = formatDistinct(dropPercent, dropLimitPercent);
  const least = overloaded ? "at least " : "";
  return limitRow(
    what,
    `${least}${volts} V, ${percent} %`,
    `limit ${limitVolts} V, ${limit} %`,
    marginInWords(limitV - dropV, "V"),
    `limit: ${sourceInWords(dropLimitSource)}; resistance: ${sourceInWords(source)}`,
  );
}

/** Without a limit: that is for the whole supply path. */
function lostOnCable(drop: Result["drop"]): string {
  if (!drop.judged) return limitRow("Drop on it", noLength, "", "", "");
  const { dropV, dropPercent, overloaded, source } = drop;
  return limitRow(
    "Drop on it",
    `${overloaded ? "at least " : ""}${withUnit(dropV, "V")}, ${withUnit(dropPercent, "%")}`,
    "",
    "",
    `resistance: ${sourceInWords(source)}`,
  );
}

const noLength = "not judged: its length is not known";

function arriving(minimumV: number, { arrivingV }: KnownDrop): string {
  const [arrives, needed] = formatDistinct(arrivingV, minimumV);
  return limitRow(
    "Arriving",
    `${arrives} V`,
    `needs ${needed} V`,
    marginInWords(arrivingV - minimumV, "V"),
    "stated in the plan",
  );
}

/** Gives no temperature beyond the limit: that of an overloaded conductor cannot be computed. */
function warmed(ampacity: Result["ampacity"], { conductorC }: Result["drop"]): string {
  const { columnC, ambientC } = ampacity;
  const what = "Temperature of the conductor";
  const around = `${withUnit(ambientC, "°C")} around it`;
  if (!ampacity.judged)
    return limitRow(what, "not judged", `${around}; limit ${withUnit(columnC, "°C")}`, "", "");
  const [is, limit] = formatDistinct(conductorC, columnC);
  const source = tableSourceInWords(ampacity);
  if (exceeds(conductorC, columnC))
    return limitRow(what, `beyond its limit of ${withUnit(columnC, "°C")}`, around, "", source);
  return limitRow(
    what,
    `${is} °C`,
    `${around}; limit ${limit} °C`,
    marginInWords(columnC - conductorC, "°C"),
    source,
  );
}

function protectedBy(
  { word, inNetwork, protection, protectionFarEnd }: Run,
  range: Result["protection"],
): string {
  const { minA, maxA, aimA, bestRatingA, source } = range;
  // A cable may well be protected at its other end alone.
  const stated = protection ?? (word === "cable" ? protectionFarEnd : null);
  const panels =
    stated?.familyStatedAt === undefined ? "" : `, ${markdownWords(familyInWords(stated) ?? "")}`;
  const is = stated ? `${formatExact(stated.ratingA)} A${panels}` : inNetwork ? "none in it" : "none stated";
  const aim = bestRatingA === undefined ? "" : `, best ${withUnit(bestRatingA, "A")}`;
  const limit =
    maxA === undefined
      ? `allowed from ${withUnit(minA, "A")}; upper limit not judged`
      : maxA < minA
        ? `none is allowed: the load alone is above ${withUnit(maxA, "A")}`
        : `allowed ${formatRounded(minA)} to ${withUnit(maxA, "A")}, aim ${withUnit(aimA, "A")}${aim}`;
  const possible = maxA !== undefined && maxA >= minA;
  const margin = stated && possible ? marginInWords(maxA - stated.ratingA, "A") : "";
  return limitRow("Protection", is, limit, margin, sourceInWords(source));
}

/** The load as the plan gives it, in amperes: rounded only if it was computed, from watts or from the network. */
export function loadInWords({ loadA, loadW, statesLoad, inNetwork }: Run): string {
  return loadW === undefined && statesLoad && !inNetwork ? `${formatExact(loadA)} A` : withUnit(loadA, "A");
}
