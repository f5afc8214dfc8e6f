import { defaultLimits, type Limits } from "../evaluate/sandbox.ts";

/** What a person can set, in the section `loomwright` of their editor or as `initializationOptions`. */
export interface Settings {
  /** Whether drop and spare capacity are shown beside each size. */
  readonly inlayHints: boolean;
  /** How long a plan may run before it is stopped, ms. */
  readonly timeLimitMs: number;
  /** How much memory a plan may take while it runs, MiB. */
  readonly memoryLimitMiB: number;
}

const bytesPerMiB = 1024 * 1024;

export const defaultSettings: Settings = {
  inlayHints: true,
  timeLimitMs: defaultLimits.timeMs,
  memoryLimitMiB: defaultLimits.memoryBytes / bytesPerMiB,
};

/** Reads settings as any client may send them; whatever is missing or makes no sense keeps its default. */
export function readSettings(given: unknown): Settings {
  const values: Record<string, unknown> = typeof given === "object" && given !== null ? { ...given } : {};
  return {
    inlayHints: typeof values.inlayHints === "boolean" ? values.inlayHints : defaultSettings.inlayHints,
    timeLimitMs: within(values.timeLimitMs, 50, 60_000) ?? defaultSettings.timeLimitMs,
    memoryLimitMiB: within(values.memoryLimitMiB, 8, 1_024) ?? defaultSettings.memoryLimitMiB,
  };
}

/** The settings that the sandbox obeys. */
export function limitsOf(settings: Settings): Partial<Limits> {
  return { timeMs: settings.timeLimitMs, memoryBytes: settings.memoryLimitMiB * bytesPerMiB };
}

function within(value: unknown, least: number, most: number): number | undefined {
  return typeof value === "number" && value >= least && value <= most ? value : undefined;
}
