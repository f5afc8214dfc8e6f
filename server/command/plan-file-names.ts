/**
 * The names of files that are made of plans in one folder: no two plans share one. A plan in another folder than the one where the
 * command runs has its folders in the name, "boat-plan", whichever plans are named beside it.
 */
export class PlanFileNames {
  /** By name, in lower case: some file systems take both for one. */
  private readonly plans = new Map<string, string>();

  /** @param file of the plan, relative to where the command runs, with forward slashes. */
  nameFor(file: string, ending: string): string {
    const path = file.replace(/^(?:(?:\.{1,2}\/)+|[A-Za-z]:\/|\/+)/, "").replaceAll("/", "-");
    const stem = path.replace(/\.[cm]?[jt]sx?$/i, "");
    for (const one of candidates(stem, path)) {
      const name = `${one}${ending}`;
      const key = name.toLowerCase();
      if ((this.plans.get(key) ?? file) !== file) continue;
      this.plans.set(key, file);
      return name;
    }
    throw new Error("There is no end to the candidates.");
  }
}

/** "plan"; then "plan.mts", of a plan beside "plan.ts"; then "plan-2". */
function* candidates(stem: string, path: string): Generator<string> {
  yield stem;
  yield path;
  for (let number = 2; ; number++) yield `${stem}-${number}`;
}
