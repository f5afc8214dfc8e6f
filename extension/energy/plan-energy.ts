import type { WebviewPanel } from "vscode";
import type {
  EnergyParams,
  EnergyView,
  energyMethod,
  LeverMove,
  moveMethod,
} from "../../server/language/messages.ts";
import { createPlanView, type PlanView, type ViewKind, type ViewWiring } from "../plan-view/plan-view.ts";
import { readFromPage, type ToPage, type ViewState } from "./messages.ts";
import { energyPageHtml } from "./page-html.ts";

export const energyKind: ViewKind = {
  type: "loomwright.energy",
  title: "Energy",
  page: "energy-page",
  html: energyPageHtml,
  method: "loomwright/energy" satisfies typeof energyMethod,
  moveMethod: "loomwright/moveLever" satisfies typeof moveMethod,
  stopped: "The server has stopped: the figures do not follow the text.",
  late: "The figures are still being worked out.",
  notShown: "The figures could not be worked out again",
  notMade: "The lever was not moved",
};

/** The view of energy of one plan, for as long as its tab is open. */
export function createPlanEnergy(
  wiring: ViewWiring,
  {
    root,
    webview,
    state,
  }: {
    readonly root: string;
    readonly webview?: WebviewPanel;
    readonly state?: ViewState;
  },
): PlanView {
  let chosen: Pick<EnergyParams, "period" | "bank" | "month"> = state
    ? { period: state.period, bank: state.bank, ...(state.month === undefined ? {} : { month: state.month }) }
    : {};
  /** The page shows the least single changes, and asks for them again when it is loaded. */
  let least = false;
  return createPlanView<EnergyView, LeverMove>(wiring, energyKind, root, webview, () => ({
    asked: (_, move) => ({ ...chosen, ...(least && { least }), ...(move ? { move } : {}) }),
    edited: (versions, move) => ({ versions, move }),
    shown: (energy, { number, move }): ToPage => ({
      ...{ type: "energy", number, root, energy },
      ...(move ? { moved: move } : {}),
    }),
    heard(message) {
      const said = readFromPage(message);
      switch (said?.type) {
        case "choose":
          chosen = {
            period: said.period,
            bank: said.bank,
            ...(said.month < 12 ? { month: said.month } : {}),
          };
          return { type: "again" };
        case "least":
          least = said.wanted;
          return least ? { type: "again" } : undefined;
        case "move":
          return { type: "move", move: { lever: said.lever, value: said.value } };
        case "letGo":
          return { type: "letGo", number: said.number, move: { lever: said.lever, value: said.value } };
        default:
          return said;
      }
    },
  }));
}
