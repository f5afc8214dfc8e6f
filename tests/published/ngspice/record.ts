import { writeFileSync } from "node:fs";
import { askNgspice, comparedNetwork } from "./compared-network.ts";
import { randomNetwork } from "./random-network.ts";
import { ngspiceVersion } from "./run-ngspice.ts";

/** The kept part of ngspice's answers, for comparison on machines without it. */
export interface Recorded {
  readonly ngspice: string;
  readonly networks: readonly RecordedNetwork[];
  /** Seeds whose network has no operating point for the solver, and those without an answer from ngspice. */
  readonly unsolved: readonly number[];
  readonly unanswered: readonly number[];
}

export interface RecordedNetwork {
  readonly seed: number;
  readonly branches: number;
  readonly hintDigits: number;
  /** One voltage for each node that a source reaches, in the order of terminals, V, ten significant figures. */
  readonly voltages: readonly number[];
}

const wanted = 240;

/** Asks ngspice for the answers to the wanted number of networks, and writes them to the file. Run by run.mjs. */
export function record(file: string): void {
  const ngspice = ngspiceVersion();
  if (!ngspice) throw new Error("ngspice is not installed: there is nothing to record.");
  const networks: RecordedNetwork[] = [];
  const unsolved: number[] = [];
  const unanswered: number[] = [];
  for (let seed = 1; networks.length < wanted; seed++) {
    const compared = comparedNetwork(randomNetwork(seed));
    const answer = compared && askNgspice(compared);
    if (!compared) unsolved.push(seed);
    else if (!answer) unanswered.push(seed);
    else {
      const voltages = answer.voltages.map((voltageV) => Number(voltageV.toPrecision(10)));
      networks.push({ seed, branches: compared.branches.length, hintDigits: answer.hintDigits, voltages });
    }
  }
  const lines = networks.map((network) => JSON.stringify(network)).join(",\n");
  writeFileSync(
    file,
    `{"ngspice":"${ngspice}","unsolved":${JSON.stringify(unsolved)},"unanswered":${JSON.stringify(unanswered)},"networks":[\n${lines}\n]}\n`,
  );
  console.log(
    `${networks.length} networks answered by ngspice ${ngspice}; no operating point: ${unsolved.length}; no answer of ngspice: ${unanswered.length}.`,
  );
}
