import { disjointSets } from "./disjoint-sets.ts";
import { displayName } from "./display-name.ts";
import { internalConnections } from "./internal-connections.ts";
import type { Network, Part, Scenario } from "./network.ts";
import { asClosed, type PartState } from "./parts/define-part.ts";
import type { DisconnectPart } from "./parts/disconnect.ts";
import { descriptorOf } from "./parts/index.ts";
import type { RelayPart } from "./parts/relay.ts";
import type { SelectorSwitchPart } from "./parts/selector-switch.ts";

/*
 * The positions of switches: of disconnects and breakers as the scenarios state them, of relays and selector switches every one,
 * because a relay closes by itself and a hand turns a selector without reading the plan.
 */

/** The state that a scenario gives a part. */
export function stateIn({ on, selected }: Scenario, { index }: Part): PartState {
  const connected = selected?.get(index);
  return { closed: on[index]!, ...(connected && { selected: connected }) };
}

/** The parts whose connections depend on the scenario. */
export function switchesOf({ parts }: Pick<Network, "parts">): readonly Part[] {
  return parts.filter((part) => isSwitch(part));
}

/** The kind of part whose terminals have the state of a scenario: closed, open, or some of its inputs connected. */
export function isSwitch(part: Pick<Part, "kind">): boolean {
  const { opens } = descriptorOf(part);
  return opens === "by hand" || opens === "by control";
}

/** A part whose contacts are opened and closed, and are no protection: a breaker is left out. */
export type Contacts = DisconnectPart | RelayPart | SelectorSwitchPart;

export function hasContacts(part: Part): part is Contacts {
  return isSwitch(part) && descriptorOf(part).protects !== true;
}

/** Equal for two scenarios with all switches in the same positions. */
export function positionsKey(switches: readonly Part[], scenario: Scenario): string {
  return switches.map((part) => stateKey(stateIn(scenario, part))).join();
}

export function isSamePosition(one: PartState, other: PartState): boolean {
  return stateKey(one) === stateKey(other);
}

function stateKey({ closed, selected }: PartState): string {
  if (!closed) return "open";
  return selected ? [...selected].sort().join("+") : "all";
}

/**
 * The positions of relays and selector switches that occur in the scenarios, one scenario for each; without the one in which
 * all are closed.
 */
export function judgedPositions({
  parts,
  scenarios,
}: Pick<Network, "parts" | "scenarios">): ReadonlyMap<string, Scenario> {
  const switches = parts.filter(isJudgedInEveryPosition);
  const byKey = new Map<string, Scenario>();
  if (switches.length === 0) return byKey;
  for (const scenario of scenarios) {
    const isAllClosed = switches.every((part) => stateKey(stateIn(scenario, part)) === stateKey(asClosed));
    if (!isAllClosed) byKey.set(positionsKey(switches, scenario), scenario);
  }
  return byKey;
}

/** A relay or selector switch: one that is judged in every position, whether or not a scenario names it. */
export function isJudgedInEveryPosition(part: Pick<Part, "kind">): boolean {
  return descriptorOf(part).positions !== undefined;
}

/** A scenario, and the switches whose position it states, by part index. */
export interface StatedScenario {
  readonly scenario: Scenario;
  readonly named: ReadonlySet<number>;
}

/**
 * The scenarios, and further ones for the positions that none of them states: one more for each position of one switch, with
 * all others as they are. A scenario that states the position of a switch keeps it, except for a position that no scenario has.
 * A position is left out if it only takes the supply from the parts behind it.
 */
