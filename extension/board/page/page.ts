// The page of the view of the boards. It draws the data that it is given and proposes places of parts; it knows neither the editor nor
// a file, and has no knowledge of electrics.

import type { BoardPart, BoardsView } from "../../../server/language/messages.ts";
import { isRefused, readPicture } from "../../diagram/page/picture.ts";
import { drawTable, find, onUndoAndRedo, paragraph } from "../../plan-view/page/page-parts.ts";
import {
  type FromPage,
  pictureSizes,
  readViewState,
  type ShowBoards,
  type ToPage,
  type ViewState,
} from "../messages.ts";
import { createArrangement } from "./arrangement.ts";
import { createHandles } from "./handles.ts";
import { createMoving } from "./moving.ts";

/** The editor's interface for the page of a webview. */
declare function acquireVsCodeApi(): {
  postMessage(message: FromPage): void;
  getState(): unknown;
  setState(state: ViewState): void;
};

function start(): void {
  const port = acquireVsCodeApi();
  const notice = find("notice");
  const conductors = find<HTMLInputElement>("conductors");
  const size = find<HTMLSelectElement>("size");
  let state = readViewState(port.getState());
  let number = 0;
  /** Of the text. */
  let boards: BoardsView | undefined;
  /** The one that is shown: of the text, or with a part moved. */
  let shown: BoardsView | undefined;
  let selected: number | undefined;
  /** It was let go, and the text is about to follow. */
  let isLetGo = false;
  /** Keys of that time: they are meant for the part at its new place. */
  let early: { readonly key: string; readonly record: number }[] = [];

  const say = (message: string, trouble: boolean) => {
    notice.textContent = message;
    notice.className = trouble ? "trouble" : "";
  };
  const report = (message: string) => {
    find("said").textContent = message;
  };
  /** A new action ends the report of the one before. */
  const act = (message: FromPage) => {
    report("");
    port.postMessage(message);
  };
  const partOf = (record: number | undefined): BoardPart | undefined =>
    boards?.parts.find((part) => part.record === record);
  const shownPart = (record: number | undefined): BoardPart | undefined =>
    shown?.parts.find((part) => part.record === record);

  const handles = createHandles(
    find("boards"),
    (record) => {
      const handle = document.createElement("button");
      handle.type = "button";
      handle.addEventListener("pointerdown", (event) => {
        const part = partOf(record);
        if (part && boards?.current && !isSuggested()) moving.grab(part, event);
      });
      handle.addEventListener("dblclick", () => act({ type: "goTo", record, take: true }));
      handle.addEventListener("focus", () => select(record));
      // A part that is left by Tab has not been confirmed. On the way to another surface it has the focus again by then.
      handle.addEventListener("blur", () =>
        queueMicrotask(() => {
          const isShown = handles.handleOf(record) === handle;
          if (moving.record() !== record || moving.isHeld() || isLetGo || !isShown || hasFocus(handle))
            return;
          moving.giveUp();
        }),
      );
      handle.addEventListener("keydown", (event) => onKey(event, record));
      return handle;
    },
    (surface) => {
      if (moving.record() !== undefined) moving.giveUp();
      arrangement.suggest(surface);
    },
  );
  const arrangement = createArrangement({
    current: () => (boards?.current ? boards : undefined),
    suggest: (on) => act({ type: "suggest", on }),
    cancel: () => port.postMessage({ type: "cancel" }),
    show(view) {
      if (!view) port.postMessage({ type: "leaveAsIs" });
      const drawn = view ?? boards;
      if (drawn) draw(drawn, undefined);
    },
    take(places) {
      isLetGo = true;
      act({ type: "letGo", number, places });
    },
    isOfText: (view) => boards !== undefined && sameTexts(view, boards),
    say: (message) => report(message),
    suggestButton: (on) => handles.suggestButton(on),
  });
  /** A part at a suggested place moves only once the suggestion was taken or left, which is said. */
  const isSuggested = (): boolean => {
    if (!arrangement.places()) return false;
    report("Take the suggested arrangement or leave it; parts can then be moved.");
    return true;
  };
  const moving = createMoving({
    handles,
    surfaces: () => boards?.surfaces ?? [],
    parts: () => boards?.parts ?? [],
    move: (places) => act({ type: "move", places }),
    letGo(places) {
      isLetGo = true;
      act({ type: "letGo", number, places });
    },
    leaveAsIs() {
      port.postMessage({ type: "leaveAsIs" });
      if (boards) draw(boards, undefined);
    },
    clicked({ record }) {
      handles.handleOf(record)?.focus({ preventScroll: true });
      select(record);
      act({ type: "goTo", record, take: false });
    },
    say: report,
  });

  const onKey = (event: KeyboardEvent, record: number) => {
    if (event.ctrlKey || event.metaKey || event.altKey || !pressed(event.key, record)) return;
    event.preventDefault();
  };
  /** Whether the key has a meaning on a part. */
  const pressed = (key: string, record: number): boolean => {
    const part = partOf(record);
    if (!part || !boards?.current) return false;
    const arrow = arrows[key];
    const letter = key.toLowerCase();
    const isEnter = key === "Enter" || key === " ";
    if (!arrow && !isEnter && letter !== "r" && letter !== "b") return false;
    if (isLetGo) early.push({ key, record });
    else if (!isEnter && isSuggested()) return true;
    else if (arrow) moving.step(part, ...arrow);
    else if (letter === "r") moving.turn(part);
    else if (letter === "b") moving.toNextSurface(part);
    else if (moving.record() === record) moving.write();
    else act({ type: "goTo", record, take: key === "Enter" });
    return true;
  };
  /** The text has followed the part that was let go. */
  const takeEarlyKeys = () => {
    const keys = early;
    early = [];
    for (const { key, record } of keys) pressed(key, record);
  };

  const select = (record: number | undefined) => {
    selected = record;
    for (const part of boards?.parts ?? [])
      handles.handleOf(part.record)?.classList.toggle("selected", part.record === record);
    const part = shownPart(record);
    const lines = part
      ? [
          part.place ? part.place.words : "On no surface yet.",
          ...part.findings,
          ...(part.fixed ? [part.fixed] : []),
        ]
      : ["None. A click or the Tab key selects one."];
    find("about-title").textContent = part ? part.name : "Selected part";
    find("about").replaceChildren(...lines.map(paragraph));
  };

  const draw = (view: BoardsView, moved: ShowBoards["moved"]) => {
    shown = view;
    const suggested = new Set(arrangement.places()?.map(({ record }) => record));
    find("title").textContent = `Boards: ${view.title}`;
    say(
      [
        ...(view.current ? [] : ["As of the last complete text."]),
        ...(moved && view.tried ? ["With the part where it is now; the text is unchanged."] : []),
        ...(suggested.size > 0 ? ["With the parts at suggested places; the text is unchanged."] : []),
        ...view.notes,
      ].join(" "),
      !view.current,
    );
    find("beside").hidden = view.surfaces.length === 0;
    handles.show(view.surfaces, view.parts, (svg) => {
      const picture = readPicture(svg);
      if (!isRefused(picture)) return picture;
      port.postMessage({ type: "refused", why: picture.refused });
      say("A picture was not shown: it holds something that is not allowed. The log names it.", true);
      return undefined;
    });
    for (const part of view.parts) {
      const handle = handles.put(part, part.place);
      if (handle) dress(handle, part, suggested.has(part.record));
    }
    moving.redraw();
    drawUnplaced(view);
    drawTable(
      find("lengths"),
      ["Conductor", "Length along its way", "Drop"],
      view.conductors.map(({ name, length, drop }) => [name, length, drop ?? "not known"]),
    );
    drawEffects(view, moved);
    select(selected);
  };

  const drawUnplaced = ({ parts, surfaces }: BoardsView) => {
    const list = find("unplaced");
    const unplaced = parts.filter(({ place }) => !place);
    find("loose").hidden = unplaced.length === 0;
    const focused = (document.activeElement as HTMLElement | null)?.dataset.put;
    list.replaceChildren(
      ...unplaced.map((part) => {
        const item = document.createElement("li");
        const name = document.createElement("span");
        name.className = "name";
        name.textContent = part.name;
        name.addEventListener("pointerdown", (event) => {
          if (boards?.current && !isSuggested()) moving.grab(part, event);
        });
        item.append(name);
        if (part.fixed !== undefined) item.append(paragraph(part.fixed));
        else
          item.append(
            ...surfaces.map((surface) => {
              const put = document.createElement("button");
              put.type = "button";
              put.textContent = `Put on ${surface.name}`;
              put.setAttribute("aria-label", `Put on ${surface.name}: ${part.name}`);
              put.dataset.put = `${part.record} ${surface.record}`;
              put.addEventListener("click", () => {
                if (boards?.current && !isSuggested()) moving.putOn(part, surface.record);
              });
              return put;
            }),
          );
        return item;
      }),
    );
    if (focused !== undefined)
      list.querySelector<HTMLElement>(`[data-put="${focused}"]`)?.focus({ preventScroll: true });
  };

  const drawEffects = ({ tried, parts }: BoardsView, moved: ShowBoards["moved"]) => {
    const suggested = arrangement.places();
    find("effects").hidden = !moved && !suggested;
    find("effects-title").textContent = suggested ? "Effects of the suggestion" : "Effects of the move";
    const away = (moved ?? suggested ?? []).flatMap(
      ({ record }) => parts.find((part) => part.record === record) ?? [],
    );
    const lines =
      tried && away.length > 0
        ? [
            ...away.flatMap(({ name, place }) => {
              const over = place?.overlaps.flatMap((record) => shownPart(record)?.name ?? []) ?? [];
              return [
                `${name}: ${place?.words ?? ""}.`,
                ...(over.length > 0 ? [`It overlaps ${over.join(", ")}.`] : []),
              ];
            }),
            ...tried.newFindings.map((finding) => `New: ${finding}`),
            ...tried.goneFindings.map((finding) => `Gone: ${finding}`),
            ...tried.lengths,
          ]
        : [];
    find("effect").replaceChildren(...lines.map(paragraph));
  };

  const show = (message: ShowBoards) => {
    const { boards: view, root, moved } = message;
    if (moved) {
      const isOfSuggestion = arrangement.places() !== undefined;
      if (isOfSuggestion && boards && sameTexts(view, boards)) return draw(view, undefined);
      // An answer about another text, or about a part that was let go meanwhile.
      if (moving.record() === undefined || isLetGo || !boards || !sameTexts(view, boards)) return;
      draw(view, moved);
      return;
    }
    number = message.number;
    const isSame = boards !== undefined && sameTexts(view, boards) && view.current;
    boards = view;
    if (!isSame) {
      if (moving.record() !== undefined && !isLetGo)
        report("The text changed: the part is where the text has it.");
      const places = arrangement.places();
      if (places)
        report(
          isLetGo
            ? "The suggested places are in the text, as one step: Undo takes them back."
            : "The text changed: the suggestion was dropped.",
        );
      arrangement.settle();
      isLetGo = false;
      moving.settle();
    }
    state = { ...state, uri: root };
    port.setState(state);
    const places = arrangement.places();
    // Other data of the same text: the suggestion is tried with them too.
    if (places && !isLetGo) port.postMessage({ type: "move", places });
    else if (moving.record() === undefined && !places) draw(view, undefined);
    if (!isLetGo) takeEarlyKeys();
  };

  conductors.checked = state.conductors;
  conductors.addEventListener("change", () => {
    state = { ...state, conductors: conductors.checked };
    port.setState(state);
    act({ type: "choose", conductors: conductors.checked });
  });
  const drawSize = () => {
    find("boards").classList.toggle("sized", state.size !== "fit");
    find("boards").style.setProperty("--size", state.size === "fit" ? null : state.size);
  };
  size.value = state.size;
  drawSize();
  size.addEventListener("change", () => {
    state = { ...state, size: pictureSizes.find((one) => one === size.value) ?? "fit" };
    port.setState(state);
    drawSize();
  });
  onUndoAndRedo(act);
  document.addEventListener(
    "keydown",
    (event) => {
      if (event.key === "Escape") {
        early = [];
        if (arrangement.escape()) return;
        if (moving.record() === undefined) port.postMessage({ type: "leave" });
        else moving.giveUp();
      } else if (event.key.toLowerCase() === "r" && moving.isHeld()) {
        const part = partOf(moving.record());
        if (part) moving.turn(part);
        event.stopPropagation();
      }
    },
    { capture: true },
  );
  globalThis.addEventListener("message", ({ data }: MessageEvent<ToPage>) => {
    switch (data.type) {
      case "boards":
        return show(data);
      case "cursor": {
        // A part that has the focus stays selected, wherever the cursor is.
        if (
          moving.record() !== undefined ||
          boards?.parts.some(({ record }) => hasFocus(handles.handleOf(record)))
        )
          return;
        const [record] = data.records.filter((one) => partOf(one));
        select(record);
        if (record !== undefined) handles.handleOf(record)?.scrollIntoView({ block: "nearest" });
        return;
      }
      case "searching":
        return arrangement.searching(data.on, data.message);
      case "arrangement":
        return arrangement.found(data);
      case "say":
        if (data.about === "figures") return say(data.message, true);
        report(data.message);
        early = [];
        if (isLetGo || moving.record() !== undefined) {
          isLetGo = false;
          arrangement.settle();
          moving.settle();
          if (boards) draw(boards, undefined);
        }
        return;
    }
  });
  say("Drawing…", false);
  port.postMessage({ type: "ready" });
  if (state.conductors) port.postMessage({ type: "choose", conductors: true });
}

