import { familyData } from "../analysis/choose-device.ts";
import type { AmpacityFactor, KnownDrop, TerminalLimit } from "../analysis/circuit-result.ts";
import type { Family } from "../analysis/made-ratings.ts";
import type { Run } from "../model/run.ts";
import { sizeInWords } from "../rules/fixes/sized-fix.ts";
import type { JudgedRun } from "../rules/rule.ts";
import { estimateInWords } from "../rules/wording/estimate-in-words.ts";
import {
  formatDistinct,
  formatExact,
  formatRounded,
  type Unit,
  withUnit,
} from "../rules/wording/format-number.ts";
import { lengthInWords } from "../rules/wording/lengths.ts";
import { sourceInWords, tableSourceInWords, unconfirmed } from "../rules/wording/source-in-words.ts";
import { strandFactor, temperatureCoefficient } from "../standards/copper.ts";
import { lowestCellVoltage } from "../standards/device-practice.ts";

/**
 * The derivation of one circuit's figures, as Markdown: a list of steps, each with the formula in words, the same with the actual
 * numbers, the result and its sources.
 */
export function derivation(judged: JudgedRun): string {
  // Blank lines keep the steps apart.
  const steps = derivationSteps(judged).map(({ title, formula, withNumbers, result, sources }, index) =>
    [
      `${index + 1}. ${title}: **${result}**`,
      `   ${formula}`,
      `   \`${withNumbers}\``,
      `   _${sources.join("; ")}_`,
    ].join("  \n"),
  );
  return `${steps.join("\n\n")}\n\nShown to three figures, worked out with all of them.`;
}

/** One step from numbers to a number. Texts for people, with units, rounded; not used in further calculations. */
export interface DerivationStep {
  /** The quantity: "Ampacity of 4 AWG". */
  readonly title: string;
  /** In words: "ampacity = table × wires × factors". */
  readonly formula: string;
  /** The formula's right side with the numbers of this circuit: "125 A × 1". */
  readonly withNumbers: string;
  /** "125 A" */
  readonly result: string;
  readonly sources: readonly [string, ...string[]];
}

/** The steps, each after those that it needs: load, ampacity, temperature, resistance, drop, protection. */
export function derivationSteps(judged: JudgedRun): DerivationStep[] {
  return [
    ...(judged.circuit.inNetwork ? flowSteps(judged) : loadSteps(judged)),
    ...designSteps(judged),
    ...ampacitySteps(judged),
    ...temperatureSteps(judged),
    ...resistanceSteps(judged),
    ...dropSteps(judged),
    ...protectionSteps(judged),
  ];
}

/** Only a load stated in watts needs this step. */
function loadSteps({ circuit: { loadW, loadA, loadAtV, minimumV } }: JudgedRun): DerivationStep[] {
  if (loadW === undefined) return [];
  return [
    {
      title: "Load",
      formula: `current = power / ${minimumV === undefined ? "nominal voltage" : "minimum voltage of the device"}`,
      withNumbers: `${formatExact(loadW)} W / ${formatExact(loadAtV)} V`,
      result: withUnit(loadA, "A"),
      sources: ["definition of power"],
    },
  ];
}

/** In a network, the current follows from the whole network; a circuit counts for at least the load that it states. */
function flowSteps({ circuit: { loadW, loadA, loadAtV, statesLoad } }: JudgedRun): DerivationStep[] {
  const stated =
    loadW === undefined
      ? "the stated load"
      : `${formatExact(loadW)} W / ${formatExact(loadAtV)} V = ${withUnit(loadW / loadAtV, "A")} as stated`;
  const flows = "the maximum in any scenario that lasts";
  return [
    {
      title: "Current",
      formula: statesLoad
        ? "current = the greater of the stated load and the current in the network"
        : "current = the solved current in the network",
      withNumbers: statesLoad ? `the greater of ${stated} and ${flows}` : flows,
      result: withUnit(loadA, "A"),
      sources: ["Kirchhoff's current law and Ohm's law, over the whole network"],
    },
  ];
}

