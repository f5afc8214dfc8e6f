/**
 * The tests that go through many cases of one kind take a share of them in each run: of `drafts`, for example, each eighth. The
 * commit decides which share, so that every case is met over time and the same commit always gives the same result.
 * `npm run test:every-case` takes all.
 */
export const shares = {
  "first drafts, repaired": 8,
  "first drafts, with offers": 8,
  "prefixes of plans": 16,
  "seeds of random edits": 6,
  "growth in words up to 400": 8,
  "growth up to 3,000": 3,
  "growth of the way back to the text": 4,
  "views and scenarios without overlaps": 6,
  "generated drawings without overlaps": 3,
  "moments at which a thread is held up": 4,
  "ways to close plans": 3,
  "texts that cannot be parsed": 3,
  "formats of kept results": 4,
  "examples with kept results": 3,
  "revisions to compare": 3,
  "traps in a repository": 3,
  "workflows of shared builds": 3,
  "papers of a template": 3,
  "editors of the short soak": 2,
  "reports in a browser": 5,
  "appearances of a page": 3,
  "views of the diagram's page": 3,
  "views back after a reload": 3,
  "builds with an unfinished circuit": 12,
  "plans without one length": 12,
  "energy worked out twice": 2,
  "changes of a property": 12,
  "true values of a property": 4,
  "odd characters": 4,
  "random reports on paper": 3,
  "repairs of builds with one mistake": 3,
  "pictures of the README": 4,
  "folders with limits of their own": 3,
} as const;

/** `LOOMWRIGHT_CASES`: which share, a whole number; or `all`. Set by `tests/vitest.config.ts`, if nothing else set it. */
const asked = process.env.LOOMWRIGHT_CASES ?? "all";

/** True in a run of every case. */
export const everyCase = asked === "all";

/** This run's share of some cases: at least one, unless there is none. */
export function sampled<Case>(of: keyof typeof shares, cases: readonly Case[]): readonly Case[] {
  if (everyCase) return cases;
  const share = Math.min(shares[of], cases.length);
  return cases.filter((_, index) => index % share === Number(asked) % share);
}

/**
 * This run's number of cases of a check of any plan, network or text: a quarter, the first of the same sequence; all of them in a run
 * of every case.
 */
export function sampledRuns(runs: number): number {
  return everyCase ? runs : Math.ceil(runs / 4);
}
