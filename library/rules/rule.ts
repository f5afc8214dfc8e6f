import type { CircuitResult } from "../analysis/circuit-result.ts";
import type { PeriodEnergy } from "../analysis/energy/energy-result.ts";
import type { NetworkResult } from "../analysis/network-result.ts";
import type { Placement } from "../analysis/placement/placement.ts";
import type { Network } from "../model/network.ts";
import type { PlanModel } from "../model/plan-model.ts";
import type { PlanProblem } from "../model/record.ts";
import type { Run } from "../model/run.ts";
import type { Citation } from "../standards/citation.ts";
import type { Finding, PropertyAt, ProposedFix, Related, Severity } from "./finding.ts";

/** A rule: one file, one page of docs beside it, one table of cases, all with the same name. */
export interface Rule<Values> {
  /** The path below `library/rules`, e.g. "conductor/voltage-drop". */
  readonly id: string;
  /** In the words of a handbook, at most eight of them. */
  readonly title: string;
  /** Titles of earlier versions: `loomwright explain` still finds the rule by them. */
  readonly formerTitles?: readonly string[];
  /** The usual severity; {@link Found.severity} may differ if the values are worse. */
  readonly severity: Severity;
  /** One sentence: the harm in the real installation. */
  readonly why: string;
  /** Never empty. */
  readonly sources: readonly [Citation, ...Citation[]];
  /** Whether it ever proposes a fix. */
  readonly fixable: boolean;
  /** Whether a builder may accept it with a reason. Plans that cannot be read or run cannot be accepted. */
  readonly acceptable: boolean;
  /**
   * Its repairs come after those of other rules, which may put its findings in order: after all that change devices, or after all
   * that change devices or conductors. They wait for none if it is left out.
   */
  readonly repairsWait?: "for devices" | "for conductors";
  /**
   * The results of the network that its findings rest on: they follow from a finding by which these cannot be as calculated
   * ({@link Found.explains}).
   */
  readonly restsOn?: "voltages" | "currents";
  /** Of rules about ampacity, fuses and short circuits: a finding that follows from another one is shown by itself all the same. */
  readonly neverFolded?: true;
  /**
   * Its findings follow from the topology, the devices and the faults of the network alone, never from circuits outside of it: after an
   * edit of loads they are the same.
   * "except repairs": only that there are none.
   */
  readonly ignoresLoads?: "entirely" | "except repairs";
  /** It is about the findings of other rules: {@link check} gets them, and comes last. */
  readonly afterOthers?: true;
  /** `others`: the findings of all other rules, for a rule that comes {@link afterOthers}. */
  check(plan: JudgedPlan, others?: readonly Finding[]): Found<Values>[];
  /**
   * For rules whose fixes cost more than a keystroke may: the answer to somebody who asks for the fixes of a finding. {@link Found.fixes}
   * is empty then, and "fix all" takes none of these.
   */
  whenAsked?(values: Values): AskedAnswer;
  /** About 100 characters: the fault, the value given, the limit; unit always, three significant figures. */
  message(values: Values): string;
}

/** See {@link Rule.whenAsked}. */
export interface AskedAnswer {
  /** Suggestions; each is proved like any other fix. */
  readonly fixes: readonly ProposedFix[];
  /** One sentence: the least that would mend it, or that no single change does. */
  readonly advice?: string;
}

/** A rule's result; the engine adds the rule's id, and whether the builder accepted it. */
export interface Found<Values> extends Pick<Finding<Values>, "subject" | "at" | "ofRecord" | "values"> {
  readonly severity?: Severity;
  readonly related?: readonly Related[];
  readonly fixes?: readonly ProposedFix[];
  /** No reason accepts it: one written for a lesser finding of its rule would hide it. */
  readonly isNeverAccepted?: true;
  /**
   * The records of each island whose voltages it makes wrong (`recordsOfIslands`): findings there that rest on voltages follow from
   * it. Of several findings that explain an island, the first in the order of the rules is the cause.
   */
  readonly explains?: readonly ReadonlySet<number>[];
  /**
   * The network as if this fault alone were mended. Findings in those islands then follow from it if they are gone in there, also those
   * that rest on currents.
   */
  readonly asIfMended?: () => Network;
  /** It is a fault of the connections: findings of every rule that are gone in there follow from it. */
  readonly isOfConnections?: boolean;
}

/** The input of every rule: results. A rule computes no physics. */
export interface JudgedPlan {
  readonly model: PlanModel;
  /** Every run: lone circuits, circuits of the network, and its cables, each with its current. */
  readonly circuits: readonly JudgedRun[];
  /** Undefined if the plan has no network, or if it could not be read. */
  readonly network: JudgedNetwork | undefined;
  readonly problems: readonly PlanProblem[];
  /** Of each period of the plan; none without a network. */
  readonly energy: readonly PeriodEnergy[];
  /** Where things are, and the way of each conductor; undefined if the plan has no surface, channel or compartment. */
  readonly placement: Placement | undefined;
}

export interface JudgedRun {
  readonly circuit: Run;
  readonly result: CircuitResult;
}

export interface JudgedNetwork {
  readonly network: Network;
  readonly result: NetworkResult;
}

/** The runs whose greatest current is known: of the others no figure may look judged, although a rule may find a fault in them. */
export function withKnownCurrent(runs: readonly JudgedRun[]): readonly JudgedRun[] {
  return runs.filter(({ circuit }) => !circuit.loadIsLeast);
}

/** Checks the shape of a rule at compile time and erases its value type, to allow all rules in one list. */
export function defineRule<Values>(rule: Rule<Values>): Rule<unknown> {
  return rule as Rule<unknown>;
}

/** For rules about one circuit at a time: `at` is a property of that circuit. */
export function perRun<Values>(
  plan: JudgedPlan,
  check: (judged: JudgedRun) => Omit<Found<Values>, "subject">[],
): Found<Values>[] {
  const all: Found<Values>[] = [];
  for (const judged of plan.circuits) {
    for (const found of check(judged)) all.push({ subject: judged.circuit.name, ...found });
  }
  return all;
}

/** For rules about the network: no findings if there is none. */
export function inNetwork<Values>(
  { network }: JudgedPlan,
  check: (judged: JudgedNetwork) => Found<Values>[],
): Found<Values>[] {
  return network ? check(network) : [];
}

/** The place of a property of a circuit. */
export function atProperty(circuit: Run, ...path: string[]): PropertyAt {
  return { record: circuit.record, path };
}

/** The device whose current alone a run is judged by, if it is such a run. */
export function soleDeviceOf({ loadIsOf }: Run): Related[] {
  if (!loadIsOf) return [];
  const { record, name, onInNone } = loadIsOf;
  return [
    { at: { record, path: [] }, text: `${name} alone${onInNone ? ", on in no scenario that lasts" : ""}` },
  ];
}

/** The place of a property of the object at a place. */
export function within({ record, path }: PropertyAt, property: string): PropertyAt {
  return { record, path: [...path, property] };
}
