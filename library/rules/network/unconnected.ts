import { endsAt } from "../../analysis/network/topology/ends-at.ts";
import { type DeadEnd, feedingOf } from "../../analysis/network/topology/feeding.ts";
import { isJoined, networkGraph } from "../../analysis/network/topology/network-graph.ts";
import type { Port } from "../../analysis/network/topology/ports.ts";
import { internalConnections } from "../../model/internal-connections.ts";
import type { Network, Part } from "../../model/network.ts";
import { passesCurrentOn } from "../../model/part-roles.ts";
import { descriptorOf } from "../../model/parts/index.ts";
import type { At } from "../finding.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule, type Found, inNetwork, type JudgedNetwork } from "../rule.ts";
import {
  atEnd,
  atPart,
  kindInWords,
  listInWords,
  partInWords,
  relatedConductor,
  relatedPart,
  terminalNameInWords,
} from "../wording/part-in-words.ts";

export const networkUnconnected = defineRule<Values>({
  id: "network/unconnected",
  title: "Not connected to a source",
  formerTitles: ["Joined to nothing that feeds it"],
  severity: "error",
  why: "A device that no source reaches does not work, and a connection missing in the plan is missing in every calculated current.",
  sources: [
    ownRequirement("A plan is judged as written: a connection that it does not state carries no current."),
  ],
  fixable: false,
  acceptable: true,
  ignoresLoads: "entirely",
  // Needs the connections. One finding for each component that no source feeds, however much is connected to it.
  check: (plan) => inNetwork(plan, (judged) => check(judged, plan.model.withoutCircuits.length === 0)),
  message(values) {
    switch (values.what) {
      case "unfed":
        return `No source feeds it: no path leads from a source's positive side to ${values.terminal}. Add a cable or a circuit to it.`;
      case "unfed hub":
        return `No source reaches it, so no current reaches ${values.hanging}: connect it to the positive side of a source.`;
      case "reversed":
        return values.both
          ? `Reversed polarity: ${values.hanging} has its positive on the negative side of ${values.source}, and its negative on the positive side. Exchange the two.`
          : `Reversed polarity: ${values.hanging} has its positive on the negative side of ${values.source}: connect it to the positive side.`;
      case "feeds nothing":
        return `Feeds no load: ${values.terminal} leads to no part that could draw from it.`;
      case "not joined":
        return `This ${values.kind} is not connected: connect it, or take it out of the plan.`;
      case "one side":
        return `Only one side of this ${values.kind} is connected, so no current passes it: connect ${values.terminal} too.`;
    }
  },
});

type Values =
  | { readonly what: "unfed" | "feeds nothing"; readonly terminal: string }
  | { readonly what: "unfed hub"; readonly hanging: string }
  | {
      readonly what: "reversed";
      readonly hanging: string;
      readonly source: string;
      /** Its negative is on the positive side. */
      readonly both: boolean;
    }
  | { readonly what: "not joined"; readonly kind: string }
  | { readonly what: "one side"; readonly kind: string; readonly terminal: string };

/** @param isWhole No circuit is missing: one may be all that a battery feeds, and the only one that is connected to a bus bar. */
function check({ network, result }: JudgedNetwork, isWhole: boolean): Found<Values>[] {
  const { unfed, feedNothing, withoutReturn } = feedingOf(network);
  // Do not report loose ends of a part already reported as a dead end.
  const told = new Set([...unfed, ...withoutReturn].flatMap(({ passing }) => passing));
  const notFed = unfed.flatMap((dead) => unfedFindings({ network, result }, dead));
  if (!isWhole) return notFed;
  return [
    ...notFed,
    ...feedNothing.map(feedsNothing),
    ...network.parts.flatMap((part) => (told.has(part) ? [] : looseEnds(network, part))),
  ];
}

function unfedFindings(judged: JudgedNetwork, { hub, hanging, wrongSource }: DeadEnd): Found<Values>[] {
  const { network } = judged;
  if (wrongSource) return hanging.map((pole) => reversed(judged, pole, wrongSource));
  if (!hub)
    return hanging.map((pole) => ({
      subject: pole.part.name,
      at: atPart(pole.part),
      values: { what: "unfed", terminal: terminalNameInWords(pole.part, nameOf(network, pole.positive)) },
    }));
  return [
    {
      subject: hub.name,
      at: atPart(hub),
      values: {
        what: "unfed hub",
        hanging: listInWords(hanging.map(({ part }) => partInWords(part))),
      },
      related: hanging.slice(0, mostRelated).map(({ part }) => relatedPart(part)),
    },
  ];
}

/** Twenty loads on one panel are given as a number, not one by one. */
const mostRelated = 5;

function reversed(
  { network, result }: JudgedNetwork,
  { part, positive, negative }: Port,
  source: Part,
): Found<Values> {
  const [conductor] = endsAt(network, positive);
  const at: At = conductor ? atEnd(conductor, conductor.from === positive ? "to" : "from") : atPart(part);
  return {
    subject: part.name,
    at,
    values: {
      what: "reversed",
      hanging: partInWords(part),
      source: partInWords(source),
      both: result.topology.sides[negative] === "positive",
    },
    related: [relatedPart(source), ...(conductor ? [relatedConductor(conductor)] : [])],
  };
}

/** Advice only: a bank may be planned before its loads. */
function feedsNothing({ part, positive }: Port): Found<Values> {
  const name = Object.entries<number>(part.terminals).find(([, terminal]) => terminal === positive)?.[0];
  return {
    subject: part.name,
    at: atPart(part),
    severity: "info",
    values: { what: "feeds nothing", terminal: terminalNameInWords(part, name ?? "positive") },
  };
}

/** Parts that pass current on, with no connection, or in one line with no two connected terminals that it joins. */
function looseEnds(network: Network, part: Part): Found<Values>[] {
  if (!passesCurrentOn(part)) return [];
  const joined = (terminal: number) => isJoined(networkGraph(network), terminal);
  const loose = Object.entries<number>(part.terminals).filter(([, terminal]) => !joined(terminal));
  const here = { subject: part.name, at: atPart(part) };
  const kind = kindInWords(part);
  if (loose.length === Object.keys(part.terminals).length)
    return [{ ...here, severity: "info", values: { what: "not joined", kind } }];
  const [side] = loose;
  const leadsOn = internalConnections(part).some(({ between }) => between.every(joined));
  if (!side || !descriptorOf(part).inSeries || leadsOn) return [];
  const terminal = terminalNameInWords(part, side[0]);
  return [{ ...here, severity: "warning", values: { what: "one side", kind, terminal } }];
}

function nameOf(network: Network, terminal: number): string {
  return network.terminals[terminal]?.name ?? "";
}