const arrows: Readonly<Record<string, readonly [across: number, down: number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** The name of a part for those who hear the page, and its signs for those who see it. */
function dress(
  handle: HTMLElement,
  { name, place, findings, fixed, severity, size }: BoardPart,
  isSuggested: boolean,
): void {
  const counts =
    findings.length === 0 ? "" : `; ${findings.length} finding${findings.length === 1 ? "" : "s"}`;
  const at = isSuggested ? "suggested place: " : "";
  handle.replaceChildren(...(isSuggested ? [suggestedMark()] : []));
  handle.setAttribute("aria-label", `${name}, ${at}${place?.words ?? "on no surface yet"}${counts}`);
  if (fixed === undefined) handle.removeAttribute("aria-description");
  else handle.setAttribute("aria-description", fixed);
  handle.title = [name, ...findings, ...(fixed === undefined ? [] : [fixed])].join("\n");
  handle.className = [
    "part",
    ...(fixed === undefined ? [] : ["fixed"]),
    ...(severity === undefined ? [] : [severity]),
    ...(place && place.overlaps.length > 0 ? ["overlaps"] : []),
    ...(size ? [] : ["without-size"]),
    ...(isSuggested ? ["suggested"] : []),
  ].join(" ");
}

function suggestedMark(): HTMLElement {
  const mark = document.createElement("span");
  mark.textContent = "suggested";
  return mark;
}

function hasFocus(handle: HTMLElement | undefined): boolean {
  return handle !== undefined && document.activeElement === handle && document.hasFocus();
}

function sameTexts({ versions: one }: BoardsView, { versions: other }: BoardsView): boolean {
  return JSON.stringify(Object.entries(one).sort()) === JSON.stringify(Object.entries(other).sort());
}

start();
