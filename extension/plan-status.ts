import { commands, Disposable, StatusBarAlignment, ThemeColor, type Uri, window } from "vscode";
import type { StatusParams } from "../server/language/messages.ts";
import { type EditorWords, editorWords } from "../server/language/plain-words.ts";
import { countsInWords } from "./counts-in-words.ts";
import type { ServerSession } from "./server-session.ts";

/** The status bar item: the state of the plan in the active editor. It is visible only while that file is part of a plan. */
export function showPlanStatus(session: ServerSession): Disposable {
  const item = window.createStatusBarItem("loomwright.plan", StatusBarAlignment.Left, 50);
  item.name = "Loomwright: state of the plan";
  /** Newest state of each plan, by the address of its root. */
  const plans = new Map<string, PlanStatus>();
  let running = true;

  const show = () => {
    const file = window.activeTextEditor?.document.uri;
    const plan = file && planOf(file, plans);
    commands.executeCommand("setContext", "loomwright.onPlan", plan !== undefined);
    if (!plan) return item.hide();
    const look = running ? lookOf(plan) : stopped;
    item.text = `$(${look.icon}) Loomwright: ${look.text}`;
    item.tooltip = look.tooltip;
    item.command = look.command;
    item.backgroundColor = look.alarming ? new ThemeColor("statusBarItem.errorBackground") : undefined;
    item.show();
  };
  return Disposable.from(
    item,
    session.onStatus(({ uri, state, ...rest }) => {
      if (uri === undefined) return;
      if (state === "gone") plans.delete(uri);
      // An item that changes at every key is unreadable: while a plan is checked again, the last result remains.
      else if (state !== "checking" || !plans.has(uri)) plans.set(uri, { ...rest, state });
      show();
    }),
    session.onRunning((isRunning) => {
      running = isRunning;
      // A fresh server reports every plan anew.
      if (running) plans.clear();
      show();
    }),
    window.onDidChangeActiveTextEditor(show),
  );
}

type PlanStatus = Omit<StatusParams, "uri" | "state"> & {
  readonly state: Exclude<StatusParams["state"], "gone">;
};

interface Look {
  readonly icon: "debug-disconnect" | "error" | "loading" | "edit" | "warning" | "checklist";
  readonly text: EditorWords;
  readonly tooltip: EditorWords;
  readonly command: string;
  readonly alarming?: boolean;
}

const stopped: Look = {
  icon: "debug-disconnect",
  text: editorWords("not checking"),
  tooltip: editorWords("The server has stopped, so no plan is being checked. Click to restart it."),
  command: "loomwright.restartServer",
  alarming: true,
};

function lookOf({ state, message, counts }: PlanStatus): Look {
  const command = "workbench.actions.view.problems";
  const text = editorWords(counts ? countsInWords(counts) : message);
  const look = { text, tooltip: editorWords(`${message}. Click to list the findings.`), command };
  switch (state) {
    case "failed":
      return { ...look, icon: "error", text: editorWords("could not be checked"), alarming: true };
    case "checking":
      return { ...look, icon: "loading" };
    case "incomplete":
      return {
        ...look,
        icon: "edit",
        text: counts ? editorWords(`${text} as of the last complete text`) : text,
      };
    case "idle":
      return { ...look, icon: counts?.errors ? "error" : counts?.warnings ? "warning" : "checklist" };
  }
}

/** The plan whose root is the file; else one with the file as an open part. */
function planOf(file: Uri, plans: ReadonlyMap<string, PlanStatus>): PlanStatus | undefined {
  const address = file.toString();
  return plans.get(address) ?? [...plans.values()].find(({ versions }) => versions && address in versions);
}