export function inEveryPosition(
  network: Pick<Network, "terminals" | "parts" | "conductors">,
  stated: readonly StatedScenario[],
): readonly Scenario[] {
  const scenarios = stated.map(({ scenario }) => scenario);
  const switches = network.parts.filter(isJudgedInEveryPosition);
  if (switches.length === 0) return scenarios;
  const positionsOf = positionsThatMatter(network, switches);
  const missingFor = (part: Part) => {
    const positions = positionsOf(part);
    const inputs = new Set(positions.flatMap(({ selected = [] }) => selected));
    // All inputs that matter are the same as all inputs.
    const keyOf = ({ closed, selected = [...inputs] }: PartState) =>
      stateKey({ closed, selected: selected.filter((input) => inputs.has(input)) });
    const present = new Set(scenarios.map((scenario) => keyOf(stateIn(scenario, part))));
    const nowhere = [asClosed, ...positions].filter((state) => !present.has(keyOf(state)));
    const isNamedByAll = stated.every(({ named }) => named.has(part.index));
    return ({ scenario, named }: StatedScenario) => {
      if (named.has(part.index)) return isNamedByAll ? nowhere : [];
      return positions.filter((state) => keyOf(state) !== keyOf(stateIn(scenario, part)));
    };
  };
  const missing = switches.map((part) => ({ part, of: missingFor(part) }));
  const further = stated.flatMap((one) =>
    missing.flatMap(({ part, of }) => of(one).map((state) => withPosition(one.scenario, part, state))),
  );
  return [...scenarios, ...further];
}

function withPosition(scenario: Scenario, part: Part, state: PartState): Scenario {
  const { closed, selected } = state;
  return {
    ...scenario,
    name: displayName(`${scenario.name}, ${part.name} ${positionInWords(part, state)}`),
    on: scenario.on.with(part.index, closed),
    selected: selected
      ? new Map([...(scenario.selected ?? []), [part.index, selected]])
      : new Map([...(scenario.selected ?? [])].filter(([index]) => index !== part.index)),
    furtherPosition: true,
  };
}

function positionInWords(part: Part, { closed, selected }: PartState): string {
  const { terminals, positions = [] } = descriptorOf(part);
  if (!closed) return "open";
  if (selected) return `on ${selected.map((name) => terminals[name]!.words).join(" and ")}`;
  return positions.some((position) => position.selected) ? "on all inputs" : "closed";
}

/**
 * By switch: its positions, besides the one in which all is connected, that can make a current, a drop or a short worse. An
 * open one does if batteries remain on both of its sides, or if another path leads round it; if one side has no battery, it is
 * merely without supply. Pieces of metal without a battery at the end of a single contact are cut off one after the other; the
 * contacts that remain matter.
 */
function positionsThatMatter(
  { terminals, parts, conductors }: Pick<Network, "terminals" | "parts" | "conductors">,
  switches: readonly Part[],
): (part: Part) => readonly PartState[] {
  const pieces = disjointSets(terminals.length);
  const isJudged = new Set(switches);
  for (const { from, to } of conductors) pieces.union(from, to);
  for (const part of parts) {
    if (isJudged.has(part)) continue;
    for (const { between } of internalConnections(part)) pieces.union(...between);
  }
  const withBattery = new Set<number>();
  for (const part of parts) {
    if (part.kind !== "battery") continue;
    for (const terminal of Object.values(part.terminals)) withBattery.add(pieces.find(terminal));
  }
  const contacts = switches.flatMap((part) =>
    internalConnections(part).flatMap(({ between }) => {
      const ends = between.map(pieces.find) as [number, number];
      return ends[0] === ends[1] ? [] : [{ part, between, ends }];
    }),
  );
  const at = new Map<number, Set<(typeof contacts)[number]>>();
  for (const contact of contacts) {
    for (const piece of contact.ends) at.set(piece, (at.get(piece) ?? new Set()).add(contact));
  }
  // A set yields pieces that are added during its iteration too.
  const loose = new Set(at.keys());
  for (const piece of loose) {
    const [contact, another] = at.get(piece)!;
    if (!contact || another || withBattery.has(piece)) continue;
    for (const end of contact.ends) {
      at.get(end)!.delete(contact);
      loose.delete(end);
      loose.add(end);
    }
  }
  const remaining = new Map<Part, Set<string>>();
  for (const contact of new Set([...at.values()].flatMap((there) => [...there]))) {
    const names = remaining.get(contact.part) ?? new Set<string>();
    for (const terminal of contact.between) names.add(terminals[terminal]!.name);
    remaining.set(contact.part, names);
  }
  return (part) => {
    const names = remaining.get(part);
    if (!names) return [];
    const { positions = [] } = descriptorOf(part);
    const selecting = positions.filter(({ selected }) => selected?.every((name) => names.has(name)));
    return [...positions.filter(({ closed }) => !closed), ...(selecting.length > 1 ? selecting : [])];
  };
}
