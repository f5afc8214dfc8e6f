import type { Conductor, PlaceOfRun, Run } from "../model/run.ts";
import { workedOutOnce } from "../model/worked-out-once.ts";
import type { InsulationC } from "../plan/sizes.ts";
import { ambientCorrection } from "../standards/ambient-nfpa70.ts";
import { note1EngineSpace, note2Bundling, table5 } from "../standards/ampacity-33cfr183-425.ts";
import { annexA, bundling, engineSpace60C } from "../standards/ampacity-iso10133.ts";
import { shipCable60C } from "../standards/ampacity-ship-cable.ts";
import type { Citation } from "../standards/citation.ts";
import { coolestEnd } from "../standards/terminal-temperature.ts";
import type { Ampacity, AmpacityFactor, TerminalLimit } from "./circuit-result.ts";
import { withoutDust } from "./rounding-dust.ts";

/**
 * Ampacity of the conductor of one polarity.
 *
 *     I = n · I_table · k_place · k_bundling          all in A; n wires in parallel; factors without unit
 *
 * I_table: AWG 33 CFR 183.425 Table 5, metric ISO 10133 Annex A, for insulation of 60 °C a table for ship cable; the column of
 * the stated insulation or the next cooler one. k_place: see {@link placeFactor}. k_bundling: see {@link bundlingFactor}.
 * Valid for 18 AWG to 4/0 and 0.75 to 150 mm², insulation of 60 to 200 °C, a place cooler than the column.
 * Factors for a condition that the plan states are listed even if they are 1; bundling only if it reduces the ampacity.
 * Not above n · I_table in the column of the coolest terminal whose rating is stated: NFPA 70, 110.14(C).
 */
export const ampacityOf: (circuit: Run) => Ampacity = workedOutOnce((circuit) =>
  ampacityAt(inDecidingPlace(circuit)),
);

/**
 * A run with the surroundings of the place on its way that decides its ampacity: of each, those along that stretch alone. The run itself
 * if its surroundings are the same everywhere.
 */
export const inDecidingPlace: (circuit: Run) => Run = workedOutOnce((circuit) => {
  const { places, ...rest } = circuit;
  if (!places) return circuit;
  const there = places.map((place) => ({ ...rest, ...surroundingsOf(place) }) as Run);
  const ampacities = there.map((run) => {
    const ampacity = ampacityAt(run);
    return ampacity.judged ? ampacity.byInsulationA : Number.NEGATIVE_INFINITY;
  });
  return there[ampacities.indexOf(Math.min(...ampacities))] ?? circuit;
});

function surroundingsOf({ name: place, engineSpace, ambientC, ambientStated }: PlaceOfRun) {
  return { place, engineSpace, ambientC, ambientStated };
}

function ampacityAt(circuit: Run): Ampacity {
  const { conductor } = circuit;
  const basis = bases[conductor.system];
  const column = basis.columns.findLast(({ ratedC }) => ratedC <= circuit.insulationC);
  const tableA = column?.amperes.get(sizeOf(conductor));
  if (column === undefined || tableA === undefined) {
    return {
      judged: false,
      why: "no-table",
      columnC: column?.ratedC ?? circuit.insulationC,
      ambientC: circuit.ambientC,
      source: column?.source ?? basis.columns[0].source,
    };
  }
  const { ratedC: columnC, source } = column;
  const place = placeFactor(circuit, basis, column);
  if (place.tooHot) {
    return { judged: false, why: "place-too-hot", columnC, ambientC: place.ambientC, source };
  }
  const factors: AmpacityFactor[] = [];
  if (place.factor) factors.push(place.factor);
  const bundled = bundlingFactor(1 + circuit.bundledWith, basis);
  if (bundled) factors.push(bundled);
  const byInsulationA = deratedA({ tableA, parallel: conductor.parallel, factors });
  const terminal = terminalLimit(circuit, basis);
  const byTerminalA = terminal ? terminal.tableA * conductor.parallel : Number.POSITIVE_INFINITY;
  return {
    judged: true,
    ampacityA: Math.min(byInsulationA, byTerminalA),
    byInsulationA,
    ...(terminal && byTerminalA < byInsulationA && { terminal }),
    tableA,
    columnC,
    parallel: conductor.parallel,
    factors,
    ambientC: place.ambientC,
    ...(circuit.place !== undefined && { place: circuit.place }),
    source,
  };
}

/**
 * An ampacity after its factors, all parallel wires together: n · I_table · k₁ · k₂ …, A. Factors multiply, as in
 * NFPA 70, 310.15 and in FAA AC 43.13-1B, 11-67f.
 */
export function deratedA(of: {
  tableA: number;
  parallel: number;
  factors: readonly { readonly factor: number }[];
}): number {
  return withoutDust(of.factors.reduce((currentA, { factor }) => currentA * factor, of.tableA * of.parallel));
}

/**
 * Correction of an ampacity for the ambient.
 *
 *     k = √((Tc − Ta) / (Tc − 30))     Tc rating of the insulation (the table's column), Ta ambient, °C
 *
 * NFPA 70, 310.15(B)(1). Valid for Ta below Tc; never above 1 here, so a cool place adds no ampacity.
 */
export function ambientFactor(columnC: number, ambientC: number): number {
  return Math.min(1, Math.sqrt((columnC - ambientC) / (columnC - ambientCorrection.baseAmbientC)));
}

/**
 * The figures of the coolest terminal. Factors start from the column of the insulation and the result is held to that of the
 * terminal, without factors: the terminal is taken to be in an ordinary place (NFPA 70, 110.14(C)(1)).
 */
