import { groupedBy } from "./grouped-by.ts";
import { copperFrontier, type LegChoice, type LegChoices } from "./least-copper.ts";

/**
 * Sizes for several runs at once: each run gets one of its choices, the drop of each path stays within its limit, and the copper
 * of all runs together is as little as the search finds.
 */
export interface JointProblem {
  readonly runs: readonly RunChoices[];
  readonly paths: readonly DropLimit[];
}

/** The sizes that a run may get, thinnest first. The drop of each of them on a path is in {@link DropLimit.legs}. */
interface RunChoices {
  /** Copper of the whole run by choice, mm²·m. */
  readonly copperMm2M: readonly number[];
  /** The last choice that is taken of the run's own accord. Later ones are taken only if no earlier ones meet a limit. */
  readonly last: number;
}

/** The drop limit of one device in one operating state. */
export interface DropLimit {
  /** Limits of the same device have the same number. */
  readonly device: number;
  /** Drop allowed in the legs together, V. */
  readonly allowedV: number;
  /** The runs on its path, each with its drop by choice, V: falling. */
  readonly legs: readonly { readonly run: number; readonly dropV: readonly number[] }[];
}

export interface JointChoice {
  /** By run: the index of its choice; 0 for a run on no path. */
  readonly choices: readonly number[];
  /** By path: false if not even the thickest choices of its runs meet its limit. It then has no effect on the choices. */
  readonly met: readonly boolean[];
}

/**
 * The choices with the least copper. Runs of different devices matter to each other only through runs that several of them share:
 * once the choices of those are fixed, the other runs of each device follow exactly and separately. So only the choices of shared
 * runs are searched: all of their combinations if these are few, else from both ends by single and paired steps.
 * The result depends neither on the order of the paths nor on a clock.
 */
export function leastCopperTogether({ runs, paths }: JointProblem): JointChoice {
  const { last, met } = liftedLimits(runs, paths);
  const choices = runs.map(() => 0);
  const open = paths.filter((_, index) => met[index]);
  for (const group of groupsOf(open)) {
    for (const [run, choice] of choicesIn(runs, last, group)) choices[run] = choice;
  }
  return { choices, met };
}

/**
 * Where the runs of a path cannot meet its limit within their caps, all of them may be one size thicker, and so on: for all such
 * paths at once, so that no path has another's room by its place in the list.
 */
function liftedLimits(runs: readonly RunChoices[], paths: readonly DropLimit[]) {
  const thickest = runs.map(({ copperMm2M }) => copperMm2M.length - 1);
  const last = runs.map((run, index) => Math.min(run.last, thickest[index]!));
  const leastV = ({ legs }: DropLimit, upTo: readonly number[]) =>
    sum(legs.map(({ run, dropV }) => dropV[upTo[run]!] ?? 0));
  const met = paths.map((path) => leastV(path, thickest) <= path.allowedV);
  const isNarrow = (path: DropLimit, index: number) => met[index] && leastV(path, last) > path.allowedV;
  for (let narrow = paths.filter(isNarrow); narrow.length > 0; narrow = paths.filter(isNarrow)) {
    const lifted = new Set(narrow.flatMap(({ legs }) => legs.map(({ run }) => run)));
    for (const run of lifted) last[run] = Math.min(thickest[run]!, last[run]! + 1);
  }
  return { last, met };
}

/** Paths that share a run, directly or by way of others, belong together. */
function groupsOf(paths: readonly DropLimit[]): readonly (readonly DropLimit[])[] {
  const leader = new Map<number, number>();
  const find = (run: number): number => {
    let at = run;
    for (let next = leader.get(at); next !== undefined && next !== at; next = leader.get(at)) at = next;
    leader.set(run, at);
    return at;
  };
  for (const { legs } of paths) {
    const [first, ...rest] = legs.map(({ run }) => find(run));
    if (first !== undefined) for (const other of rest) leader.set(find(other), find(first));
  }
  const groups = new Map<number, DropLimit[]>();
  for (const path of paths) {
    const [leg] = path.legs;
    if (!leg) continue;
    const group = groups.get(find(leg.run));
    if (group) group.push(path);
    else groups.set(find(leg.run), [path]);
  }
  return [...groups.values()];
}

/** The paths of one device, and the choices of the runs that it alone uses. */
interface Branch {
  readonly paths: readonly DropLimit[];
  readonly own: readonly number[];
  /** For a single path: the choices of sizes for its own runs, least copper first. */
  readonly frontier: readonly {
    readonly copperMm2M: number;
    readonly dropV: number;
    readonly choices: readonly number[];
  }[];
}

