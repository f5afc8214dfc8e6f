import * as z from "zod";
import { passedByReasons } from "../evaluate/files/passed-by.ts";
import { shardSchema } from "./shard.ts";

/* The shape of the report of `check`. It is defined only here: all its types are inferred from these schemas. */

/** Lines and columns from 1, columns in UTF-16 units; the end is the first position after the range. */
const lines = z.strictObject({
  file: z.string(),
  line: z.int().min(1),
  column: z.int().min(1),
  endLine: z.int().min(1),
  endColumn: z.int().min(1),
});

const size = z.strictObject({
  awg: z.union([z.number(), z.string()]).optional(),
  mm2: z.number().optional(),
  parallel: z.int().min(2).optional(),
});

const at = { file: z.string(), line: z.int().min(1) };

/** A scenario is identified by its index in the network's list. */
const scenario = z.int().min(0);
/** The figures behind a result that the plan does not state. */
const estimate = z
  .strictObject({
    lowestV: z.number().optional(),
    restV: z.number().optional(),
    belowList: z.literal(true).optional(),
    internalResistance: z.literal(true).optional(),
    /** All the current of several ways, because a length by which they share it is not known. */
    undivided: z.literal(true).optional(),
  })
  .optional();
/** A greatest current: in a scenario, or of the named part alone, whether or not a scenario has it on. */
const worst = z
  .union([
    z.strictObject({ currentA: z.number(), scenario, estimate }),
    z.strictObject({ currentA: z.number(), alone: z.string(), estimate }),
  ])
  .nullable();
const terminal = z.strictObject({ part: z.string(), terminal: z.string() });

/** Of a fuse or breaker: its figures, and the dead-short currents through it. */
const device = {
  ratingA: z.number(),
  /** null if the plan does not state it. */
  interruptingA: z.number().nullable(),
  greatestA: z.number(),
  /** null if it protects nothing, or if a length on the way is not known. */
  leastA: z.number().nullable(),
  estimated: z.boolean(),
};

const hardest = {
  name: z.string(),
  role: z.enum(["cable", "positive", "return"]),
  currentA: z.number(),
  ampacityA: z.number(),
};

const solvedNetwork = z.strictObject({
  judged: z.literal(true),
  /** Circuits that the network is judged without, because a value of them is invalid: shared conductors carry more with them. */
  withoutCircuits: z.array(z.string()),
  /** How many parts and cables the plan contains. */
  contents: z.strictObject({ parts: z.int().min(0), cables: z.int().min(0) }),
  summary: z.strictObject({
    scenarios: z.int().min(0),
    unsolved: z.array(z.strictObject({ scenario: z.string(), why: z.enum(["collapse", "not-converged"]) })),
    /** The conductor nearest to its ampacity, or furthest above it: in a scenario, or with the named device alone. */
    hardest: z
      .union([
        z.strictObject({ ...hardest, scenario: z.string() }),
        z.strictObject({ ...hardest, alone: z.string() }),
      ])
      .nullable(),
    /** The device that gets the smallest share of its nominal voltage. */
    lowest: z.strictObject({ name: z.string(), voltageV: z.number(), scenario: z.string() }).nullable(),
  }),
  scenarios: z.array(
    z.discriminatedUnion("state", [
      z.strictObject({
        name: z.string(),
        file: z.string().optional(),
        line: z.int().min(1).optional(),
        state: z.literal("solved"),
        /** The remaining sum of currents at any terminal, and the largest current, A. */
        residualA: z.number(),
        largestA: z.number(),
      }),
      z.strictObject({
        name: z.string(),
        file: z.string().optional(),
        line: z.int().min(1).optional(),
        state: z.literal("unsolved"),
        why: z.enum(["collapse", "not-converged"]),
        reachedShare: z.number(),
        /** Names of parts. */
        culprits: z.array(z.string()),
      }),
    ]),
  ),
  parts: z.array(
    z.strictObject({
      kind: z.string(),
      name: z.string(),
      ...at,
      source: z.string().optional(),
      feeds: worst,
      draws: worst,
      surge: worst,
      lowest: z.strictObject({ voltageV: z.number(), scenario }).nullable(),
      /**
       * The names of the runs whose length is not known, and without which no voltage of it is known, or not its share of a current. The
       * voltages of a device are then the greatest.
       */
      withoutLength: z.array(z.string()),
      results: z.array(
        z.strictObject({
          scenario,
          /** Out of its positive terminal into the network, or through it. */
          currentA: z.number(),
          inputA: z.number(),
          /** null if no source reaches it, and for parts that have no voltage of their own. */
          voltageV: z.number().nullable(),
        }),
      ),
      /** Present only for a fuse or breaker that is a part of its own. `greatestA` is null if no source reaches it. */
      device: z.strictObject({ ...device, greatestA: device.greatestA.nullable() }).optional(),
    }),
  ),
  conductors: z.array(
    z.strictObject({
      name: z.string(),
      role: z.enum(["cable", "positive", "return"]),
      ...at,
      from: terminal,
      to: terminal,
      /** null: not known. Drop and least fault are then not judged, neither here nor behind it. */
      lengthM: z.number().nullable(),
      conductor: size,
      /** null if it was not judged. */
      ampacityA: z.number().nullable(),
      /** Over all scenarios except motor starts, and with any device alone; null if none could be solved. */
      worst,
      /** For its ampacity: the same, with the constant powers of loads at the lowest voltage at which they work. */
      design: worst,
      /** The names of the runs of unknown length by which its current divides. Its currents and losses in `results` are then not known. */
      withoutLength: z.array(z.string()),
      results: z.array(
        z.strictObject({
          scenario,
          /** Positive from `from` to `to`. */
          currentA: z.number(),
          conductorC: z.number(),
          /** null if its length is not known. */
          dropV: z.number().nullable(),
        }),
      ),
      /** At its beginning; null if no source reaches it. */
      deadShort: z.strictObject({ greatestA: z.number().nullable(), estimated: z.boolean() }),
      devices: z.array(
        z.strictObject({
          end: z.enum(["near", "far"]),
          ...device,
        }),
      ),
    }),
  ),
  waysFromBank: z.array(
    z.strictObject({
      part: z.string(),
      battery: z.string(),
      scenario,
      dropV: z.number(),
      dropPercent: z.number(),
      dropLimitPercent: z.number(),
      arrivingV: z.number(),
      /** "not judged": a length on the path is not known. The drop is then the least, and the arriving voltage the greatest. */
      verdict: z.enum(["met", "exceeded", "not judged"]),
      /** The names of the runs on the path whose length is not known. */
      withoutLength: z.array(z.string()),
      estimate,
    }),
  ),
});