/** Only if constant powers draw more at the lowest voltage at which they work. */
function designSteps({ circuit }: JudgedRun): DerivationStep[] {
  const { loadW, lowVoltageA, lowestV, inNetwork } = circuit;
  if (lowVoltageA === undefined) return [];
  return [
    {
      title: "Current for ampacity and ratings",
      formula: "current = power / lowest voltage at which the device works",
      withNumbers:
        loadW !== undefined && !inNetwork
          ? `${formatExact(loadW)} W / ${formatExact(lowestV)} V`
          : "each load of constant power in the network at that voltage",
      result: `${withUnit(lowVoltageA, "A")}${estimateInWords(circuit.estimate)}`,
      sources: [sourceInWords(lowestCellVoltage.source)],
    },
  ];
}

function ampacitySteps({ circuit: { conductor }, result: { ampacity } }: JudgedRun): DerivationStep[] {
  const wire = sizeInWords({ ...conductor, parallel: 1 });
  const title = `Ampacity of ${sizeInWords(conductor)}`;
  const source = tableSourceInWords(ampacity);
  if (!ampacity.judged) {
    const [formula, withNumbers] =
      ampacity.why === "place-too-hot"
        ? [
            "none, because the place is as hot as the insulation may be",
            comparison(ampacity.ambientC, ampacity.columnC, "°C"),
          ]
        : ["none, because no table gives it", `${wire} at ${withUnit(ampacity.columnC, "°C")}`];
    return [{ title, formula, withNumbers, result: "not judged", sources: [source] }];
  }
  const { factors, tableA, columnC, parallel, byInsulationA, terminal, place } = ampacity;
  const factorNumbers = factors.map(({ factor }) => ` × ${formatRounded(factor)}`).join("");
  return [
    ...factors.map((factor) => factorStep(factor, columnC, place)),
    {
      title,
      formula: `ampacity = table × wires in parallel${factors.length > 0 ? " × factors" : ""}; table: ${wire}, column of ${withUnit(columnC, "°C")}`,
      withNumbers: `${withUnit(tableA, "A")} × ${parallel}${factorNumbers}`,
      result: withUnit(byInsulationA, "A"),
      sources: [source],
    },
    ...(terminal ? [terminalStep(terminal, { wire, parallel, ampacityA: ampacity.ampacityA })] : []),
  ];
}

function terminalStep(
  { coolest, columnC, tableA, source }: TerminalLimit,
  {
    wire,
    parallel,
    ampacityA,
  }: { readonly wire: string; readonly parallel: number; readonly ampacityA: number },
): DerivationStep {
  return {
    title: `Ampacity at the terminals of ${coolest.of ?? "its fuse or breaker"}`,
    formula: `ampacity = table × wires in parallel, because the terminal is rated ${withUnit(coolest.ratedC, "°C")}; table: ${wire}, column of ${withUnit(columnC, "°C")}`,
    withNumbers: `${withUnit(tableA, "A")} × ${parallel}`,
    result: withUnit(ampacityA, "A"),
    sources: [sourceInWords(source)],
  };
}

/** `place`: the place on its way that decides. */
function factorStep(
  { what, factor, input, source }: AmpacityFactor,
  columnC: number,
  place: string | undefined,
): DerivationStep {
  const where = place === undefined ? "" : ` (${place})`;
  const common = { result: formatRounded(factor), sources: [sourceInWords(source)] as const };
  if (what === "ambient") {
    return {
      title: `Factor for the ambient${where}`,
      formula: "factor = √((column − ambient) / (column − 30 °C)), at most 1",
      withNumbers: `√((${formatRounded(columnC)} − ${formatRounded(input)}) / (${formatRounded(columnC)} − 30))`,
      ...common,
    };
  }
  return what === "engine-space"
    ? {
        title: `Factor for the engine space${where}`,
        formula: "read from the note to the table, by insulation rating",
        withNumbers: `column of ${withUnit(columnC, "°C")}, engine space of ${withUnit(input, "°C")}`,
        ...common,
      }
    : {
        title: "Factor for the bundle",
        formula: "read from the note to the table, by loaded conductors together",
        withNumbers: `${formatRounded(input)} conductors together`,
        ...common,
      };
}

