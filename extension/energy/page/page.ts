// The page of the view of energy. It draws the data that it is given and proposes moves of levers; it knows neither the editor nor a
// file, and has no knowledge of electrics.

import type { EnergyView } from "../../../server/language/messages.ts";
import { isRefused, readPicture } from "../../diagram/page/picture.ts";
import { drawTable, find, onUndoAndRedo, paragraph } from "../../plan-view/page/page-parts.ts";
import { type FromPage, readViewState, type ShowEnergy, type ToPage, type ViewState } from "../messages.ts";
import { createLevers } from "./levers.ts";
import { drawMonths } from "./months.ts";

/** The editor's interface for the page of a webview. */
declare function acquireVsCodeApi(): {
  postMessage(message: FromPage): void;
  getState(): unknown;
  setState(state: ViewState): void;
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
    const rows = found?.rows.map((row) => [row.change, row.now, row.least, row.step]);
    drawTable(find("least-rows"), ["One change", "Now", "Least", "In steps of"], rows ?? []);
  };
  least.addEventListener("toggle", () => port.postMessage({ type: "least", wanted: least.open }));
  periods.addEventListener("change", () => choose({ period: periods.value, bank: 0 }));
  banks.addEventListener("change", () => choose({ bank: banks.selectedIndex }));
  onUndoAndRedo(act);
  document.addEventListener(
    "keydown",
    ({ key, target }) => {
      if (key === "Escape" && !levers.isMoving() && !(target instanceof HTMLSelectElement))
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

start();
