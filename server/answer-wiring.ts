import type { Editor } from "./client-capabilities.ts";
import type { DiagnosticsPublisher } from "./diagnostics-publisher.ts";
import type { EditorWorkspace } from "./editor-workspace.ts";
import type { Checker } from "./evaluate/checker.ts";
import type { Settings } from "./language/settings.ts";
import type { OpenPlans } from "./open-plans.ts";
import type { Refresher } from "./refresher.ts";
import type { WorkReport } from "./work-report.ts";

/** The parts of the server that answer a request. */
export interface AnswerWiring {
  readonly workspace: EditorWorkspace;
  readonly refresher: Refresher;
  readonly settings: () => Settings;
  readonly editor: () => Editor;
  /** Rejects, with the reason, if the checker could not be loaded. */
  readonly running: () => Promise<Services>;
}

/** The answering parts, once they are loaded. */
export interface Services {
  /** Replaced when its limits change. */
  checker: Checker;
  readonly plans: OpenPlans;
  readonly delivery: DiagnosticsPublisher;
  readonly work: WorkReport;
}
