import { continuousMargin } from "../../analysis/load-for-hours.ts";
import { protectionDistanceLimit } from "../../analysis/protection-distance.ts";
import { isDevice } from "../../model/part-roles.ts";
import type { Protection, Run } from "../../model/run.ts";
import { rules } from "../../rules/registry.ts";
import type { JudgedPlan } from "../../rules/rule.ts";
import { counted, formatExact, formatRounded, withUnit } from "../../rules/wording/format-number.ts";
import { unconfirmed } from "../../rules/wording/source-in-words.ts";
import { ambientCorrection } from "../../standards/ambient-nfpa70.ts";
import { note1EngineSpace, note2Bundling, table5 } from "../../standards/ampacity-33cfr183-425.ts";
import { annexA, bundling, engineSpace60C } from "../../standards/ampacity-iso10133.ts";
import { shipCable60C } from "../../standards/ampacity-ship-cable.ts";
import { alternatorShare } from "../../standards/charging-practice.ts";
import type { Citation } from "../../standards/citation.ts";
import {
  converterDropLimit,
  criticalDropLimit,
  ordinaryDropLimit,
  statedDropLimit,
} from "../../standards/drop-limits.ts";
import { minimumAwg, minimumMm2 } from "../../standards/minimum-sizes.ts";
import {
  breakingCapacity,
  clearingTime,
  deviceVoltage,
  protectionDistances,
  protectionOfMachine,
  ratingBetweenLoadAndConductor,
  ratingInHotPlace,
  ratingOverConductor,
  ratingOverContinuousLoad,
} from "../../standards/protection-rules.ts";
import { finalTemperatures } from "../../standards/short-circuit-copper.ts";
import { solarCurrentFactors } from "../../standards/solar-factors.ts";
import { coolestEnd } from "../../standards/terminal-temperature.ts";
import type { Table } from "../table.ts";
import { tableOf, words } from "../table-of.ts";
import type { Chapter, ReportContext } from "./chapter.ts";
import { type NumberedSource, standingInWords } from "./sources.ts";

/** Every limit with its figure, every rule with its basis, and the documents behind them in full. */
export function limitsChapter(context: ReportContext): Chapter {
  const { judgement } = context;
  const limits = limitTable(judgement, context);
  const rulesHeld = ruleTable(context);
  return {
    id: "limits",
    title: "Limits and their sources",
    orientation: "portrait",
    blocks: [
      {
        kind: "paragraph",
        text: "The tables show the limit beside each figure of this plan. This chapter gives the source of each limit. Numbers in brackets lead to the list of sources at the end of the chapter.",
      },
    ],
    sections: [
      { id: "limit-figures", title: "Limits", blocks: [{ kind: "table", table: limits }] },
      { id: "rules", title: "Rules", blocks: [{ kind: "table", table: rulesHeld }] },
      {
        id: "sources",
        title: "Sources",
        blocks: [
          {
            kind: "table",
            table: sourceTable(context),
          },
        ],
      },
    ],
  };
}

function sourceTable({ sources }: ReportContext): Table {
  return tableOf<NumberedSource>(
    {
      id: "sources",
      title: "Sources, in the order of this report",
      notes: [
        "From memory: recalled, and not seen in print; every figure based on it is called an unconfirmed figure.",
      ],
    },
    [
      words("number", "No.", ({ number }) => number),
      words("source", "Document, section, edition", ({ source }) => documentInFull(source)),
      words("authority", "Kind", ({ source }) => source.authority),
      words("standing", "How it is known", ({ source }) =>
        standingInWords(source).replace(`, ${unconfirmed}`, ""),
      ),
    ],
    sources.all(),
  );
}

function documentInFull({ document, section, edition, note }: Citation): string {
  const where = [document, section, edition && `edition ${edition}`].filter(Boolean).join(", ");
  return `${where}.${note ? ` ${note}` : ""}`;
}

interface Limit {
  readonly what: string;
  readonly figure: string;
  /** The runs or parts of this plan that it applies to, counted; undefined: to the plan as a whole. */
  readonly applies: string;
  readonly sources: readonly Citation[];
}

function limitTable(judgement: JudgedPlan, { sources }: ReportContext): Table {
  return tableOf<Limit>(
    { id: "limit-figures", title: "Limits", notes: [] },
    [
      words("what", "Limit", ({ what }) => what),
      words("figure", "Figure", ({ figure }) => figure),
      words("applies", "In this plan", ({ applies }) => applies),
      words("source", "Source", (limit) => limit.sources.map(sources.cite).join("; ")),
    ],
    [...limitsOfRuns(judgement), ...limitsOfDevices(judgement), ...limitsOfParts(judgement)],
  );
}

