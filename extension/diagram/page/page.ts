// The page of a diagram panel. It draws the extension's pictures and reports the user's choices; it has no knowledge of
// electrics.

import { find } from "../../plan-view/page/page-parts.ts";
import type { FromPage, ShowDiagram, ShownElement, ToPage } from "../messages.ts";
import { type PanelState, readPanelState } from "../panel-state.ts";
import { type Box, heldStill, type Place, type Point } from "../place.ts";
import { createDetails } from "./details.ts";
import { createElements, groupAround } from "./elements.ts";
import { keyOnElement, keyOnPicture } from "./keys.ts";
import { isRefused, readPicture } from "./picture.ts";
import { elementsWith } from "./search.ts";
import { createStage } from "./stage.ts";
import { createToolbar } from "./toolbar.ts";

/** The editor's interface for the page of a webview. */
declare function acquireVsCodeApi(): {
  postMessage(message: FromPage): void;
  getState(): unknown;
  setState(state: PanelState): void;
};

function start(): void {
  const editor = acquireVsCodeApi();
  const stageElement = find("stage");
  const notice = find("notice");
  const elements = createElements();
  let state = readPanelState(editor.getState());
  /** The picture's place in the other view. */
  let otherPlace: PanelState["place"];
  let diagram: ShowDiagram | undefined;
  /** The drawn content: an edit that leaves it unchanged causes no redraw. */
  let drawn = "";

  const number = () => diagram?.number ?? 0;
  const keep = (change: Partial<PanelState>) => {
    const { place, ...rest } = { ...state, ...change };
    state = { ...rest, ...(place ? { place } : {}) };
    editor.setState(state);
  };

  const stage = createStage(stageElement, (place) => {
    keep({ place });
    toolbar.showScale(stage.scale());
  });
  const details = createDetails(find("details"), {
    goTo: (element) => goTo(element, true),
    choose: ({ id }) => elements.focus(id),
  });
  const toolbar = createToolbar(find, {
    choose: (view, listed, colours) => {
      // If the list is empty, the last choice still applies.
      const scenario = diagram?.scenarios.length ? listed : state.scenario;
      if (view !== state.view) {
        const place = otherPlace;
        otherPlace = state.place;
        const { place: _, ...rest } = state;
        state = { ...rest, ...(place ? { place } : {}) };
      }
      keep({ view, scenario, colours });
      editor.postMessage({ type: "choose", number: number(), view, scenario, colours });
    },
    zoom: stage.zoom,
    showAll: stage.showAll,
    export: () => editor.postMessage({ type: "export", number: number() }),
    find(words) {
      const found = elementsWith(words, diagram?.picture?.elements ?? [])[0];
      if (!found) return;
      choose(found.id);
      reveal(found.id);
    },
    leaveSearch() {
      const chosen = elements.chosen();
      if (chosen === undefined) stageElement.focus({ preventScroll: true });
      else elements.focus(chosen);
    },
    count: (words) => elementsWith(words, diagram?.picture?.elements ?? []).length,
  });

  const goTo = ({ id, written }: ShownElement, take: boolean) => {
    if (written) editor.postMessage({ type: "goTo", number: number(), element: id, take });
  };
  const choose = (id: string | undefined) => {
    elements.choose(id);
    const marked = elements.marked();
    const beside = id !== undefined && marked.includes(id) ? marked.filter((other) => other !== id) : [];
    details.show(
      id === undefined ? undefined : elements.element(id),
      beside.flatMap((other) => elements.element(other) ?? []),
    );
  };
  const tell = (sentences: readonly string[], state: "ahead" | "trouble" | "") => {
    notice.textContent = sentences.join(" ");
    notice.hidden = sentences.length === 0;
    notice.className = state;
  };

  const show = (next: ShowDiagram) => {
    const before = diagram;
    diagram = next;
    keep({
      uri: next.root,
      view: next.view,
      colours: next.colours,
      scenario: next.scenario ?? state.scenario,
    });
    toolbar.show(next);
    stageElement.setAttribute("aria-label", `Wiring diagram of ${next.title}`);
    tell(
      [...(next.current || !next.picture ? [] : ["As of the last complete text."]), ...next.notes],
      next.current ? "" : "ahead",
    );
    if (!next.picture) {
      drawn = "";
      stage.clear();
      elements.adopt(document.createElementNS("http://www.w3.org/2000/svg", "svg"), []);
      choose(undefined);
      return;
    }
    const { svg } = next.picture;
    const content = JSON.stringify(next.picture);
    if (content !== drawn) {
      const picture = readPicture(svg);
      if (isRefused(picture)) {
        editor.postMessage({ type: "refused", number: next.number, why: picture.refused });
        tell(
          [
            "The new picture was not shown: it holds an element or attribute that is not allowed. The log names it.",
          ],
          "trouble",
        );
        return;
      }
      drawn = content;
      const focused = elements.focused();
      const sameView = before?.picture !== undefined && before.view === next.view;
      const isMoved = state.place !== undefined && state.place !== "all";
      const place = isMoved && sameView ? placeIn(next, before, state.place as Place) : state.place;
      // Kept unchanged, even if the picture is too small at the moment and the stage must show it elsewhere.
      if (place) keep({ place });
      elements.adopt(picture, next.picture.elements);
      stage.show(picture, place);
      elements.frame();
      const { start } = next.picture;
      stage.beginAt(start === undefined ? undefined : elements.box(start));
      if (focused !== undefined) elements.focus(focused);
    }
    toolbar.showScale(stage.scale());
    choose(elements.chosen());
  };

  /** The same scale; and the element that the person looks at, if it still exists, at its old position. */
  const placeIn = (next: ShowDiagram, before: ShowDiagram, place: Place): Place => {
    const now = new Map(next.picture?.elements.map(({ id, box }) => [id, box]));
    const still = (before.picture?.elements ?? []).flatMap(({ id, box }) => {
      const after = now.get(id);
      return after && stage.sees(box) ? [{ id, box, after }] : [];
    });
    const middle = stage.middle();
    const looked =
      still.find(({ id }) => id === elements.chosen()) ??
      still.sort((a, b) => distance(a.box, middle) - distance(b.box, middle))[0];
    return looked ? heldStill(place, looked.box, looked.after) : place;
  };

  const reveal = (id: string) => {
    const box = elements.box(id);
    if (box) stage.reveal(box, elements.begin(id));
  };

  const showCursor = (ids: readonly string[]) => {
    elements.mark(ids);
    const chosen = elements.chosen();
    // The message may be that of an earlier move: an element that is being read with the keyboard stays chosen.
    const isByKeyboard = groupAround(document.activeElement)?.matches(":focus-visible");
    if (isByKeyboard && document.hasFocus() && elements.focused() === chosen) return choose(chosen);
    choose(chosen !== undefined && ids.includes(chosen) ? chosen : ids[0]);
    const boxes = ids.flatMap((id) => elements.box(id) ?? []);
    if (ids[0] !== undefined && !boxes.some((box) => stage.sees(box))) reveal(ids[0]);
  };

  globalThis.addEventListener("message", ({ data }: MessageEvent<ToPage>) => {
    switch (data.type) {
      case "diagram":
        return show(data);
      case "cursor":
        // Ignored for a picture that was replaced meanwhile; the next one brings its own cursor.
        if (data.number === number()) showCursor(data.elements);
        return;
      case "trouble":
        return tell([data.message], "trouble");
    }
  });

  const elementOf = (target: EventTarget | null): ShownElement | undefined => {
    const id = groupAround(target)?.dataset.element;
    return id === undefined ? undefined : elements.element(id);
  };
  stageElement.addEventListener("click", ({ target, detail }) => {
    const element = elementOf(target);
    if (!element) return;
    choose(element.id);
    elements.focus(element.id);
    // The second click of a double-click also takes the cursor there.
    goTo(element, detail > 1);
  });
  stageElement.addEventListener("focusin", ({ target }) => {
    const element = elementOf(target);
    if (!element) return;
    choose(element.id);
    // An element reached by the keyboard may be out of sight; one under the pointer is visible, and must not move away.
    if (groupAround(target)?.matches(":focus-visible")) reveal(element.id);
  });
  stageElement.addEventListener("keydown", (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const element = elementOf(event.target);
    const used =
      (element && keyOnElement(event, element, { elements, goTo: (one) => goTo(one, true) })) ||
      keyOnPicture(event, stage);
    if (used) event.preventDefault();
  });
  document.addEventListener("keydown", ({ key, target }) => {
    // In a list, Escape closes the list.
    if (key === "Escape" && !(target instanceof HTMLSelectElement || target instanceof HTMLInputElement))
      editor.postMessage({ type: "leave", number: number() });
  });

  // A keyboard user without an earlier focus here starts at the picture.
  globalThis.addEventListener("focus", () => {
    if (document.activeElement === document.body) stageElement.focus({ preventScroll: true });
  });

  choose(undefined);
  tell(["Drawing…"], "ahead");
  editor.postMessage({ type: "ready" });
}

function distance(box: Box, point: Point): number {
  return Math.hypot(box.x + box.width / 2 - point.x, box.y + box.height / 2 - point.y);
}

start();
