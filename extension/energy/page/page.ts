// The page of the view of energy. It draws the data that it is given and proposes moves of levers; it knows neither the editor nor a
// file, and has no knowledge of electrics.

import type { EnergyView } from "../../../server/language/messages.ts";
import { isRefused, readPicture } from "../../diagram/page/picture.ts";
import { type FromPage, readViewState, type ShowEnergy, type ToPage, type ViewState } from "../messages.ts";
import { createLevers } from "./levers.ts";
import { drawMonths } from "./months.ts";

/** The editor's interface for the page of a webview. */
declare function acquireVsCodeApi(): {
  postMessage(message: FromPage): void;
  getState(): unknown;
  setState(state: ViewState): void;
};

const find = <T extends HTMLElement>(id: string): T => {
  const found = document.getElementById(id);
  if (!found) throw new Error(`the page has no #${id}`);
  return found as T;
};

function start(): void {
  const port = acquireVsCodeApi();
  const notice = find("notice");
  const [periods, banks] = [find<HTMLSelectElement>("period"), find<HTMLSelectElement>("bank")];
  let state = readViewState(port.getState());
  let number = 0;
  let shown: EnergyView["shown"];
  let drawn = "";

  const say = (message: string, trouble: boolean) => {
    notice.textContent = message;
    notice.className = trouble ? "trouble" : "";
  };
  /** A new action ends the report of the one before. */
  const act = (message: FromPage) => {
    find("said").textContent = "";
    port.postMessage(message);
  };
  const choose = (change: Partial<Omit<ViewState, "uri">>) => {
    state = { ...state, ...change };
    port.setState(state);
    act({ type: "choose", period: state.period, bank: state.bank, month: state.month ?? 12 });
  };
  const levers = createLevers(find("rows"), {
    move: (lever, value) => act({ type: "move", lever, value }),
    letGo: (lever, value) => act({ type: "letGo", number, lever, value }),
    leaveAsIs: () => port.postMessage({ type: "leaveAsIs" }),
  });

  const show = ({ energy, root, moved, number: next }: ShowEnergy) => {
    number = next;
    shown = energy.shown;
    state = { ...state, uri: root };
    port.setState(state);
    find("title").textContent = `Energy: ${energy.title}`;
    const notes = [
      ...(energy.current ? [] : ["As of the last complete text."]),
      ...(moved ? ["With the lever where it is now; the text is unchanged."] : []),
      ...energy.notes,
    ];
    say(notes.join(" "), !energy.current);
    for (const section of document.querySelectorAll("main > *"))
      (section as HTMLElement).hidden = shown === undefined;
    offer(periods, energy.periods, energy.periods.indexOf(shown?.period ?? ""));
    offer(banks, shown?.banks ?? [], shown?.bank ?? 0);
    if (!shown) return levers.show([], false);
    drawMonths(find("months"), shown, (month) => choose({ month }));
    find("summary").replaceChildren(...shown.summary.map(paragraph));
    levers.show(shown.levers, energy.current);
    drawLeast(shown.least);
    drawWeek(shown);
  };

  const drawWeek = ({ week }: NonNullable<EnergyView["shown"]>) => {
    find("week-title").textContent = week.title;
    find("words").textContent = week.description;
    if (week.svg === drawn) return;
    const picture = readPicture(week.svg);
    if (isRefused(picture)) {
      port.postMessage({ type: "refused", why: picture.refused });
      return say("The chart was not shown: it holds something that is not allowed. The log names it.", true);
    }
    drawn = week.svg;
    picture.setAttribute("role", "img");
    picture.setAttribute("aria-labelledby", "week-title");
    picture.setAttribute("aria-describedby", "words");
    find("chart").replaceChildren(picture);
  };

  const least = find<HTMLDetailsElement>("least");
  const drawLeast = (found: NonNullable<EnergyView["shown"]>["least"]) => {
    const notes = found?.notes.join(" ") ?? "Working it out…";
    // The same words are not read aloud again with each keystroke.
    if (find("least-notes").textContent !== notes) find("least-notes").textContent = notes;
    drawTable(find("least-rows"), ["One change", "Now", "Least", "In steps of"], found?.rows ?? []);
  };
  least.addEventListener("toggle", () => port.postMessage({ type: "least", wanted: least.open }));
  periods.addEventListener("change", () => choose({ period: periods.value, bank: 0 }));
  banks.addEventListener("change", () => choose({ bank: banks.selectedIndex }));
  find("undo").addEventListener("click", () => act({ type: "undo" }));
  find("redo").addEventListener("click", () => act({ type: "redo" }));
  document.addEventListener(
    "keydown",
    (event) => {
      const { key, ctrlKey, metaKey, shiftKey, altKey } = event;
      const isUndo = key.toLowerCase() === "z" && !shiftKey;
      const isRedo = key.toLowerCase() === "y" || (key.toLowerCase() === "z" && shiftKey);
      if ((ctrlKey || metaKey) && !altKey && (isUndo || isRedo)) {
        // The editor would undo within this page, which has nothing of its own.
        event.preventDefault();
        event.stopPropagation();
        act({ type: isUndo ? "undo" : "redo" });
      } else if (key === "Escape" && !levers.isMoving() && !(event.target instanceof HTMLSelectElement))
        port.postMessage({ type: "leave" });
    },
    { capture: true },
  );
  globalThis.addEventListener("message", ({ data }: MessageEvent<ToPage>) => {
    if (data.type === "energy") show(data);
    else if (data.about === "figures") say(data.message, true);
    else {
      find("said").textContent = data.message;
      levers.settle();
    }
  });
  say("Working it out…", false);
  port.postMessage({ type: "ready" });
}

/** One is no choice. */
function offer(list: HTMLSelectElement, names: readonly string[], chosen: number): void {
  list.parentElement!.hidden = names.length < 2;
  if (names.join("\n") !== [...list.options].map(({ text }) => text).join("\n"))
    list.replaceChildren(...names.map((name) => new Option(name, name)));
  list.selectedIndex = chosen;
}

/** Rows of words, the first of each as its heading. */
function drawTable(
  table: HTMLElement,
  titles: readonly string[],
  rows: readonly {
    readonly change: string;
    readonly now: string;
    readonly least: string;
    readonly step: string;
  }[],
): void {
  const cell = (kind: "td" | "th", text: string, scope?: "col" | "row") => {
    const made = document.createElement(kind);
    made.textContent = text;
    if (scope) made.setAttribute("scope", scope);
    return made;
  };
  const line = (cells: readonly HTMLElement[]) => {
    const row = document.createElement("tr");
    row.append(...cells);
    return row;
  };
  const [head, body] = [document.createElement("thead"), document.createElement("tbody")];
  head.append(line(titles.map((title) => cell("th", title, "col"))));
  body.append(
    ...rows.map(({ change, now, least, step }) =>
      line([cell("th", change, "row"), cell("td", now), cell("td", least), cell("td", step)]),
    ),
  );
  table.hidden = rows.length === 0;
  table.replaceChildren(head, body);
}

function paragraph(text: string): HTMLElement {
  const made = document.createElement("p");
  made.textContent = text;
  return made;
}

start();
