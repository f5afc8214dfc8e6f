import { resistsCurrent } from "../../model/internal-connections.ts";
import type { Run } from "../../model/run.ts";
import type { JudgedPlan } from "../../rules/rule.ts";
import { formatExact, withUnit } from "../../rules/wording/format-number.ts";
import { unconfirmed } from "../../rules/wording/source-in-words.ts";
import { note1EngineSpace } from "../../standards/ampacity-33cfr183-425.ts";
import { engineSpace60C } from "../../standards/ampacity-iso10133.ts";
import type { Citation } from "../../standards/citation.ts";
import { strandFactor } from "../../standards/copper.ts";
import { converterDropLimit, criticalDropLimit, ordinaryDropLimit } from "../../standards/drop-limits.ts";
import { type Assumption, namesOf } from "./assumption.ts";
import { everyRun } from "./every-run.ts";

/** Defaults taken for circuits and cables because they are not stated. */
export function assumptionsOfRuns(plan: JudgedPlan): readonly Assumption[] {
  const { model } = plan;
  const runs = everyRun(plan);
  const where = (wanted: (run: Run) => boolean, of: readonly Run[] = runs, what = "runs") =>
    namesOf(of.filter(wanted), of.length, what);
  const loads = runs.filter(({ word }) => word === "circuit");
  const ownPractice = "common practice, no source";
  const voltage: readonly Assumption[] = model.build.voltageStated
    ? []
    : [
        {
          what: "Nominal voltage of the build",
          takenAs: withUnit(12, "V"),
          where: "if neither a circuit nor a battery states its own",
          source: ownPractice,
        },
      ];
  return [
    ...voltage,
    {
      what: "Insulation",
      takenAs: `rated ${withUnit(75, "°C")}, or the next cooler column of the table`,
      where: where(({ insulationStated }) => !insulationStated),
      source: ownPractice,
    },
    {
      what: "Temperature of the place, AWG sizes",
      takenAs: withUnit(30, "°C"),
      where: where((run) => isAmbientTaken(run) && run.conductor.system === "awg"),
      source: "two boat-wiring suppliers' explanation; the table prints no ambient",
    },
    {
      what: "Temperature of the place, metric sizes",
      takenAs: withUnit(30, "°C"),
      where: where((run) => isAmbientTaken(run) && run.conductor.system === "metric"),
      source: `the table's own ambient; from memory, ${unconfirmed}`,
    },
    {
      what: "Temperature of an engine space, AWG sizes",
      takenAs: withUnit(note1EngineSpace.ambientC, "°C"),
      where: where((run) => run.engineSpace && run.conductor.system === "awg"),
      source: "two boat-wiring suppliers' explanation; the regulation prints factors and no temperature",
    },
    {
      what: "Temperature of an engine space, metric sizes",
      takenAs: withUnit(engineSpace60C.ambientC, "°C"),
      where: where((run) => run.engineSpace && run.conductor.system === "metric"),
      source: engineSpace60C.source,
    },
    {
      what: "Other loaded conductors beside one",
      takenAs: "none but the run's own",
      where: where(({ bundledWithStated }) => !bundledWithStated),
      source: ownPractice,
    },
    {
      what: "Duration of a load",
      takenAs: "continuous, which raises the rating of its fuse",
      where: where(({ continuous, continuousStated }) => continuous && !continuousStated, loads, "circuits"),
      source: ownPractice,
    },
    {
      what: "Sheath",
      takenAs: "none",
      where: where(({ sheathed }) => !sheathed),
      source: ownPractice,
    },
    {
      what: "Start of a circuit that names none",
      takenAs: "a bus bar or a panel, not a battery",
      where: where(({ inNetwork, fromBattery }) => !inNetwork && !fromBattery, loads, "circuits"),
      source: ownPractice,
    },
    {
      what: "Feed of such a circuit",
      takenAs: "from one end",
      where: where(({ inNetwork, fedFromBothEnds }) => !inNetwork && !fedFromBothEnds, loads, "circuits"),
      source: ownPractice,
    },
    ...limitsTaken(loads),
    {
      what: "Current of a load in watts",
      takenAs: "at the nominal voltage, because no minimum voltage is stated",
      where: where(
        ({ loadW, minimumV, inNetwork }) => loadW !== undefined && minimumV === undefined && !inNetwork,
        loads,
        "circuits",
      ),
      source: ownPractice,
    },
    {
      what: "Conductor",
      takenAs: "annealed copper, finely stranded",
      where: runs.length > 0 ? "all runs" : "",
      source: "the conductor of the tables of currents and resistances",
    },
    {
      what: "Strands longer than the conductor, AWG sizes",
      takenAs: `${formatExact(strandFactor.factor)} times the resistance of solid wire`,
      where: where(({ conductor }) => conductor.system === "awg"),
      source: strandFactor.source,
    },
    {
      what: "Fuses, contacts, lugs, switches",
      takenAs: withUnit(0, "Ω"),
      where: runs.length > 0 ? everywhereExcept(plan) : "",
      source: ownPractice,
    },
  ];
}

/** "everywhere", except in the parts with a resistance. */
function everywhereExcept({ network }: JudgedPlan): string {
  const resisting = (network?.network.parts ?? []).filter(resistsCurrent);
  return resisting.length === 0
    ? "everywhere"
    : `everywhere except in ${resisting.map(({ name }) => name).join("; ")}`;
}

function isAmbientTaken({ ambientStated, engineSpace }: Run): boolean {
  return !ambientStated && !engineSpace;
}

function limitsTaken(loads: readonly Run[]): readonly Assumption[] {
  const assumed = (
    what: string,
    { percentOfNominal, source }: { readonly percentOfNominal: number; readonly source: Citation },
  ): Assumption => {
    const taken = loads.filter(({ dropLimitSource }) => dropLimitSource === source);
    const where = namesOf(taken, loads.length, "circuits");
    return { what, takenAs: withUnit(percentOfNominal, "%"), where, source };
  };
  return [
    assumed("Limit of drop where it matters", criticalDropLimit),
    assumed("Limit of drop on the way to inverters and chargers", converterDropLimit),
    assumed("Limit of drop elsewhere", ordinaryDropLimit),
  ];
}