function choicesIn(
  runs: readonly RunChoices[],
  last: readonly number[],
  group: readonly DropLimit[],
): ReadonlyMap<number, number> {
  const devicesOn = new Map<number, Set<number>>();
  for (const { device, legs } of group) {
    for (const { run } of legs) devicesOn.set(run, (devicesOn.get(run) ?? new Set()).add(device));
  }
  const shared = [...devicesOn].flatMap(([run, devices]) => (devices.size > 1 ? [run] : []));
  shared.sort((one, other) => one - other);
  const branches = branchesOf(runs, last, group, new Set(shared));
  const evaluate = (at: ReadonlyMap<number, number>) => {
    let copperMm2M = sum(shared.map((run) => runs[run]!.copperMm2M[at.get(run)!]!));
    for (const branch of branches) {
      copperMm2M += ownChoices(runs, last, branch, at)?.copperMm2M ?? Number.POSITIVE_INFINITY;
    }
    return copperMm2M;
  };
  const best = bestOf(shared, last, evaluate, Math.max(1, Math.floor(mostBranchesTried / branches.length)));
  const choices = new Map(best);
  for (const branch of branches) {
    ownChoices(runs, last, branch, best)?.choices.forEach((choice, index) => {
      choices.set(branch.own[index]!, choice);
    });
  }
  return choices;
}

function branchesOf(
  runs: readonly RunChoices[],
  last: readonly number[],
  group: readonly DropLimit[],
  shared: ReadonlySet<number>,
): readonly Branch[] {
  return [...groupedBy(group, ({ device }) => device).values()].map((paths): Branch => {
    const own = [...new Set(paths.flatMap(({ legs }) => legs.map(({ run }) => run)))]
      .filter((run) => !shared.has(run))
      .sort((one, other) => one - other);
    const [path, ...others] = paths;
    if (!path || others.length > 0) return { paths, own, frontier: [] };
    const inShared = (end: (leg: DropLimit["legs"][number]) => number) =>
      path.allowedV - sum(path.legs.filter(({ run }) => shared.has(run)).map(end));
    const loosestV = inShared(({ run, dropV }) => dropV[last[run]!] ?? 0);
    const tightestV = inShared(({ dropV }) => dropV[0] ?? 0);
    return {
      paths,
      own,
      frontier: copperFrontier(legChoices(runs, last, path, own), { loosestV, tightestV }),
    };
  });
}

function legChoices(
  runs: readonly RunChoices[],
  last: readonly number[],
  { legs }: DropLimit,
  own: readonly number[],
  from: (run: number) => number = () => 0,
): readonly LegChoices[] {
  return own.map((run) => {
    const dropV = legs.find((leg) => leg.run === run)?.dropV;
    const choices: LegChoice[] = [];
    for (let at = from(run); at <= last[run]!; at++)
      choices.push({ copperMm2M: runs[run]!.copperMm2M[at]!, dropV: dropV?.[at] ?? 0 });
    return { choices };
  });
}

/** The choices of a branch's own runs once the shared ones are fixed. Undefined: none is enough. */
function ownChoices(
  runs: readonly RunChoices[],
  last: readonly number[],
  { paths, own, frontier }: Branch,
  shared: ReadonlyMap<number, number>,
): { readonly copperMm2M: number; readonly choices: readonly number[] } | undefined {
  const left = ({ allowedV, legs }: DropLimit) =>
    allowedV - sum(legs.flatMap(({ run, dropV }) => (shared.has(run) ? [dropV[shared.get(run)!] ?? 0] : [])));
  const [only, ...others] = paths;
  if (only && others.length === 0) return frontier.find(({ dropV }) => dropV <= left(only) + blurV);
  // Several operating states of one device: the hardest first, then the others on top.
  const from = new Map(own.map((run) => [run, 0]));
  const strain = (path: DropLimit) =>
    sum(path.legs.map(({ run, dropV }) => (shared.has(run) ? 0 : (dropV[0] ?? 0)))) /
    Math.max(left(path), blurV);
  for (const path of paths.toSorted((one, other) => strain(other) - strain(one))) {
    const leftV = left(path) + blurV;
    const legs = legChoices(runs, last, path, own, (run) => from.get(run)!);
    const [enough] = copperFrontier(legs, { loosestV: leftV, tightestV: leftV });
    if (!enough) return undefined;
    own.forEach((run, index) => {
      from.set(run, from.get(run)! + enough.choices[index]!);
    });
  }
  const choices = own.map((run) => from.get(run)!);
  return { choices, copperMm2M: sum(own.map((run, index) => runs[run]!.copperMm2M[choices[index]!]!)) };
}

