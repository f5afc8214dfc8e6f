import type { JudgedPlan } from "../../rules/rule.ts";

/** A plan of a folder, as far as pairing needs it. */
export interface PairedPlan {
  /** Of its root, below the folder, with forward slashes. */
  readonly path: string;
  /** Its name in `build`; empty if it has none. */
  readonly buildName: string;
  /** Names of all its circuits and parts. */
  readonly names: ReadonlySet<string>;
}

/** `judged` is undefined if the plan could not be evaluated: only its path then identifies it. */
export function pairedPlan(path: string, judged: JudgedPlan | undefined): PairedPlan {
  if (!judged) return { path, buildName: "", names: new Set() };
  const { model, network } = judged;
  const named = [...model.circuits, ...(network?.network.parts ?? [])];
  return { path, buildName: model.build.name ?? "", names: new Set(named.map(({ name }) => name)) };
}

export interface PlanPairs<Plan> {
  /** In the order of the plans after. */
  readonly pairs: readonly { readonly before: Plan; readonly after: Plan }[];
  readonly removed: readonly Plan[];
  readonly added: readonly Plan[];
}

/**
 * Pairs the plans of two states of a folder: by the path of the root; if that was moved, by the build's name, if only one has it;
 * else with the plan that shares most names, and at least half of them.
 */
export function pairPlans<Plan extends PairedPlan>(
  before: readonly Plan[],
  after: readonly Plan[],
): PlanPairs<Plan> {
  const found = new Map<Plan, Plan>();
  const free = new Set(before);
  const pair = (one: Plan | undefined, other: Plan) => {
    if (!one) return;
    free.delete(one);
    found.set(other, one);
  };
  const open = () => after.filter((plan) => !found.has(plan));
  const onlyOne = (plans: readonly Plan[]) => (plans.length === 1 ? plans[0] : undefined);
  const byPath = new Map(before.map((plan) => [plan.path, plan]));
  for (const plan of after) pair(byPath.get(plan.path), plan);
  for (const plan of open()) {
    const { buildName } = plan;
    if (buildName === "" || open().filter((one) => one.buildName === buildName).length > 1) continue;
    pair(onlyOne([...free].filter((one) => one.buildName === buildName)), plan);
  }
  for (const plan of open()) {
    const [best] = [...free]
      .map((one) => ({ one, share: shared(one.names, plan.names) }))
      .filter(({ share }) => share >= 0.5)
      .sort((a, b) => b.share - a.share);
    pair(best?.one, plan);
  }
  return {
    pairs: after.flatMap((plan) => {
      const one = found.get(plan);
      return one ? [{ before: one, after: plan }] : [];
    }),
    removed: [...free],
    added: open(),
  };
}

/** The share of names that two plans have in common, of all that either has; 0 if they have none in common. */
function shared(one: ReadonlySet<string>, other: ReadonlySet<string>): number {
  const common = [...one].filter((name) => other.has(name)).length;
  return common === 0 ? 0 : common / (one.size + other.size - common);
}
