import type { WebviewPanel } from "vscode";
import type {
  BoardsView,
  boardsMethod,
  placePartsMethod,
  TriedPlace,
} from "../../server/language/messages.ts";
import { createPlanTexts } from "../diagram/plan-texts.ts";
import { createPlanView, type PlanView, type ViewKind, type ViewWiring } from "../plan-view/plan-view.ts";
import { createArranging } from "./arranging.ts";
import { readFromPage, type ToPage, type ViewState } from "./messages.ts";
import { boardsPageHtml } from "./page-html.ts";

export const boardsKind: ViewKind = {
  type: "loomwright.boards",
  title: "Boards",
  page: "board-page",
  html: boardsPageHtml,
  method: "loomwright/boards" satisfies typeof boardsMethod,
  moveMethod: "loomwright/placeParts" satisfies typeof placePartsMethod,
  stopped: "The server has stopped: the boards do not follow the text.",
  late: "The boards are still being checked.",
  notShown: "The boards could not be drawn again",
  notMade: "The part was not moved",
};

/** The view of the boards of one plan, for as long as its tab is open. */
export function createPlanBoards(
  wiring: ViewWiring,
  {
    root,
    webview: restored,
    state,
  }: { readonly root: string; readonly webview?: WebviewPanel; readonly state?: ViewState },
): PlanView {
  let conductors = state?.conductors ?? false;
  return createPlanView<BoardsView, readonly TriedPlace[]>(
    wiring,
    boardsKind,
    root,
    restored,
    (webview, search) => {
      const post = (message: ToPage) => void webview.webview.postMessage(message);
      const arranging = createArranging(search, post);
      const texts = createPlanTexts((ids) => {
        post({ type: "cursor", records: ids.map(Number) });
      });
      return {
        asked: (versions, places) => ({ conductors, ...(places ? { tried: { versions, places } } : {}) }),
        edited: (versions, places) => ({ tried: { versions, places } }),
        shown(boards, { number, move }): ToPage {
          if (!move) texts.show({ versions: boards.versions, elements: elementsOf(boards) });
          return { ...{ type: "boards", number, root, boards }, ...(move ? { moved: move } : {}) };
        },
        notMade: (places) => (places.length > 1 ? "The places were not taken" : undefined),
        heard(message) {
          const said = readFromPage(message);
          switch (said?.type) {
            case "choose":
              conductors = said.conductors;
              return { type: "again" };
            case "move":
              return { type: "move", move: said.places };
            case "letGo":
              return { type: "letGo", number: said.number, move: said.places };
            case "suggest":
              void arranging.suggest(said.on, conductors);
              return undefined;
            case "cancel":
              arranging.cancel();
              return undefined;
            case "goTo":
              texts.goTo(String(said.record), said.take, webview.viewColumn);
              return undefined;
            default:
              return said;
          }
        },
        dispose() {
          arranging.cancel();
          texts.dispose();
        },
      };
    },
  );
}

function elementsOf({ parts, surfaces }: BoardsView) {
  return [...parts, ...surfaces].map(({ record, location }) => ({
    id: String(record),
    ...(location ? { location } : {}),
  }));
}
