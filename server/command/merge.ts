import { readFile } from "node:fs/promises";
import { resolve } from "node:path";
import { name, version } from "../../library/package.json";
import type { Command } from "./command.ts";
import type { ExitCode, Host } from "./host.ts";
import { joinedFiles } from "./passed-files.ts";
import { type JsonReport, jsonReportSchema, schemaVersion } from "./report-schema.ts";
import type { Reported } from "./reported-plan.ts";
import { exitCode, resultFormats, resultsAs } from "./results.ts";
import { digestOf, joinShares, shareLength } from "./shard.ts";
import { printable } from "./terminal.ts";
import { oneOfWords, UsageError, wholeNumber } from "./usage.ts";

/** `loomwright merge`: combines the JSON of the shards of one check into the output of one check of everything. */
export const merge: Command = {
  name: "merge",
  usage: [{ words: "<files>", does: "join the JSON of the shards of one check" }],
  formats: resultFormats,
  takes: ["format", "max-warnings"],
  run: (names, given, outside) =>
    mergeFiles(
      {
        names,
        format: oneOfWords("format", given.format, resultFormats),
        maxWarnings: wholeNumber("max-warnings", given["max-warnings"] ?? "0"),
      },
      outside,
    ),
};

interface MergeOptions {
  readonly names: readonly string[];
  readonly format: (typeof resultFormats)[number];
  readonly maxWarnings: number;
}

async function mergeFiles({ names, format, maxWarnings }: MergeOptions, outside: Host): Promise<ExitCode> {
  if (names.length === 0) throw new UsageError("give the files to merge: the JSON of every shard.");
  try {
    const read = await Promise.all(names.map((file) => readReport(file, outside.cwd)));
    const checked = { plans: joined(read), passedBy: joinedFiles(read.map(({ report }) => report.passedBy)) };
    outside.out(await resultsAs(format, checked, outside.terminal));
    return exitCode(checked, maxWarnings);
  } catch (error) {
    if (!(error instanceof CannotMerge)) throw error;
    outside.err(`loomwright: ${printable(error.message)}\n`);
    return 2;
  }
}

/** Reported to the person in a sentence, without any output. */
class CannotMerge extends Error {}

interface ReadReport {
  readonly file: string;
  readonly report: JsonReport;
}

async function readReport(file: string, cwd: string): Promise<ReadReport> {
  const data = await readJson(file, cwd);
  const { tool, schemaVersion: written } = (data ?? {}) as Partial<JsonReport>;
  if (tool?.name !== name)
    throw new CannotMerge(`${file} is not output of \`loomwright check --format json\`.`);
  if (written !== schemaVersion) {
    const version = written === undefined ? "no schemaVersion" : `schemaVersion ${String(written)}`;
    throw new CannotMerge(
      `${file} has ${version}, and only reports of schemaVersion ${schemaVersion} are merged: check and merge with the same version of Loomwright.`,
    );
  }
  if (tool.version !== version) {
    throw new CannotMerge(
      `${file} was written by version ${tool.version}, and this is version ${version}: check and merge with the same one.`,
    );
  }
  const { data: report, error } = jsonReportSchema.safeParse(data);
  if (report) return { file, report };
  const [issue] = error.issues;
  throw new CannotMerge(`${file} is damaged: ${issue?.path.join(".")}: ${issue?.message}.`);
}

async function readJson(file: string, cwd: string): Promise<unknown> {
  let text: string;
  try {
    text = await readFile(resolve(cwd, file), "utf8");
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    throw new CannotMerge(
      code === "ENOENT" ? `there is no file ${file}.` : `${file} could not be read: ${code}.`,
    );
  }
  try {
    return JSON.parse(text);
  } catch {
    throw new CannotMerge(`${file} is not JSON, or was cut off.`);
  }
}

/** All plans in the order of a single whole check. */
function joined(read: readonly ReadReport[]): readonly Reported[] {
  const [first, ...others] = read;
  if (!first) return [];
  const { shard } = first.report;
  if (!shard) {
    if (others.length === 0) return plansOf(first);
    throw new CannotMerge(`${first.file} is the result of a whole check, so no shard can be joined to it.`);
  }
  const byIndex = new Map<number, ReadReport>();
  for (const one of read) {
    const its = one.report.shard;
    if (!its) throw new CannotMerge(`${one.file} is the result of a whole check, not of a shard.`);
    if (its.of !== shard.of || its.plans !== shard.plans || its.digest !== shard.digest) {
      throw new CannotMerge(
        `${one.file} and ${first.file} are not shards of the same check: ${difference(its, shard)}.`,
      );
    }
    const same = byIndex.get(its.index);
    if (same) throw new CannotMerge(`${same.file} and ${one.file} are both shard ${its.index} of ${its.of}.`);
    if (its.index > its.of || one.report.plans.length !== shareLength(its)) {
      throw new CannotMerge(`${one.file} does not hold the plans of shard ${its.index} of ${its.of}.`);
    }
    byIndex.set(its.index, one);
  }
  const all = Array.from({ length: shard.of }, (_, place) => place + 1);
  const missing = all.filter((index) => !byIndex.has(index));
  if (missing.length > 0) {
    const more = missing.length > 5 ? " and others" : "";
    throw new CannotMerge(
      `of ${shard.of} shards, ${missing.slice(0, 5).join(", ")}${more} ${missing.length === 1 ? "is" : "are"} missing.`,
    );
  }
  const plans = joinShares(all.map((index) => plansOf(byIndex.get(index)!)));
  if (digestOf(plans.map(({ file }) => file)) !== shard.digest)
    throw new CannotMerge("the shards do not hold the plans that they list.");
  return plans;
}

function difference(one: Shared, other: Shared): string {
  if (one.of !== other.of) return `one is of ${one.of}, the other of ${other.of}`;
  if (one.plans !== other.plans) return `one knew of ${one.plans} plans, the other of ${other.plans}`;
  return "they knew of different plans, or ran in different folders";
}

interface Shared {
  readonly of: number;
  readonly plans: number;
}

/** The lines of the plans are not available here, so findings are shown without them. */
function plansOf({ report }: ReadReport): readonly Reported[] {
  return report.plans.map((plan) => ({ ...plan, lineText: () => undefined }));
}