/** The reasons why a plan was not judged to its end. */
export const notJudgedReasons = [
  "half-typed",
  "cannot-run",
  "error-thrown",
  "time-limit",
  "memory-limit",
  "records-limit",
  "checker-failed",
] as const;

/** One plan of the report. */
const stretch = z.strictObject({
  lengthMm: z.number(),
  /** The names of the channel, or of the surface in the open; null beyond a free end. */
  along: z.string().nullable(),
  isChannel: z.boolean(),
});

/** x from the left and y from the top edge of the surface. */
const placement = z.strictObject({
  surfaces: z.array(
    z.strictObject({
      name: z.string(),
      orientation: z.enum(["vertical", "floor", "ceiling"]),
      widthMm: z.number(),
      heightMm: z.number(),
      parts: z.array(
        z.strictObject({
          name: z.string(),
          leftMm: z.number(),
          topMm: z.number(),
          /** As it is turned; null if its size is not stated. */
          widthMm: z.number().nullable(),
          heightMm: z.number().nullable(),
          position: z.string(),
        }),
      ),
    }),
  ),
  channels: z.array(
    z.strictObject({
      name: z.string(),
      way: z.enum(["trunking", "conduit", "bundle", "hole"]),
      lengthMm: z.number(),
      /** The names of the conductors in it. */
      conductors: z.array(z.string()),
    }),
  ),
  ways: z.array(
    z.strictObject({
      name: z.string(),
      role: z.enum(["cable", "positive", "return"]),
      state: z.enum(["found", "no way", "not placed"]),
      /** Without slack; null without a way. */
      lengthMm: z.number().nullable(),
      stretches: z.array(stretch),
    }),
  ),
  /** The names of the parts without a place. */
  notPlaced: z.array(z.string()),
});

