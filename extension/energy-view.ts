import type { Disposable, ExtensionContext, LogOutputChannel } from "vscode";
import { readViewState } from "./energy/messages.ts";
import { createPlanEnergy, energyKind } from "./energy/plan-energy.ts";
import { registerViews } from "./plan-view/register-views.ts";
import type { ServerSession } from "./server-session.ts";

/** The command that shows whether the banks keep up beside the plan. */
export function registerEnergy(
  context: ExtensionContext,
  session: ServerSession,
  log: LogOutputChannel,
): Disposable {
  return registerViews(context, session, log, {
    kind: energyKind,
    command: "loomwright.showEnergy",
    notOpened: "The energy could not be shown",
    readState: readViewState,
    create: createPlanEnergy,
  });
}