function limitsOfRuns({ circuits, network }: JudgedPlan): readonly Limit[] {
  const runs = circuits.map(({ circuit }) => circuit);
  const count = (wanted: (run: Run) => boolean, what = "run") => several(runs.filter(wanted).length, what);
  const withFactor = (what: "ambient" | "bundling" | "engine-space", system: Run["conductor"]["system"]) =>
    several(
      circuits.filter(
        ({ circuit, result: { ampacity } }) =>
          circuit.conductor.system === system &&
          ampacity.judged &&
          ampacity.factors.some((factor) => factor.what === what),
      ).length,
      "run",
    );
  const own = (wanted: (run: Run) => boolean) =>
    count((run) => run.word === "circuit" && wanted(run), "circuit");
  const stated = [
    ...new Set(
      runs.flatMap((run) => (run.word === "circuit" && run.dropLimitStated ? [run.dropLimitPercent] : [])),
    ),
  ].sort((one, other) => one - other);
  return [
    {
      what: "Current of a conductor, AWG",
      figure: "by size and insulation, in the tables",
      applies: count(({ conductor }) => conductor.system === "awg"),
      sources: [table5.source],
    },
    {
      what: "… in an engine space",
      figure: `${range(note1EngineSpace.factors)} of it, by insulation`,
      applies: withFactor("engine-space", "awg"),
      sources: [note1EngineSpace.source],
    },
    {
      what: "… beside other loaded conductors",
      figure: note2Bundling.rows
        .map(({ fromConductors, factor }) => `${factor} from ${fromConductors}`)
        .join(", "),
      applies: withFactor("bundling", "awg"),
      sources: [note2Bundling.source],
    },
    {
      what: "Current of a conductor, metric",
      figure: "by size and insulation, in the tables",
      applies: count(({ conductor }) => conductor.system === "metric"),
      sources: [annexA.source, shipCable60C.source],
    },
    {
      what: "… in an engine space",
      figure: `${range(engineSpace60C.factors)} of it, by insulation`,
      applies: withFactor("engine-space", "metric"),
      sources: [engineSpace60C.source],
    },
    {
      what: "… beside other loaded conductors",
      figure: bundling.rows
        .map(({ fromConductors, factor }) => `${factor} from ${fromConductors}`)
        .join(", "),
      applies: withFactor("bundling", "metric"),
      sources: [bundling.source],
    },
    {
      what: "… at a stated ambient temperature",
      figure: "√((column − ambient) / (column − 30 °C)), at most 1",
      applies: several(
        circuits.filter(
          ({ result: { ampacity } }) =>
            ampacity.judged && ampacity.factors.some(({ what }) => what === "ambient"),
        ).length,
        "run",
      ),
      sources: [ambientCorrection.source],
    },
    {
      what: "… at a terminal of a stated temperature rating",
      figure: "at most that of insulation of this rating",
      applies: several(
        circuits.filter(({ result: { ampacity } }) => ampacity.judged && ampacity.terminal).length,
        "run",
      ),
      sources: [coolestEnd],
    },
    {
      what: "Drop where it matters",
      figure: `${withUnit(criticalDropLimit.percentOfNominal, "%")} of the nominal voltage`,
      applies: own((run) => run.dropLimitSource === criticalDropLimit.source),
      sources: [criticalDropLimit.source],
    },
    {
      what: "Drop on the way to inverters and chargers",
      figure: `${withUnit(converterDropLimit.percentOfNominal, "%")} of the nominal voltage`,
      applies: several(
        network?.result.supplyPaths.filter(
          ({ dropLimitSource }) => dropLimitSource === converterDropLimit.source,
        ).length ?? 0,
        "supply path",
      ),
      sources: [converterDropLimit.source],
    },
    {
      what: "Drop elsewhere",
      figure: `${withUnit(ordinaryDropLimit.percentOfNominal, "%")} of the nominal voltage`,
      applies: own((run) => run.dropLimitSource === ordinaryDropLimit.source),
      sources: [ordinaryDropLimit.source],
    },
    ...stated.map((percent) => ({
      what: "Drop, as the plan states it",
      figure: `${formatExact(percent)} % of the nominal voltage`,
      applies: own((run) => run.dropLimitStated && run.dropLimitPercent === percent),
      sources: [statedDropLimit],
    })),
    {
      what: "Thinnest conductor, AWG",
      figure: `${minimumAwg.single.awg} AWG, ${minimumAwg.sheathed.awg} AWG in a sheath`,
      applies: count(({ conductor }) => conductor.system === "awg"),
      sources: [minimumAwg.single.source, minimumAwg.sheathed.source],
    },
    {
      what: "Thinnest conductor, metric",
      figure: `${minimumMm2.single.mm2} mm², ${minimumMm2.sheathed.mm2} mm² in a sheath`,
      applies: count(({ conductor }) => conductor.system === "metric"),
      sources: [minimumMm2.single.source, minimumMm2.sheathed.source],
    },
  ];
}

