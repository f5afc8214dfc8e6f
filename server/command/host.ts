import type { Sandbox } from "../evaluate/sandbox.ts";
import type { Layouts } from "../output/layouts.ts";
import type { Terminal } from "./terminal.ts";

/** The environment of the command line, which a test can replace. */
export interface Host {
  readonly cwd: string;
  out(text: string): void;
  err(text: string): void;
  readonly terminal: Terminal;
  /** Results of earlier runs; if left out, results are not kept. */
  readonly kept?: KeptResults;
  /** Runs the plans; if left out, each project folder gets a sandbox, which ends with the command. */
  readonly sandbox?: Sandbox;
  /** Lays out drawings; if left out, the command gets its own, which end with it. */
  readonly layouts?: Layouts;
}

export type ExitCode = 0 | 1 | 2;

/** The folder with results of earlier runs, and the parts of Loomwright that they depend on. */
export interface KeptResults {
  readonly folder: string;
  /** Everything in Loomwright and the machine that a result may depend on; undefined if that is unknown. */
  readonly tool: () => string | undefined;
}
