import { disjointSets } from "./disjoint-sets.ts";

/**
 * The nominal voltages of a network, from those of its batteries: a charger's output or a load's minimum relates to them.
 * Disconnects count as closed. A contradictory network (a battery across another one) still gets a result.
 */
export function nominalVoltages(wiring: Wiring): NominalVoltages {
  const netOf = netsOf(wiring);
  const heights = heightsOf(wiring, netOf);
  const islands = spans(heights);
  const banks = bankVoltages(wiring.batteries, netOf);
  return {
    between(positive, negative) {
      const above = heights[netOf[positive]!];
      const below = heights[netOf[negative]!];
      if (!above || !below || above.island !== below.island) return undefined;
      const volts = tidy(above.volts - below.volts);
      // Less than one cell is not a system: the terminals are one net, or reversed.
      return volts >= 1 ? volts : undefined;
    },
    ofIsland(terminal) {
      const height = heights[netOf[terminal]!];
      return height && islands.get(height.island);
    },
    ofBank: (positive) => banks.get(positive),
  };
}

/**
 * The lowest voltages at which devices draw current, V: between two terminals, as {@link nominalVoltages} finds the nominal ones. Of
 * batteries of different chemistry side by side, the lower one counts.
 */
export function lowestVoltages({ batteries, chargers, ...wiring }: Wiring): LowestVoltages {
  const atLowest = (sources: readonly Source[]) =>
    [...sources]
      .sort((one, other) => one.lowestV / one.nominalV - other.lowestV / other.nominalV)
      .map((source) => ({ ...source, nominalV: source.lowestV }));
  return nominalVoltages({ ...wiring, batteries: atLowest(batteries), chargers: atLowest(chargers) });
}

export type LowestVoltages = Pick<NominalVoltages, "between">;

export interface NominalVoltages {
  /** Between two terminals, V; undefined if no battery and no charger with a stated voltage determines it. */
  between(positive: number, negative: number): number | undefined;
  /** Maximum between any two terminals of the island of this one, V. */
  ofIsland(terminal: number): number | undefined;
  /** Sum of the series string that includes the battery with this positive terminal, V. */
  ofBank(positive: number): number | undefined;
}

/** All by terminal index. */
export interface Wiring {
  readonly terminals: number;
  /** Conductors, and connections inside parts. */
  readonly joined: readonly (readonly [number, number])[];
  readonly batteries: readonly Source[];
  /** Chargers with a stated voltage, used if no battery determines the voltage. */
  readonly chargers: readonly Source[];
}

export interface Source {
  readonly positive: number;
  readonly negative: number;
  readonly nominalV: number;
  /** The lowest voltage at which devices draw current from it, V. */
  readonly lowestV: number;
}

/** By terminal: the representative of its net. */
function netsOf({ terminals, joined }: Wiring): readonly number[] {
  const nets = disjointSets(terminals);
  for (const pair of joined) nets.union(...pair);
  return Array.from({ length: terminals }, (_, terminal) => nets.find(terminal));
}

interface Height {
  readonly island: number;
  readonly volts: number;
}

/** By net: its voltage within its island. Batteries come first; chargers only add nets that batteries leave open. */
function heightsOf(
  { batteries, chargers }: Wiring,
  netOf: readonly number[],
): readonly (Height | undefined)[] {
  const heights: (Height | undefined)[] = [];
  let islands = 0;
  for (const sources of [batteries, chargers]) {
    const steps = new Map<number, { readonly to: number; readonly volts: number }[]>();
    const addStep = (from: number, to: number, volts: number) => {
      const others = steps.get(from);
      if (others) others.push({ to, volts });
      else steps.set(from, [{ to, volts }]);
    };
    for (const { positive, negative, nominalV } of sources) {
      addStep(netOf[negative]!, netOf[positive]!, nominalV);
      addStep(netOf[positive]!, netOf[negative]!, -nominalV);
    }
    const walk = (start: number) => {
      const found = [start];
      for (const net of found)
        for (const { to, volts } of steps.get(net) ?? []) {
          if (heights[to]) continue;
          const from = heights[net]!;
          heights[to] = { island: from.island, volts: from.volts + volts };
          found.push(to);
        }
    };
    for (const net of steps.keys()) if (heights[net]) walk(net);
    for (const net of steps.keys()) {
      if (heights[net]) continue;
      heights[net] = { island: islands++, volts: 0 };
      walk(net);
    }
  }
  return heights;
}

function spans(heights: readonly (Height | undefined)[]): ReadonlyMap<number, number> {
  const ends = new Map<number, { least: number; most: number }>();
  for (const height of heights) {
    if (!height) continue;
    const end = ends.get(height.island) ?? { least: height.volts, most: height.volts };
    end.least = Math.min(end.least, height.volts);
    end.most = Math.max(end.most, height.volts);
    ends.set(height.island, end);
  }
  return new Map([...ends].map(([island, { least, most }]) => [island, tidy(most - least)]));
}

/** Sums of nominal voltages, without floating-point noise. */
function tidy(volts: number): number {
  return Math.round(volts * 1e6) / 1e6;
}

/** By positive terminal: the sum over the string of batteries in series. */
function bankVoltages(batteries: readonly Source[], netOf: readonly number[]): ReadonlyMap<number, number> {
  const above = new Map<number, Source>();
  const below = new Map<number, Source>();
  for (const battery of batteries) {
    if (!above.has(netOf[battery.negative]!)) above.set(netOf[battery.negative]!, battery);
    if (!below.has(netOf[battery.positive]!)) below.set(netOf[battery.positive]!, battery);
  }
  const banks = new Map<number, number>();
  for (const battery of batteries) {
    if (banks.has(battery.positive)) continue;
    const string = new Set([battery]);
    let nominalV = battery.nominalV;
    const climb = (next: (at: Source) => Source | undefined) => {
      for (let at = next(battery); at && !string.has(at); at = next(at)) {
        string.add(at);
        nominalV += at.nominalV;
      }
    };
    climb((at) => above.get(netOf[at.positive]!));
    climb((at) => below.get(netOf[at.negative]!));
    for (const { positive } of string) if (!banks.has(positive)) banks.set(positive, tidy(nominalV));
  }
  return banks;
}
