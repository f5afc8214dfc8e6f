import type { ExitCode, Host } from "./host.ts";

/**
 * Runs a command that a person may stop with Ctrl+C. The signal informs the command, which ends in order and leaves no file half
 * written. A second Ctrl+C ends the process at once, as usual.
 */
export async function interruptible(
  outside: Host,
  run: (signal: AbortSignal) => Promise<ExitCode>,
): Promise<ExitCode> {
  const controller = new AbortController();
  const interrupt = () => controller.abort(new Interrupted());
  for (const signal of signals) process.once(signal, interrupt);
  try {
    return await run(controller.signal);
  } catch (error) {
    if (!(error instanceof Interrupted)) throw error;
    outside.err("\nloomwright: interrupted; unfinished files were not written.\n");
    return 2;
  } finally {
    for (const signal of signals) process.off(signal, interrupt);
  }
}

const signals = ["SIGINT", "SIGTERM"] as const;

class Interrupted extends Error {}
