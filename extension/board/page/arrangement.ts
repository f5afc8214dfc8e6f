import type { BoardsView, TriedPlace } from "../../../server/language/messages.ts";
import { find, paragraph } from "../../plan-view/page/page-parts.ts";
import type { ShowArrangement } from "../messages.ts";

/** Suggested places: looked for, shown, and then taken or left. */
export interface Arrangement {
  /** Begins to look for places on a surface. */
  suggest(on: number): void;
  searching(on: number, message: string): void;
  /** The end of a search. */
  found(found: ShowArrangement): void;
  /** The places that are shown. */
  places(): readonly TriedPlace[] | undefined;
  /** Ends a search, or leaves the places that are shown; false if there was neither. */
  escape(): boolean;
  /** The text has changed, or the places were not written. */
  settle(): void;
}

interface ArrangementWiring {
  /** Undefined while the view does not follow the text. */
  current(): BoardsView | undefined;
  suggest(on: number): void;
  cancel(): void;
  /** Shows the places; undefined: those of the text again. */
  show(view: BoardsView | undefined): void;
  take(places: readonly TriedPlace[]): void;
  isOfText(view: BoardsView): boolean;
  say(message: string): void;
  suggestButton(on: number): HTMLElement | undefined;
}

type State =
  | { readonly is: "searching"; readonly on: number }
  | { readonly is: "shown"; readonly on: number; readonly places: readonly TriedPlace[] };

export function createArrangement(wiring: ArrangementWiring): Arrangement {
  const [section, title, facts] = [find("arrangement"), find("arrangement-title"), find("arrangement-facts")];
  const [take, leave, cancel] = [find("take"), find("leave"), find("cancel")];
  let state: State | undefined;

  const draw = (lines: readonly string[]): void => {
    section.hidden = !state;
    title.textContent = state?.is === "searching" ? "Looking for an arrangement" : "Suggested arrangement";
    facts.replaceChildren(...lines.map(paragraph));
    cancel.hidden = state?.is !== "searching";
    take.hidden = leave.hidden = state?.is !== "shown";
  };
  /** An element that is hidden loses the focus. */
  const end = (): void => {
    const was = state;
    state = undefined;
    const hadFocus = section.contains(document.activeElement);
    draw([]);
    if (was && hadFocus) wiring.suggestButton(was.on)?.focus({ preventScroll: true });
  };
  const leaveIt = (): void => {
    end();
    wiring.show(undefined);
    wiring.say("The suggestion was left; the text is unchanged.");
  };

  take.addEventListener("click", () => {
    if (state?.is === "shown") wiring.take(state.places);
  });
  leave.addEventListener("click", leaveIt);
  cancel.addEventListener("click", () => wiring.cancel());
  draw([]);

  return {
    suggest(on) {
      if (!wiring.current()) {
        wiring.say("No arrangement is suggested: the text is half typed.");
        return;
      }
      if (state?.is === "shown") {
        end();
        wiring.show(undefined);
      }
      wiring.suggest(on);
    },
    searching(on, message) {
      state = { is: "searching", on };
      draw([]);
      wiring.say(`${message} Escape cancels.`);
    },
    found({ on, answer }) {
      if (state?.is !== "searching" || state.on !== on) return;
      if (answer.state === "none" || !wiring.isOfText(answer.boards)) {
        end();
        wiring.say(
          answer.state === "none"
            ? answer.message
            : "No arrangement is suggested: the text changed meanwhile.",
        );
        return;
      }
      const waits =
        section.contains(document.activeElement) ||
        document.activeElement === wiring.suggestButton(on) ||
        document.activeElement === document.body;
      state = { is: "shown", on, places: answer.places };
      draw(answer.facts);
      wiring.show(answer.boards);
      wiring.say("An arrangement is suggested: take it, or leave it with Escape.");
      if (waits) title.focus();
    },
    places: () => (state?.is === "shown" ? state.places : undefined),
    escape() {
      if (state?.is === "searching") wiring.cancel();
      else if (state) leaveIt();
      else return false;
      return true;
    },
    settle() {
      if (state?.is === "shown") end();
    },
  };
}
