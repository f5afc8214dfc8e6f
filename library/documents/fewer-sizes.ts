import { copperKg } from "../analysis/copper-area.ts";
import type { Judgement } from "../judge.ts";
import type { LengthUnit } from "../model/length-unit.ts";
import type { PlanRecord } from "../model/record.ts";
import type { Conductor } from "../model/run.ts";
import { sizeInWords } from "../rules/fixes/sized-fix.ts";
import { withKnownCurrent } from "../rules/rule.ts";
import { formatRounded } from "../rules/wording/format-number.ts";
import { lengthInUnit } from "../rules/wording/lengths.ts";
import { unconfirmed } from "../rules/wording/source-in-words.ts";
import { copperDensity } from "../standards/copper.ts";
import { addedFindings, foundWithOtherFigures } from "./fewer-sizes/added-findings.ts";
import { type Refusal, type Spared, sparedSizes } from "./fewer-sizes/search.ts";
import {
  copperOf,
  differentSizes,
  mostSizesThicker,
  type SizedRun,
  sizedRuns,
  sizeKey,
} from "./fewer-sizes/sized-runs.ts";
import { lengthToCut } from "./schedules/cells.ts";
import { feetAndInches } from "./schedules/lengths.ts";
import { inMetres } from "./schedules/wire-schedule.ts";
import { wiresOf } from "./schedules/wires.ts";
import type { Table } from "./table.ts";
import { numbers, quantity, tableOf, words } from "./table-of.ts";

/**
 * The fewest different conductor sizes that the plan could be built with: each conductor as thick as planned or up to two made
 * sizes thicker, in its own system and colour, no fuse or breaker changed, and no rule with a new finding. Among equally few
 * sizes, those with the least copper. Undefined if none can be spared, or if the plan could not be read or run as a whole:
 * nothing could be proved then.
 *
 * It changes records, not text: it suggests purchases, and is no fix. A size that several circuits share in the text, through a
 * constant or a function, counts here as one size for each circuit.
 *
 * `judge`: the engine, over the changed records. It runs some 160 times at most.
 */
export function fewerSizes(
  records: readonly PlanRecord[],
  judgement: Judgement,
  judge: (records: readonly PlanRecord[]) => Judgement,
): FewerSizes | undefined {
  const { model, problems } = judgement;
  if (model.networkUnread || model.withoutCircuits.length > 0 || problems.length > 0) return undefined;
  const runs = sizedRuns(judgement);
  const proofs = new Map<string, Judgement>();
  const spared = sparedSizes(runs, (choices) => {
    const after = judge(withSizes(records, runs, choices));
    const added = addedFindings(judgement.findings, after.findings);
    // Fewer results than before mean fewer checks.
    const asMuch = withKnownCurrent(after.circuits).length >= withKnownCurrent(judgement.circuits).length;
    if (added.length > 0 || !asMuch) return refusalFor(added, runs);
    proofs.set(choices.join(), after);
    return undefined;
  });
  const proof = proofs.get(spared.ways[0]?.join() ?? "");
  return suggestion(runs, spared, {
    lengthUnit: wiresOf(judgement)[0]?.lengthUnit ?? "m",
    hasDuplex: wiresOf(judgement).some(({ duplex }) => duplex !== undefined),
    held: runs.filter(({ heldByTerminal }) => heldByTerminal).length,
    unjudged: model.unjudged.length,
    otherFigures: proof ? foundWithOtherFigures(judgement.findings, proof.findings) : 0,
  });
}

/** A suggestion: the sizes to buy, and the runs that become thicker for it. */
export interface FewerSizes {
  /** The different sizes in use, AWG before metric, thinnest first; each as one wire, even if several are side by side. */
  readonly uses: readonly Conductor[];
  /** Those of them that remain. */
  readonly keeps: readonly Conductor[];
  /** In the order of the records; a circuit's two conductors are one change. */
  readonly changes: readonly SizeChange[];
  /** Extra mass of copper in the wire to cut, over that of the plan as it is. */
  readonly extraCopperKg: number;
  /** For each size in use, the extra length that is cut, m; negative for less. */
  readonly extraLengthBySize: readonly { readonly size: Conductor; readonly lengthM: number }[];
  /** The changed records went through the same engine as the plan, without a new finding. */
  readonly provedBy: "judged";
  /** The alternatives with more sizes: the least copper for each number of sizes between, the fewest first. */
  readonly withMoreSizes: readonly { readonly keeps: readonly Conductor[]; readonly extraCopperKg: number }[];
  /** Number of combinations of sizes that were judged. */
  readonly triedWays: number;
  /** The search met its bound: a suggestion with still fewer sizes, or with less copper, may exist. */
  readonly stoppedEarly: boolean;
  /** The unit of the plan's lengths. */
  readonly lengthUnit: LengthUnit;
  /** Sentences that belong to it. */
  readonly notes: readonly string[];
}