export const planSchema = z.strictObject({
  file: z.string(),
  /** false: the plan has no results, because it could not be read or run; its findings state why. */
  evaluated: z.boolean(),
  /** null: it was judged to its end. Otherwise its figures and findings, if any, cover the part before it stopped. */
  notJudged: z
    .strictObject({
      reason: z.enum(notJudgedReasons),
      /** A sentence, the same as that of the finding that gives the place. */
      message: z.string(),
    })
    .nullable(),
  /** Stand-alone circuits, and those of the network. */
  circuits: z.array(
    z.strictObject({
      name: z.string(),
      ...at,
      loadA: z.number(),
      /** For ampacity and ratings: with constant powers at the lowest voltage at which they work. */
      designA: z.number(),
      systemV: z.number(),
      /** Both conductors are in one cable of this kind; null for single wires. */
      duplex: z.enum(["flat duplex", "round duplex"]).nullable(),
      /** null: not known. */
      lengthOneWayM: z.number().nullable(),
      conductor: size,
      /** null if no table covers the case; a finding states this. */
      ampacityA: z.number().nullable(),
      /** null if the length is not known. */
      dropV: z.number().nullable(),
      dropPercent: z.number().nullable(),
      dropLimitPercent: z.number(),
      conductorC: z.number(),
      protection: z
        .strictObject({ ratingA: z.number(), minA: z.number(), maxA: z.number().nullable() })
        .nullable(),
    }),
  ),
  /** The names of the circuits of the plan that are not among them, as their currents are not known. */
  circuitsNotJudged: z.array(z.string()),
  /** The drop nearest to its own limit, or furthest over it; null if there is none. */
  worstDrop: z
    .strictObject({
      name: z.string(),
      fromBank: z.boolean(),
      dropPercent: z.number(),
      dropLimitPercent: z.number(),
      /** A conductor carries more than it may, or has no known length: the real drop is greater. */
      atLeast: z.boolean(),
    })
    .nullable(),
  /** Devices whose drop is not judged, because a length is not known. */
  dropsNotJudged: z.int().min(0),
  /** Where things are, mm; null if the plan has no surface, channel or compartment. */
  placement: placement.nullable(),
  /** null: the plan has no network. Not judged: a value of it was refused, and a finding states which. */
  network: z
    .discriminatedUnion("judged", [solvedNetwork, z.strictObject({ judged: z.literal(false) })])
    .nullable(),
  findings: z.array(
    z.strictObject({
      rule: z.string(),
      severity: z.enum(["error", "warning", "info", "hint"]),
      subject: z.string(),
      /** The property it refers to, "protect.ratingA"; absent if it is about the whole call, or about the plan. */
      property: z.string().optional(),
      message: z.string(),
      ...lines.shape,
      accepted: z.string().optional(),
      /**
       * The finding that causes this one; both count. `folded`: it is shown under its cause; not so for ampacity, fuses and short
       * circuits.
       */
      followsFrom: z.strictObject({ rule: z.string(), subject: z.string(), folded: z.boolean() }).optional(),
      related: z.array(z.strictObject({ ...lines.shape, text: z.string() })),
      /**
       * Present only if no fix was tried although there may be one: in a plan with very many findings, only the first ones get
       * theirs.
       */
      fixesTried: z.literal(false).optional(),
      /** The least of each change that would mend it, or that no single change does; only rules about energy give it. */
      advice: z.string().optional(),
      fixes: z.array(
        z.strictObject({
          title: z.string(),
          /** `loomwright fix` never applies a suggestion. */
          kind: z.enum(["repair", "suggestion"]),
          edits: z.array(z.strictObject({ ...lines.shape, newText: z.string() })),
        }),
      ),
    }),
  ),
});

/**
 * The version of the report's shape. It increases by one with every property that is removed, renamed or changes its meaning, and
 * with every value that an enumeration loses. Properties and values may be added under the same version: readers ignore unknown
 * ones.
 */
export const schemaVersion = 1;

/**
 * The shape of `loomwright check --format json`. Numbers are unrounded; files are relative to where the command ran, with forward
 * slashes.
 */
export const jsonReportSchema = z.strictObject({
  schemaVersion: z.literal(schemaVersion),
  tool: z.strictObject({ name: z.string(), version: z.string() }),
  /** Present only if a share of the plans was asked for; `loomwright merge` removes it. */
  shard: shardSchema.optional(),
  plans: z.array(planSchema),
  /** Files that look like plans, or belong to one, and are in none of the plans. */
  passedBy: z.array(
    z.strictObject({
      file: z.string(),
      reason: z.enum(passedByReasons),
      /** A clause whose subject is the file. */
      why: z.string(),
      /** It may contain a hazard: the check is then incomplete and exits with 2. */
      mayHideHazard: z.boolean(),
    }),
  ),
  summary: z.strictObject({
    plans: z.int().min(0),
    /** Plans that were not judged to their end, and passed-by files that may hide a hazard. */
    notJudged: z.int().min(0),
    passedBy: z.int().min(0),
    errors: z.int(),
    warnings: z.int(),
    infos: z.int(),
    hints: z.int(),
    accepted: z.int(),
  }),
});

export type JsonReport = z.infer<typeof jsonReportSchema>;
/** One plan as the command line reports it: plain data with files, lines and columns, the same for text and JSON. */
export type ReportedPlan = z.infer<typeof planSchema>;
export type ReportedCircuit = ReportedPlan["circuits"][number];
export type ReportedFinding = ReportedPlan["findings"][number];
export type NotJudged = NonNullable<ReportedPlan["notJudged"]>;
/** The network of one plan: unrounded, with names instead of indices where people look. */
export type ReportedNetwork = z.infer<typeof solvedNetwork>;
export type ReportedPart = ReportedNetwork["parts"][number];
export type ReportedTerminal = z.infer<typeof terminal>;
export type ReportedDevice = ReportedNetwork["conductors"][number]["devices"][number];
export type ReportedSize = z.infer<typeof size>;
export type Lines = z.infer<typeof lines>;
