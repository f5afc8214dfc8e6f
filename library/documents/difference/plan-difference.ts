import type { Judgement } from "../../judge.ts";
import { type ChangedProperty, changedProperties } from "./changed-properties.ts";
import { type ChangedPair, type Effect, effectsOf } from "./effects.ts";
import { type EnergyChange, energyChanges } from "./energy-difference.ts";
import { compareFindings, type FindingsDifference } from "./findings.ts";
import { isPart, matchSubjects } from "./match.ts";
import { type Measured, measuredIn } from "./measured.ts";
import { type Move, movesBetween } from "./moves.ts";
import { type PurchaseChange, purchaseChanges } from "./parts-to-buy.ts";
import { type Subject, subjectsOf } from "./subject.ts";

/** The changes between two states of one plan, and their effects. All numbers unrounded, all names as the plans give them. */
export interface PlanDifference {
  readonly added: readonly StandingSubject[];
  readonly removed: readonly StandingSubject[];
  /** Renamed ones too: a rename is no removal and no addition. */
  readonly changed: readonly ChangedSubject[];
  readonly effects: readonly Effect[];
  /** Parts at another place. */
  readonly moves: readonly Move[];
  /** Of autonomy and of each month's verdict. */
  readonly energy: readonly EnergyChange[];
  readonly findings: FindingsDifference;
  readonly purchases: readonly PurchaseChange[];
  /** The sides with a network that could not be read: its parts, cables and currents are not compared. */
  readonly networkUnread: { readonly before: boolean; readonly after: boolean };
  /** Scenarios without an operating point, on each side: the parts in them have no worst current. */
  readonly unsolved: { readonly before: readonly string[]; readonly after: readonly string[] };
}

export interface StandingSubject {
  readonly subject: Subject;
  readonly measured: readonly Measured[];
}

export interface ChangedSubject {
  readonly subject: Subject;
  /** Its name before, if it was renamed. */
  readonly renamedFrom: string | undefined;
  readonly properties: readonly ChangedProperty[];
}

/**
 * Compares two judgements of one plan. Pure. The positions of statements in the text, the names of variables and the order of
 * creation make no difference. An item that one side could not read is not reported as removed or added.
 */
export function planDifference(before: Judgement, after: Judgement): PlanDifference {
  const networkUnread = { before: isUnread(before), after: isUnread(after) };
  const partial = networkUnread.before || networkUnread.after;
  const [old, now] = [comparable(before, partial), comparable(after, partial)];
  const { pairs, removed, added, same } = matchSubjects(subjectsOf(old), subjectsOf(now));
  const changedPairs = pairs.map((pair): ChangedPair => {
    return { ...pair, changes: changedProperties(pair.before, pair.after, same) };
  });
  const somethingElse =
    removed.length + added.length > 0 || changedPairs.some(({ changes }) => changes.length > 0);
  const known = {
    pairs,
    removed: notUnread(removed, after),
    added: notUnread(added, before),
  };
  const standing = (judged: Judgement, subjects: readonly Subject[]) => {
    const measured = measuredIn(judged);
    return subjects.map((subject) => ({ subject, measured: measured(subject) }));
  };
  return {
    added: standing(after, known.added),
    removed: standing(before, known.removed),
    changed: changedPairs.flatMap(changedSubject),
    effects: partial
      ? effectsOf(alone(old), alone(now), changedPairs)
      : effectsOf(before, after, changedPairs),
    moves: partial ? [] : movesBetween(before, after, changedPairs),
    // A network that could not be read has no energy at all.
    energy: partial ? [] : energyChanges(before, after),
    findings: compareFindings(before, after, known),
    // Without other changes the purchases are the same; nesting pieces into spools takes longer than all the rest.
    purchases: partial || !somethingElse ? [] : purchaseChanges(before, after, newNames(changedPairs)),
    networkUnread,
    unsolved: { before: unsolvedScenarios(before), after: unsolvedScenarios(after) },
  };
}

/** Its network was not read, or without a circuit: that circuit's current and its wires are missing in every figure. */
export function isUnread({ model }: Judgement): boolean {
  return model.networkUnread || model.withoutCircuits.length > 0;
}

/** Nothing was added, removed, renamed or changed, and all results are the same. */
export function isSame({
  added,
  removed,
  changed,
  effects,
  energy,
  findings,
  purchases,
}: PlanDifference): boolean {
  const { came, went, changed: weighed } = findings;
  return [added, removed, changed, effects, energy, came, went, weighed, purchases].every(
    ({ length }) => length === 0,
  );
}

/** If one side's network is unread, only circuits can be compared: the changes of the rest are unknown. */
function comparable(judged: Judgement, partial: boolean): Judgement {
  return partial ? { ...judged, network: undefined } : judged;
}

/** Currents of a network that the other side lacks are not compared with the loads that circuits state themselves. */
function alone(judged: Judgement): Judgement {
  return { ...judged, circuits: judged.circuits.filter(({ circuit }) => !circuit.inNetwork) };
}

/** Circuits that the other plan has but could not read were neither removed nor added. */
function notUnread(subjects: readonly Subject[], other: Judgement): Subject[] {
  const { unjudged, withoutCircuits } = other.model;
  const unread = new Set([...unjudged, ...withoutCircuits].map(({ name }) => name));
  return subjects.filter(({ kind, name }) => kind !== "circuit" || !unread.has(name));
}

function changedSubject({ before, after, changes }: ChangedPair): ChangedSubject[] {
  const renamed = before.name !== after.name && !(namedByPlace(before.name) && namedByPlace(after.name));
  if (!renamed && changes.length === 0) return [];
  return [{ subject: after, renamedFrom: renamed ? before.name : undefined, properties: changes }];
}

/** Named only by its line, as "camper.ts line 12": that moves with every edit above it. */
export function namedByPlace(name: string): boolean {
  return /\.[cm]?[jt]sx? line \d+(?: no\. \d+)?$/.test(name);
}

function newNames(pairs: readonly ChangedPair[]): ReadonlyMap<string, string> {
  return new Map(pairs.flatMap(({ before, after }) => (isPart(after) ? [[before.name, after.name]] : [])));
}

function unsolvedScenarios({ network }: Judgement): string[] {
  return (network?.result.scenarios ?? []).flatMap((one) =>
    one.state === "unsolved" ? [network?.network.scenarios[one.scenario]?.name ?? ""] : [],
  );
}