/** Heating goes with the square of the current, and so does the rise above ambient. */
function temperatureSteps({ circuit, result: { ampacity, drop } }: JudgedRun): DerivationStep[] {
  if (!ampacity.judged) return [];
  const { loadA } = circuit;
  const { ambientC, columnC, byInsulationA: ampacityA } = ampacity;
  const capped = drop.resistanceAtC < drop.conductorC;
  return [
    {
      title: "Temperature of the conductor",
      formula: `temperature = ambient + (column − ambient) × (${flowing(circuit)} / ampacity)²`,
      withNumbers: `${formatRounded(ambientC)} °C + (${formatRounded(columnC)} − ${formatRounded(ambientC)}) °C × (${formatRounded(loadA)} A / ${formatRounded(ampacityA)} A)²`,
      result: capped
        ? `above ${withUnit(columnC, "°C")}, overloaded; ${withUnit(drop.resistanceAtC, "°C")} is taken for the resistance`
        : withUnit(drop.conductorC, "°C"),
      sources: [
        "follows from the definition of ampacity: at it, the conductor is as hot as its column states",
      ],
    },
  ];
}

function resistanceSteps({ circuit, result: { drop } }: JudgedRun): DerivationStep[] {
  const { conductor } = circuit;
  const { perK, referenceC } = temperatureCoefficient;
  const milliohmPerM20C = drop.ohmPerM20C * 1000;
  const warmer = 1 + perK * (drop.resistanceAtC - referenceC);
  const tableMilliohmPerM = milliohmPerM20C / drop.strandFactor;
  const wire = sizeInWords({ ...conductor, parallel: 1 });
  const isSolid = drop.strandFactor !== 1;
  return [
    {
      title: `Resistance of ${wire} at ${withUnit(drop.resistanceAtC, "°C")}, per metre`,
      formula: `resistance = table at ${referenceC} °C ${isSolid ? "× strand factor " : ""}× (1 + ${perK} × (temperature − ${referenceC} °C))`,
      withNumbers: `${withUnit(tableMilliohmPerM, "mΩ/m")} ${isSolid ? `× ${drop.strandFactor} ` : ""}× (1 + ${perK} × (${formatRounded(drop.resistanceAtC)} − ${referenceC}))`,
      result: withUnit(milliohmPerM20C * warmer, "mΩ/m"),
      sources: [
        sourceInWords(drop.source),
        ...(isSolid ? [sourceInWords(strandFactor.source)] : []),
        sourceInWords(temperatureCoefficient.source),
      ],
    },
    {
      title:
        circuit.word === "cable"
          ? "Resistance from end to end"
          : "Resistance of the whole path, out and back",
      formula: `resistance = resistance per metre × length${circuit.word === "cable" ? "" : " of both conductors"} / wires in parallel`,
      withNumbers: `${withUnit(milliohmPerM20C * warmer, "mΩ/m")} × ${drop.judged ? lengthBothWays(circuit, drop.roundTripM) : "a length that is not known"} / ${conductor.parallel}`,
      result: drop.judged
        ? withUnit(drop.roundTripOhm * 1000, "mΩ")
        : "not known, and so neither is the drop",
      sources: ["Ohm's law"],
    },
  ];
}

/** In metres, which the step uses, and in the plan's unit if that is another. */
function lengthBothWays(circuit: JudgedRun["circuit"], roundTripM: number): string {
  const metres = withUnit(roundTripM, "m");
  const asPlanned = lengthInWords(circuit, roundTripM);
  return asPlanned === metres ? metres : `${metres} (${asPlanned})`;
}

