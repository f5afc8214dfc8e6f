import { mkdir, readFile, writeFile } from "node:fs/promises";
import { join, relative, resolve, sep } from "node:path";
import { nearestName } from "../../library/model/nearest-name.ts";
import { whyNotWritten } from "../output/atomic-write.ts";
import type { Command } from "./command.ts";
import type { ExitCode, Host } from "./host.ts";
import { printable } from "./terminal.ts";
import { UsageError } from "./usage.ts";

/** `loomwright new`: a plan made from a template, in a folder that has none yet. */
export const newPlan: Command = {
  name: "new",
  usage: [
    { words: "<template> [folder]", does: "begin a plan from a template; a plan that is there stays" },
    { words: "", does: "the templates, a line each" },
  ],
  takes: [],
  run: (names, _given, outside) => makePlan(names, outside),
};

async function makePlan([name, folder = ".", ...rest]: readonly string[], outside: Host): Promise<ExitCode> {
  if (rest.length > 0) throw new UsageError("new takes one template and one folder.");
  const templates = JSON.parse(await templateFile("templates.json")) as readonly Template[];
  if (name === undefined) {
    const width = Math.max(...templates.map((template) => template.name.length));
    for (const { name, title, detail } of templates)
      outside.out(`${name.padEnd(width)}  ${title}: ${detail}\n`);
    return 0;
  }
  const names = templates.map((template) => template.name);
  if (!names.includes(name)) {
    const meant = nearestName(name, names);
    const hint = meant === undefined ? `; there are ${names.join(", ")}.` : `. Did you mean ${meant}?`;
    throw new UsageError(`there is no template '${name}'${hint}`);
  }
  const target = resolve(outside.cwd, folder);
  const shown = (file: string) => printable(relative(outside.cwd, join(target, file)).split(sep).join("/"));
  try {
    await mkdir(target, { recursive: true });
    await writeNew(join(target, "plan.ts"), await templateFile(`${name}.txt`));
  } catch (error) {
    const why = isThere(error) ? "is there already" : whyNotWritten(error);
    outside.err(`loomwright: ${shown("plan.ts")} ${why}; no file was written.\n`);
    return 2;
  }
  outside.out(`${shown("plan.ts")}: written. loomwright check ${shown("plan.ts")} checks it.\n`);
  try {
    await writeNew(join(target, "tsconfig.json"), await templateFile("folder/tsconfig.json"));
    outside.out(`${shown("tsconfig.json")}: written, for the compiler in your editor.\n`);
  } catch (error) {
    if (!isThere(error)) {
      outside.err(`loomwright: ${shown("tsconfig.json")} ${whyNotWritten(error)}.\n`);
      return 2;
    }
    outside.out(`${shown("tsconfig.json")}: left as it is.\n`);
  }
  return 0;
}

interface Template {
  readonly name: string;
  readonly title: string;
  readonly detail: string;
}

/** From beside the bundle: those of the installed version. */
function templateFile(path: string): Promise<string> {
  return readFile(new URL(`../dist/templates/${path}`, import.meta.url), "utf8");
}

function writeNew(path: string, text: string): Promise<void> {
  return writeFile(path, text, { flag: "wx" });
}

function isThere(error: unknown): boolean {
  return (error as NodeJS.ErrnoException).code === "EEXIST";
}