interface SizeChange {
  readonly record: number;
  readonly name: string;
  readonly from: Conductor;
  readonly to: Conductor;
  /** To cut, all its wires together, m. */
  readonly lengthM: number;
  readonly extraCopperKg: number;
}

/** The suggestion as a table: a row for each circuit or cable that becomes thicker. */
export function fewerSizesTable({
  changes,
  notes,
  lengthUnit,
}: Pick<FewerSizes, "changes" | "notes" | "lengthUnit">): Table {
  return tableOf<SizeChange>(
    { id: "fewer-sizes", title: "Fewer sizes to buy", notes },
    [
      words("name", "Circuit or cable", ({ name }) => name),
      words("planned", "Planned", ({ from }) => sizeInWords(from)),
      words("instead", "Instead", ({ to }) => sizeInWords(to)),
      inMetres(
        lengthUnit,
        numbers("lengthM", "Wire together, m", ({ lengthM }) => lengthToCut(lengthM)),
      ),
      ...(lengthUnit === "ft"
        ? [
            numbers<SizeChange>("lengthFtIn", "Wire together, ft and in", ({ lengthM }) =>
              feetAndInches(lengthM),
            ),
          ]
        : []),
      numbers("extraCopperKg", "More copper, kg", ({ extraCopperKg }) => quantity(extraCopperKg)),
    ],
    changes,
  );
}

function withSizes(
  records: readonly PlanRecord[],
  runs: readonly SizedRun[],
  choices: readonly number[],
): readonly PlanRecord[] {
  const sizes = new Map(runs.map(({ record, choices: sizes }, run) => [record, sizes[choices[run]!]!]));
  const planned = new Map(runs.map(({ record, choices: [own] }) => [record, own]));
  return records.map((one, record) => {
    const size = sizes.get(record);
    if (!size || size === planned.get(record)) return one;
    const written = size.system === "awg" ? { gauge: size.awg } : { mm2: size.mm2 };
    return { ...one, input: { ...(one.input as object), ...written } };
  });
}

function refusalFor(added: ReturnType<typeof addedFindings>, runs: readonly SizedRun[]): Refusal {
  const at = added.map((finding) =>
    "record" in finding.at
      ? runs.findIndex(({ record }) => "record" in finding.at && record === finding.at.record)
      : -1,
  );
  // A finding on a part may concern any run.
  return { runs: at.includes(-1) ? new Set() : new Set(at) };
}

function suggestion(
  runs: readonly SizedRun[],
  { ways, triedWays, stoppedEarly }: Spared,
  beside: Beside,
): FewerSizes | undefined {
  const [fewest, ...others] = ways.map((choices) => wayOf(runs, choices));
  if (!fewest) return undefined;
  const withMoreSizes: Pick<FewerSizes, "keeps" | "extraCopperKg">[] = [];
  // More sizes are only worth it if they save copper.
  for (const { keeps, extraCopperKg } of others)
    if (extraCopperKg < (withMoreSizes.at(-1) ?? fewest).extraCopperKg)
      withMoreSizes.push({ keeps, extraCopperKg });
  const { changes } = fewest;
  const uses = differentSizes(runs.map(({ choices: [own] }) => own));
  const extraLengthBySize = uses.map((size) => ({ size, lengthM: extraLengthOf(size, changes) }));
  const told = { ...fewest, uses, extraLengthBySize, stoppedEarly };
  return {
    ...told,
    withMoreSizes,
    lengthUnit: beside.lengthUnit,
    provedBy: "judged",
    triedWays,
    notes: notesOn({ ...told, withMoreSizes, ...beside }),
  };
}

