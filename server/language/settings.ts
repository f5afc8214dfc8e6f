import { defaultLimits, type Limits } from "../evaluate/sandbox/contract.ts";

/** A person's settings, in the section `loomwright` of their editor or as `initializationOptions`. */
export interface Settings {
  /** Whether drop and spare capacity are shown beside each size. */
  readonly inlayHints: boolean;
  /** Maximum run time of a plan before it is stopped, ms. */
  readonly timeLimitMs: number;
  /** Maximum memory of a plan while it runs, MiB. */
  readonly memoryLimitMiB: number;
}

const bytesPerMiB = 1024 * 1024;

export const defaultSettings: Settings = {
  inlayHints: true,
  timeLimitMs: defaultLimits.timeMs,
  memoryLimitMiB: defaultLimits.memoryBytes / bytesPerMiB,
};

/** The range of each limit, for any client; `extension/package.json` states the same to the editor. */
export const allowedLimits = {
  timeLimitMs: { least: 50, most: 60_000 },
  memoryLimitMiB: { least: 8, most: 1_024 },
} as const;

/**
 * Reads settings as any client may send them. A limit outside of its range becomes the nearest allowed one; a missing or
 * non-numeric value keeps its default.
 */
export function readSettings(given: unknown): Settings {
  const values: Record<string, unknown> = typeof given === "object" && given !== null ? { ...given } : {};
  return {
    inlayHints: typeof values.inlayHints === "boolean" ? values.inlayHints : defaultSettings.inlayHints,
    timeLimitMs: readLimit("timeLimitMs", values),
    memoryLimitMiB: readLimit("memoryLimitMiB", values),
  };
}

/** The limits that the sandbox enforces. */
export function limitsOf(settings: Settings): Partial<Limits> {
  return { timeMs: settings.timeLimitMs, memoryBytes: settings.memoryLimitMiB * bytesPerMiB };
}

/** Whole numbers only: the sandbox counts its memory in bytes, and its time in milliseconds. */
function readLimit(name: keyof typeof allowedLimits, values: Readonly<Record<string, unknown>>): number {
  const value = values[name];
  if (typeof value !== "number" || Number.isNaN(value)) return defaultSettings[name];
  const { least, most } = allowedLimits[name];
  return Math.round(Math.min(Math.max(value, least), most));
}