function terminalLimit({ conductor, coolestTerminal }: Run, basis: Basis): TerminalLimit | undefined {
  if (!coolestTerminal) return undefined;
  const column = basis.columns.findLast(({ ratedC }) => ratedC <= coolestTerminal.ratedC);
  const tableA = column?.amperes.get(sizeOf(conductor));
  if (column === undefined || tableA === undefined) return undefined;
  return { coolest: coolestTerminal, columnC: column.ratedC, tableA, source: coolestEnd };
}

/** The tables for one system of sizes, prepared for look-up. */
interface Basis {
  /** From the coolest to the hottest. */
  readonly columns: readonly [Column, ...Column[]];
  readonly engineSpace: { readonly source: Citation; readonly ambientC: number };
  readonly bundling: {
    readonly source: Citation;
    readonly rows: readonly { readonly fromConductors: number; readonly factor: number }[];
  };
}

/** Ampacities for one temperature rating of the insulation. */
interface Column {
  readonly ratedC: InsulationC;
  readonly source: Citation;
  /** By size. */
  readonly amperes: ReadonlyMap<number | string, number>;
  /** Null: such insulation may not go into an engine space. */
  readonly engineSpaceFactor: number | null;
}

const [coolest, ...hotter] = table5.columnsC.map(
  (ratedC, index): Column => ({
    ratedC,
    source: table5.source,
    amperes: new Map(table5.rows.map(({ awg, amperes }) => [awg, amperes[index]!])),
    engineSpaceFactor: note1EngineSpace.factors[index]!,
  }),
);

const bases: Readonly<Record<Conductor["system"], Basis>> = {
  awg: {
    columns: [coolest!, ...hotter],
    engineSpace: note1EngineSpace,
    bundling: note2Bundling,
  },
  metric: {
    columns: [
      {
        ratedC: shipCable60C.insulationC,
        source: shipCable60C.source,
        amperes: new Map(shipCable60C.rows.map(({ mm2, ampereA }) => [mm2, ampereA])),
        engineSpaceFactor: null,
      },
      ...annexA.columnsC.map(
        (ratedC, index): Column => ({
          ratedC,
          source: annexA.source,
          amperes: new Map(annexA.rows.map(({ mm2, amperes }) => [mm2, amperes[index]!])),
          engineSpaceFactor: engineSpace60C.factors[index]!,
        }),
      ),
    ],
    engineSpace: engineSpace60C,
    bundling,
  },
};

/** The sources of the ampacities, without those of the factors. */
export const ampacityTables = [table5.source, annexA.source, shipCable60C.source] as const;

/** The temperature ratings that the table for a system of sizes has columns for, °C, ascending. */
export function ratedColumnsC(system: Conductor["system"]): readonly InsulationC[] {
  return bases[system].columns.map(({ ratedC }) => ratedC);
}

/** The size of a conductor in its own system: AWG, or mm². */
export function sizeOf(conductor: Conductor): number | string {
  return conductor.system === "awg" ? conductor.awg : conductor.mm2;
}

type Place =
  | { readonly tooHot: false; readonly factor: AmpacityFactor | null; readonly ambientC: number }
  | { readonly tooHot: true; readonly ambientC: number };

/**
 * The factor for the conductor's place: the table's own one for engine spaces, the ambient equation for a stated
 * ambient, the smaller of the two if both apply. Never their product: both account for the same warm air.
 * An engine-space factor recalled from memory, not read in print, is never trusted alone: the equation at that space's
 * ambient is applied too, and again the smaller counts.
 */
function placeFactor(circuit: Run, { engineSpace }: Basis, column: Column): Place {
  const { ratedC: columnC, engineSpaceFactor } = column;
  const statedC = circuit.ambientStated ? circuit.ambientC : undefined;
  if (statedC !== undefined && statedC >= columnC) return { tooHot: true, ambientC: statedC };
  const inEngineSpace = circuit.engineSpace ? engineSpaceFactor : undefined;
  if (inEngineSpace === null) return { tooHot: true, ambientC: engineSpace.ambientC };
  const equationC =
    inEngineSpace !== undefined && engineSpace.source.confirmed === "memory"
      ? Math.max(engineSpace.ambientC, statedC ?? engineSpace.ambientC)
      : statedC;
  const ambient = equationC === undefined ? undefined : ambientFactor(columnC, equationC);
  if (inEngineSpace !== undefined && (ambient === undefined || inEngineSpace <= ambient)) {
    const factor: AmpacityFactor = {
      what: "engine-space",
      factor: inEngineSpace,
      input: engineSpace.ambientC,
      source: engineSpace.source,
    };
    return { tooHot: false, factor, ambientC: Math.max(engineSpace.ambientC, statedC ?? 0) };
  }
  if (ambient === undefined || equationC === undefined) {
    return { tooHot: false, factor: null, ambientC: circuit.ambientC };
  }
  const factor: AmpacityFactor = {
    what: "ambient",
    factor: ambient,
    input: equationC,
    source: ambientCorrection.source,
  };
  // The milder factor does not cool the engine space: the conductor still gets as warm as that makes it.
  const ambientC = circuit.engineSpace ? Math.max(engineSpace.ambientC, equationC) : equationC;
  return { tooHot: false, factor, ambientC };
}

/**
 * The factor for conductors that warm each other, by the number of conductors together, this one included:
 * 33 CFR 183.425 Table 5 note 2 for AWG, ISO 10133 Annex A for metric.
 */
function bundlingFactor(conductorsTogether: number, { bundling }: Basis): AmpacityFactor | null {
  const row = bundling.rows.findLast(({ fromConductors }) => fromConductors <= conductorsTogether);
  if (!row) return null;
  return { what: "bundling", factor: row.factor, input: conductorsTogether, source: bundling.source };
}