function wayOf(
  runs: readonly SizedRun[],
  choices: readonly number[],
): Pick<FewerSizes, "keeps" | "changes" | "extraCopperKg"> {
  const changes = runs.flatMap((run, index): SizeChange[] => {
    const choice = choices[index]!;
    if (choice === 0) return [];
    const { record, name, wireM, choices: sizes } = run;
    const extraCopperKg = copperKg(copperOf(run, choice) - copperOf(run, 0));
    return [{ record, name, from: sizes[0], to: sizes[choice]!, lengthM: wireM, extraCopperKg }];
  });
  return {
    keeps: differentSizes(runs.map((run, index) => run.choices[choices[index]!]!)),
    changes,
    extraCopperKg: changes.reduce((sum, change) => sum + change.extraCopperKg, 0),
  };
}

function extraLengthOf(size: Conductor, changes: readonly SizeChange[]): number {
  return changes.reduce((sum, { from, to, lengthM }) => {
    const key = sizeKey(size);
    return sum + (sizeKey(to) === key ? lengthM : 0) - (sizeKey(from) === key ? lengthM : 0);
  }, 0);
}

type Told = Beside &
  Pick<
    FewerSizes,
    "uses" | "keeps" | "extraCopperKg" | "extraLengthBySize" | "withMoreSizes" | "stoppedEarly"
  >;

/** Numbers that a reader must know beside the suggestion itself. */
interface Beside {
  readonly lengthUnit: LengthUnit;
  /** Some circuits are of two-conductor cable. */
  readonly hasDuplex: boolean;
  /** Runs that keep their size because of their terminals. */
  readonly held: number;
  readonly unjudged: number;
  /** Findings of the plan that remain, with other figures. */
  readonly otherFigures: number;
}

function notesOn(told: Told): readonly string[] {
  const { uses, keeps, extraCopperKg, extraLengthBySize, withMoreSizes, stoppedEarly } = told;
  const { held, hasDuplex, unjudged, otherFigures, lengthUnit } = told;
  const steps = withMoreSizes.map(
    (way) =>
      `${way.keeps.length} sizes (${listed(way.keeps.map(sizeInWords))}) ${formatRounded(way.extraCopperKg)} kg`,
  );
  const density = `${copperDensity.kgPerDm3} kg/dm³, ${unconfirmed}`;
  const more = extraLengthBySize
    .filter(({ lengthM }) => lengthM > 0)
    .map(({ size, lengthM }) => `${lengthInUnit(lengthM, lengthUnit)} of ${sizeInWords(size)}`);
  return [
    `The fewest sizes are ${keeps.length} instead of ${uses.length}: ${listed(keeps.map(sizeInWords))}. That takes ${formatRounded(extraCopperKg)} kg more copper (${density}): ${listed(more)} in place of thinner wire.`,
    ...(steps.length > 0
      ? [`With more sizes it takes less copper: ${listed(steps)} more than planned.`]
      : []),
    "The plan with these sizes was checked by the same rules as the plan itself, without a new finding. No conductor becomes thinner, and no fuse or breaker changes.",
    `No conductor becomes more than ${mostSizesThicker} standard sizes thicker (common practice, no source). Whether a thicker one fits its terminals, holes and ducts was not checked: look before you buy.`,
    ...(otherFigures > 0
      ? [
          `${otherFigures === 1 ? "One finding that the plan has already, or that is accepted in it, has" : `${otherFigures} findings that the plan has already, or that are accepted in it, have`} other figures with these sizes: check them again.`,
        ]
      : []),
    ...(held > 0
      ? [
          `${held === 1 ? "One circuit or cable keeps its" : `${held} circuits and cables keep their`} size: the plan does not state the thickest conductor for the screw clamps and tabs.`,
        ]
      : []),
    ...(hasDuplex ? ["Two-conductor cables keep their size, and are not counted among the sizes."] : []),
    ...(unjudged > 0
      ? [
          `${unjudged === 1 ? "One circuit" : `${unjudged} circuits`} could not be judged, and ${unjudged === 1 ? "is" : "are"} left out.`,
        ]
      : []),
    ...(stoppedEarly
      ? ["Not every combination of sizes was tried: fewer sizes, or less copper, may be possible."]
      : []),
    "This list does not change the plan. If several circuits take their size from one value in the plan, that value may have to be split to follow it.",
  ];
}

/** "a, b and c" */
function listed(all: readonly string[]): string {
  return all.length < 2 ? all.join() : `${all.slice(0, -1).join(", ")} and ${all.at(-1)}`;
}