/** Sums in another order differ by rounding. */
const blurV = 1e-12;

type Choices = ReadonlyMap<number, number>;

/** The best choices of the shared runs, with a bounded number of trials. Those at the upper limits always meet every path. */
function bestOf(
  shared: readonly number[],
  last: readonly number[],
  evaluate: (at: Choices) => number,
  mostTrials: number,
): Choices {
  const thickest = new Map(shared.map((run) => [run, last[run]!]));
  const combinations = shared.reduce((product, run) => product * (last[run]! + 1), 1);
  if (combinations <= Math.min(mostCombinations, mostTrials)) {
    return leastOf(allCombinations(shared, last), evaluate, thickest);
  }
  // From every level, thin to thick: each start leads to a choice that no single or paired step improves.
  const levels = Math.max(...thickest.values()) + 1;
  const starts = Array.from({ length: levels }, (_, level) => level)
    .map((level) => new Map(shared.map((run) => [run, Math.min(level, last[run]!)])))
    .filter((start) => Number.isFinite(evaluate(start)));
  const share = Math.floor(mostTrials / Math.max(1, starts.length));
  return leastOf(
    starts.map((start) => improved(start, { shared, last, evaluate, mostTrials: share })),
    evaluate,
    thickest,
  );
}

function leastOf(
  candidates: Iterable<Choices>,
  evaluate: (at: Choices) => number,
  otherwise: Choices,
): Choices {
  let [best, least] = [otherwise, Number.POSITIVE_INFINITY];
  for (const candidate of candidates) {
    const copperMm2M = evaluate(candidate);
    if (isLess(copperMm2M, least)) [best, least] = [candidate, copperMm2M];
  }
  return best;
}

function* allCombinations(shared: readonly number[], last: readonly number[]): Iterable<Choices> {
  const [run, ...rest] = shared;
  if (run === undefined) {
    yield new Map();
    return;
  }
  for (const others of allCombinations(rest, last))
    for (let choice = 0; choice <= last[run]!; choice++) yield new Map([[run, choice], ...others]);
}

/** Takes every step that saves copper, of one run or of two, until none does. */
function improved(
  start: Choices,
  {
    shared,
    last,
    evaluate,
    mostTrials,
  }: {
    readonly shared: readonly number[];
    readonly last: readonly number[];
    readonly evaluate: (at: Choices) => number;
    readonly mostTrials: number;
  },
): Choices {
  let best = start;
  let least = evaluate(start);
  let trials = 1;
  const tries = (changed: readonly (readonly [number, number])[]): boolean => {
    const at = new Map(best);
    for (const [run, by] of changed) {
      const choice = at.get(run)! + by;
      if (choice < 0 || choice > last[run]!) return false;
      at.set(run, choice);
    }
    trials++;
    const copperMm2M = evaluate(at);
    if (!isLess(copperMm2M, least)) return false;
    [best, least] = [at, copperMm2M];
    return true;
  };
  for (let better = true; better && trials < mostTrials; ) {
    better = false;
    for (const run of shared)
      for (const by of [-1, 1, -2, 2]) if (trials < mostTrials && tries([[run, by]])) better = true;
    for (const [index, run] of shared.entries()) {
      for (const other of shared.slice(index + 1)) {
        for (const [by, otherBy] of pairedSteps) {
          if (trials >= mostTrials) return best;
          if (
            tries([
              [run, by],
              [other, otherBy],
            ])
          )
            better = true;
        }
      }
    }
  }
  return best;
}

const pairedSteps = [
  [1, -1],
  [-1, 1],
  [1, 1],
  [-1, -1],
  [2, -1],
  [-1, 2],
] as const;

/** Of two sums that differ only by rounding, the first stays. */
function isLess(one: number, other: number): boolean {
  return one < other * (1 - 1e-12);
}

/** Bounds of the search, in steps and not in time: the same plan gets the same sizes on every machine. */
const mostCombinations = 4_000;
const mostBranchesTried = 60_000;

function sum(values: readonly number[]): number {
  let total = 0;
  for (const value of values) total += value;
  return total;
}