function limitsOfDevices({ circuits, network }: JudgedPlan): readonly Limit[] {
  const ends = circuits.flatMap(({ circuit }) => [
    ...(circuit.protection ? [{ circuit, end: "near", protection: circuit.protection } as const] : []),
    ...(circuit.protectionFarEnd
      ? [{ circuit, end: "far", protection: circuit.protectionFarEnd } as const]
      : []),
  ]);
  const ownParts = (network?.network.parts ?? []).filter(isDevice);
  const devices: readonly Protection[] = [...ends.map(({ protection }) => protection), ...ownParts];
  const all = several(devices.length, "device");
  const faults = network?.result.faults.devices ?? [];
  const distances = Object.values(protectionDistances).map(({ maxIn, source }) => ({
    what: `How far from its source of power, along the conductor: ${distanceWords(maxIn)}`,
    figure: withUnit(maxIn, "in"),
    applies: several(
      ends.filter(
        ({ circuit, end, protection }) =>
          protection.distanceM !== undefined && protectionDistanceLimit(circuit, end).maxIn === maxIn,
      ).length,
      "device",
    ),
    sources: [source],
  }));
  return [
    {
      what: "Rating of a device against its conductor",
      figure: `at most ${ratingOverConductor.heldToPercent} % of its ampacity`,
      applies: all,
      sources: [ratingOverConductor.source, ratingBetweenLoadAndConductor],
    },
    {
      what: "Rating of a device against its load",
      figure: `at least the load; the aim is ${formatExact(ratingOverContinuousLoad.factor * 100)} % of a continuous one, in a place of ${ratingInHotPlace.fromC} °C or more ${formatRounded(100 * continuousMargin(ratingInHotPlace.fromC).factor)} %`,
      applies: all,
      sources: [ratingBetweenLoadAndConductor, ratingOverContinuousLoad.source, ratingInHotPlace.source],
    },
    {
      what: "Voltage rating of a device",
      figure: "at least the nominal voltage",
      applies: several(
        devices.filter(({ ratedV, family }) => ratedV !== undefined || family).length,
        "device",
      ),
      sources: [deviceVoltage],
    },
    ...distances,
    {
      what: "Interrupting rating of a device",
      figure: "at least the maximum fault right behind it",
      applies: several(faults.length, "device"),
      sources: [breakingCapacity],
    },
    {
      what: "Clearing time of a device at the minimum fault",
      figure: `within ${clearingTime.maxS} s`,
      applies: several(faults.filter(({ least }) => least).length, "device"),
      sources: [clearingTime.source],
    },
    {
      what: "Temperature of the insulation in a short",
      figure: finalTemperatures.rows
        .map(({ ratedUpToC, finalC }) => `${finalC} °C for insulation up to ${ratedUpToC} °C`)
        .join(", "),
      applies: several(network?.network.conductors.length ?? 0, "conductor"),
      sources: [finalTemperatures.source],
    },
  ];
}

function distanceWords(maxIn: number): string {
  const { bare, sheathed } = protectionDistances;
  return maxIn === bare.maxIn ? "bare" : maxIn === sheathed.maxIn ? "in a sheath" : "from a battery";
}

function limitsOfParts({ network }: JudgedPlan): readonly Limit[] {
  const parts = network?.network.parts ?? [];
  const count = (...kinds: readonly (typeof parts)[number]["kind"][]) =>
    several(parts.filter(({ kind }) => kinds.includes(kind)).length, "part");
  return [
    {
      what: "Continuous output of an alternator",
      figure: `${alternatorShare.continuousPercent} % of its rating`,
      applies: count("alternator"),
      sources: [alternatorShare.source],
    },
    {
      what: "Fuse of a machine that does not limit its current",
      figure: `at most ${protectionOfMachine.ofRatingPercent} % of its rating`,
      applies: count("alternator"),
      sources: [protectionOfMachine.source],
    },
    {
      what: "Current of solar conductors and fuses",
      figure: `${formatExact(solarCurrentFactors.irradiance)} for more sun, times ${formatExact(solarCurrentFactors.continuous)} for hours`,
      applies: count("solarArray"),
      sources: [solarCurrentFactors.irradianceSource, solarCurrentFactors.continuousSource],
    },
  ];
}

function ruleTable({ sources, numbered }: ReportContext): Table {
  return tableOf<(typeof rules)[number]>(
    { id: "rules", title: "Rules applied to the plan", notes: [] },
    [
      words("rule", "Rule", ({ id }) => id),
      words("finds", "Title", ({ title }) => title),
      words(
        "findings",
        "Found",
        ({ id }) =>
          numbered
            .filter(({ rule }) => rule === id)
            .map(({ number }) => number)
            .join(", ") || "none",
      ),
      words("sources", "Sources", (rule) => [...new Set(rule.sources.map(sources.short))].join(", ")),
    ],
    rules,
  );
}

/** "0.58 to 1"; insulation that is not allowed there has no factor. */
function range(factors: readonly (number | null)[]): string {
  const allowed = factors.filter((factor) => factor !== null);
  return `${formatExact(Math.min(...allowed))} to ${formatExact(Math.max(...allowed))}`;
}

/** "1 run", "20 runs"; "none". */
function several(count: number, what: string): string {
  return count === 0 ? "none" : counted(count, what);
}
