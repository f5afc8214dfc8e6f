import type { Network, NetworkConductor, Part, Scenario } from "../../model/network.ts";
import type { Body, Layout } from "../../model/placement/layout.ts";
import type { Period } from "../../model/read-periods.ts";
import type { PlacementWord } from "../../model/record.ts";
import type { Run } from "../../model/run.ts";
import type { JudgedPlan } from "../../rules/rule.ts";
import { kindInWords, partInWords } from "../../rules/wording/part-in-words.ts";
import { isOfCircuit } from "../network-summary.ts";
import { buildProperties } from "./properties-of-build.ts";
import { partProperties } from "./properties-of-parts.ts";
import { periodProperties } from "./properties-of-periods.ts";
import {
  channelProperties,
  compartmentProperties,
  placeProperties,
  surfaceProperties,
} from "./properties-of-placement.ts";
import { runProperties } from "./properties-of-runs.ts";
import { scenarioProperties } from "./properties-of-scenarios.ts";
import type { End, NamedEnd, Property } from "./property.ts";

/** One thing of a plan that can come, go or change, as a builder would point at it. */
export interface Subject {
  /** Only subjects of equal kind are compared. */
  readonly kind: "build" | "circuit" | "cable" | "scenario" | "period" | PlacementWord | Part["kind"];
  /** The trade's word for it: "circuit", "bus bar". */
  readonly kindInWords: string;
  /** As the plan gives it: not yet fit to be shown. */
  readonly name: string;
  /** The name with the kind, unless the name already states that: "circuit refrigerator", "bus bar front", "starter battery". */
  readonly called: string;
  /** Index of its record; undefined for the build of a plan without one. */
  readonly record: number | undefined;
  readonly properties: readonly Property[];
  /** Reasons by rule, if findings about it are accepted. Their changes are reported with the findings. */
  readonly accept: Readonly<Record<string, string>>;
  /** Index of its part, or of the load that a circuit states itself. */
  readonly part: number | undefined;
  /** The terminals that a circuit or cable is connected to. */
  readonly ends: readonly End[];
  /** The network it belongs to, for the names of the parts that it refers to. */
  readonly network: Network | undefined;
}

/** Everything in a plan that can be compared, in the order of the plan. */
export function subjectsOf(plan: Pick<JudgedPlan, "model" | "network">): readonly Subject[] {
  const { model } = plan;
  const network = plan.network?.network;
  const { layout } = model;
  const bodies = new Map(layout?.bodies.map((body) => [body.record, body]));
  const placed = (record: number) => (layout ? placeProperties(bodies.get(record), layout) : []);
  const positive = new Map<number, NetworkConductor>();
  const back = new Map<number, NetworkConductor>();
  for (const conductor of network?.conductors ?? [])
    (conductor.role === "return" ? back : positive).set(conductor.record, conductor);
  const own = new Map((network?.parts ?? []).filter(isOfCircuit).map(({ record, index }) => [record, index]));
  const run = (circuit: Run): Subject => {
    const { record, word, name } = circuit;
    const ends = network ? endsOf(network, positive.get(record), back.get(record), own.get(record)) : [];
    return {
      ...{ kind: word, kindInWords: word, name, record, network, part: own.get(record) },
      called: word === "cable" && /\bcable\b/i.test(name) ? name : `${word} ${name}`,
      ...{ properties: [...runProperties(circuit, ends), ...placed(record)], accept: circuit.accept },
      ends: ends.map(({ end }) => end),
    };
  };
  const cables = [...positive.values()].filter(({ role }) => role === "cable");
  const subjects = [
    ...model.circuits.map(run),
    ...cables.map((cable) => run(cable.run)),
    ...(network?.parts ?? [])
      .filter((part) => !isOfCircuit(part))
      .map((part) => partSubject(part, network!, placed(part.record))),
    ...(network?.scenarios ?? []).flatMap((scenario) => scenarioSubject(scenario, network!)),
    ...model.periods.map(periodSubject),
    ...(layout ? placementSubjects(layout) : []),
  ].sort((one, other) => one.record! - other.record!);
  return [buildSubject(model), ...subjects];
}

function buildSubject({ build }: JudgedPlan["model"]): Subject {
  return {
    ...{ kind: "build", kindInWords: "build", name: build.name ?? "", record: build.record },
    called: "the build",
    ...{ properties: buildProperties(build), accept: {}, part: undefined, ends: [], network: undefined },
  };
}

function partSubject(part: Part, network: Network, placed: readonly Property[]): Subject {
  return {
    ...{ kind: part.kind, kindInWords: kindInWords(part), name: part.name, record: part.record },
    called: partInWords(part).replace(/^the /, ""),
    ...{ properties: [...partProperties(part, network), ...placed], accept: part.accept },
    ...{ part: part.index, ends: [], network },
  };
}

/** Scenarios that the plan does not state follow from the rest: no builder changes them. */
function scenarioSubject(scenario: Scenario, network: Network): Subject[] {
  if (scenario.record === undefined || scenario.furtherPosition) return [];
  const { name, record } = scenario;
  const properties = scenarioProperties(scenario, network);
  return [
    {
      kind: "scenario",
      kindInWords: "scenario",
      called: `scenario ${name}`,
      name,
      record,
      properties,
      accept: {},
      part: undefined,
      ends: [],
      network,
    },
  ];
}

function periodSubject({ name, record, values }: Period): Subject {
  return {
    ...{ kind: "period", kindInWords: "period", called: `period ${name}`, name, record },
    ...{ properties: periodProperties(values), accept: {}, part: undefined, ends: [], network: undefined },
  };
}

function placementSubjects(layout: Layout): readonly Subject[] {
  const subject = (
    kind: PlacementWord,
    { record, name }: Pick<Body, "record" | "name">,
    properties: readonly Property[],
  ): Subject => ({
    ...{ kind, kindInWords: kind, called: `${kind} ${name}`, name, record },
    ...{ properties, accept: {}, part: undefined, ends: [], network: undefined },
  });
  return [
    ...layout.compartments.map((one) => subject("compartment", one, compartmentProperties(one))),
    ...layout.surfaces.map((one) => subject("surface", one, surfaceProperties(one, layout))),
    ...layout.channels.map((one) => subject("channel", one, channelProperties(one, layout))),
  ];
}

function endsOf(
  network: Network,
  positive: NetworkConductor | undefined,
  back: NetworkConductor | undefined,
  ownLoad: number | undefined,
): NamedEnd[] {
  if (!positive) return [];
  const named = (property: NamedEnd["property"], index: number): NamedEnd[] => {
    const { part, name: terminal } = network.terminals[index]!;
    if (part === ownLoad) return [];
    const of = network.parts[part]!;
    return [
      { property, end: { part, terminal }, text: of.kind === "busBar" ? of.name : `${of.name}, ${terminal}` },
    ];
  };
  return [
    ...named("from", positive.from),
    ...named("to", positive.to),
    ...(back ? named("returnTo", back.to) : []),
  ];
}