function dropSteps({ circuit, result: { drop } }: JudgedRun): DerivationStep[] {
  const { loadA, systemV, minimumV } = circuit;
  if (!drop.judged) return [];
  const atLeast = drop.overloaded ? "at least " : "";
  const [percent, limit] = formatDistinct(drop.dropPercent, drop.dropLimitPercent);
  return [
    {
      title: "Voltage drop",
      formula: `drop = ${flowing(circuit)} × resistance${circuit.word === "cable" ? "" : " of the whole path"}`,
      withNumbers: `${withUnit(loadA, "A")} × ${withUnit(drop.roundTripOhm * 1000, "mΩ")}`,
      result: `${atLeast}${withUnit(drop.dropV, "V")}`,
      sources: ["Ohm's law"],
    },
    {
      title: "Voltage drop, of the nominal voltage",
      formula: "percentage = 100 % × drop / nominal voltage",
      withNumbers: `100 % × ${withUnit(drop.dropV, "V")} / ${withUnit(systemV, "V")}`,
      result:
        circuit.word === "cable"
          ? `${atLeast}${withUnit(drop.dropPercent, "%")}`
          : `${atLeast}${percent} %, limit ${limit} %`,
      sources: [
        circuit.word === "cable"
          ? "the limit applies to the whole path from the bank"
          : `limit: ${sourceInWords(drop.dropLimitSource)}`,
      ],
    },
    // In a network, the arriving voltage follows from the whole supply path.
    ...(minimumV === undefined || circuit.inNetwork ? [] : [arrivingStep(systemV, drop, minimumV)]),
  ];
}

function arrivingStep(
  systemV: number,
  { dropV, arrivingV, overloaded }: KnownDrop,
  minimumV: number,
): DerivationStep {
  const [arriving, needed] = formatDistinct(arrivingV, minimumV);
  return {
    title: "Voltage at the device",
    formula: "voltage = nominal voltage − drop",
    withNumbers: `${withUnit(systemV, "V")} − ${withUnit(dropV, "V")}`,
    result: `${overloaded ? "at most " : ""}${arriving} V, needed ${needed} V`,
    sources: ["needed: stated in the plan"],
  };
}

function protectionSteps({ circuit, result: { protection } }: JudgedRun): DerivationStep[] {
  const { minA, maxA, aimA, bestRatingA, margin } = protection;
  const best =
    bestRatingA !== undefined
      ? `${withUnit(bestRatingA, "A")} is a standard rating`
      : maxA === undefined
        ? "upper limit not judged"
        : "no standard rating from there up to the ampacity";
  const factor = formatRounded(margin.factor);
  return [
    {
      title: "Protection allowed",
      formula: `${flowing(circuit)} ≤ rating ≤ ampacity`,
      withNumbers:
        maxA === undefined
          ? `${withUnit(minA, "A")} ≤ rating`
          : `${withUnit(minA, "A")} ≤ rating ≤ ${withUnit(maxA, "A")}`,
      result:
        maxA === undefined
          ? "not judged, as the ampacity is not"
          : maxA < minA
            ? "none"
            : `${formatRounded(minA)} to ${withUnit(maxA, "A")}`,
      sources: [sourceInWords(protection.source)],
    },
    {
      title: "Protection to aim at",
      formula: circuit.continuous
        ? `rating = ${factor} × ${flowing(circuit)}, then the next standard rating up to the ampacity`
        : `rating = ${flowing(circuit)}, then the next standard rating up to the ampacity`,
      withNumbers: circuit.continuous ? `${factor} × ${withUnit(minA, "A")}` : withUnit(minA, "A"),
      result: `${withUnit(aimA, "A")}; ${best}`,
      sources: [
        circuit.continuous ? sourceInWords(margin.source) : "the load is not continuous",
        sourceOfRatings(circuit.protection?.family),
      ],
    },
  ];
}

function sourceOfRatings(family: Family | undefined): string {
  return family
    ? sourceInWords(familyData(family).ratingsSource)
    : `standard ratings of all families, ${unconfirmed}`;
}

/** A circuit outside a network is calculated with the load that its plan states. */
function flowing({ inNetwork }: Run): string {
  return inNetwork ? "current" : "load";
}

function comparison(value: number, limit: number, unit: Unit): string {
  const [one, other] = formatDistinct(value, limit);
  return `${one} ${unit} in the place, ${other} ${unit} in the column`;
}
