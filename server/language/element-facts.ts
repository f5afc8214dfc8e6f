import { designCurrentA } from "../../library/analysis/design-current.ts";
import type { SupplyPath } from "../../library/analysis/network-result.ts";
import { dropVerdict } from "../../library/analysis/voltage-drop.ts";
import { protectionInWords } from "../../library/documents/diagram/conductor-words.ts";
import { dutiesOf } from "../../library/documents/report/ratings.ts";
import { deviceInPart, type NetworkConductor, type Part } from "../../library/model/network.ts";
import type { Protection } from "../../library/model/run.ts";
import type { JudgedNetwork, JudgedPlan, JudgedRun } from "../../library/rules/rule.ts";
import { formatDistinct, withUnit } from "../../library/rules/wording/format-number.ts";
import { terminalInWords } from "../../library/rules/wording/part-in-words.ts";
import { whyNotJudged } from "../../library/rules/wording/unknown-length.ts";
import type { DiagramFact } from "./messages.ts";
import { waysOfCircuits } from "./network-at.ts";

/**
 * The four facts that a builder looks up first, for the record of a drawn element: the feed, the fuse ahead, the drop, the margin.
 * A fact that is not known is left out: an empty line would read as "none".
 */
export function factsOf(plan: JudgedPlan, record: number): readonly DiagramFact[] {
  const judged = plan.circuits.find(({ circuit }) => circuit.record === record);
  const { network } = plan;
  if (judged) return factsOfRun(judged, network);
  const part = network?.network.parts.find((one) => one.record === record);
  return network && part ? factsOfPart(plan, network, part) : [];
}

function factsOfRun({ circuit, result }: JudgedRun, network: JudgedNetwork | undefined): DiagramFact[] {
  const conductor = network?.network.conductors.find(
    ({ record, role }) => record === circuit.record && role !== "return",
  );
  const way = network && waysOfCircuits(network).get(circuit.record);
  const { ampacity, drop } = result;
  const designA = designCurrentA(circuit);
  return facts({
    Feed: conductor && network && terminalInWords(network.network, conductor.from),
    Fuse: fuseOf(circuit, conductor, network),
    Drop: circuit.loadIsLeast
      ? undefined
      : circuit.word === "cable"
        ? drop.judged
          ? withUnit(drop.dropV, "V")
          : noLength
        : way && network
          ? dropFromBank(network, way)
          : ownDropInWords(drop),
    Margin:
      ampacity.judged && !circuit.loadIsLeast
        ? marginOf(designA, ampacity.ampacityA, "the conductor may carry")
        : undefined,
  });
}

/** The one in the run itself, else the nearest one towards the source. */
function fuseOf(
  { protection, protectionFarEnd }: JudgedRun["circuit"],
  conductor: NetworkConductor | undefined,
  network: JudgedNetwork | undefined,
): string | undefined {
  const own = protection ?? protectionFarEnd;
  if (own) return fuseInWords(own, "in this run");
  return conductor && network ? fuseTowardsSource(network, conductor.from) : undefined;
}

/** Nearest first: a fuse or breaker of its own at the terminal, then those in the conductors on the way to the source. */
function fuseTowardsSource({ network, result }: JudgedNetwork, terminal: number): string | undefined {
  const atTerminal = (at: number) => deviceInPart(network, network.terminals[at]!.part);
  const there = atTerminal(terminal);
  if (there) return fuseInWords(there, network.parts[network.terminals[terminal]!.part]!.name);
  const way = result.topology.wayFromSource(terminal)?.conductors ?? [];
  for (const index of [...way].reverse()) {
    const { near, far, name, from, to } = network.conductors[index]!;
    const inRun = near ?? far;
    if (inRun) return fuseInWords(inRun, name);
    for (const end of [to, from]) {
      const device = atTerminal(end);
      if (device) return fuseInWords(device, network.parts[network.terminals[end]!.part]!.name);
    }
  }
  return undefined;
}

function fuseInWords(protection: Protection, place: string): string {
  return `${protectionInWords(protection)}, ${place}`;
}

function factsOfPart(plan: JudgedPlan, network: JudgedNetwork, part: Part): DiagramFact[] {
  const terminals = new Set(Object.values(part.terminals));
  const feed = network.network.conductors.find(
    ({ role, from, to }) => role === "positive" && terminals.has(to) && !terminals.has(from),
  );
  const fed = feed && plan.circuits.find(({ circuit }) => circuit.record === feed.record);
  const positive = [...terminals].find((terminal) => network.result.topology.sides[terminal] === "positive");
  const last =
    positive === undefined ? [] : (network.result.topology.wayFromSource(positive)?.conductors ?? []);
  const nearest = network.network.conductors[last.at(-1) ?? -1];
  const way = network.result.supplyPaths.find((one) => one.part === part.index);
  const duty = dutiesOf(network, part)
    .flatMap(({ worst, ratedA }) =>
      worst && ratedA !== undefined ? [{ currentA: worst.currentA, ratedA }] : [],
    )
    .sort((one, other) => one.ratedA - one.currentA - (other.ratedA - other.currentA))[0];
  return facts({
    Feed: (feed ?? nearest)?.name,
    Fuse: fed
      ? fuseOf(fed.circuit, feed, network)
      : positive === undefined
        ? undefined
        : fuseTowardsSource(network, positive),
    Drop: way && dropFromBank(network, way),
    Margin: duty && marginOf(duty.currentA, duty.ratedA, "it is rated"),
  });
}

const noLength = "not judged: its length is not known";

function ownDropInWords(drop: JudgedRun["result"]["drop"]): string {
  if (!drop.judged) return noLength;
  const [percent, limit] = formatDistinct(drop.dropPercent, drop.dropLimitPercent);
  return `${percent} % of its own, limit ${limit} %`;
}

function dropFromBank({ network }: JudgedNetwork, way: SupplyPath): string {
  const { dropPercent, dropLimitPercent } = way;
  if (dropVerdict(way) === "not judged")
    return `${whyNotJudged(network, way)}; limit ${withUnit(dropLimitPercent, "%")}`;
  const [percent, limit] = formatDistinct(dropPercent, dropLimitPercent);
  return `${way.withoutLength.length > 0 ? "at least " : ""}${percent} % from the bank, limit ${limit} %`;
}

function marginOf(currentA: number, limitA: number, what: string): string {
  const spareA = limitA - currentA;
  const [current, limit] = formatDistinct(currentA, limitA);
  return `${withUnit(Math.abs(spareA), "A")} ${spareA < 0 ? "too much" : "spare"}: ${current} A flow, ${what} ${limit} A`;
}

function facts(known: Readonly<Record<string, string | undefined>>): DiagramFact[] {
  return Object.entries(known).flatMap(([label, value]) => (value === undefined ? [] : [{ label, value }]));
}
