import type { DiagramParams } from "../../../server/language/messages.ts";
import { isView, type ShowDiagram } from "../messages.ts";

/** The row above the picture: choice of view, scenario and edition, the search, the scale, and the export. */
export interface Toolbar {
  show(diagram: Pick<ShowDiagram, "title" | "view" | "colours" | "scenarios" | "scenario">): void;
  showScale(scale: number): void;
}

export interface ToolbarActions {
  choose(view: DiagramParams["view"], scenario: string, colours: boolean): void;
  zoom(factor: number): void;
  showAll(): void;
  export(): void;
  /** Shows the first element with these words. */
  find(words: string): void;
  /** How many elements have these words. */
  count(words: string): number;
  /** The search is over: the focus goes to the picture. */
  leaveSearch(): void;
}

export function createToolbar(
  find: <T extends HTMLElement>(id: string) => T,
  actions: ToolbarActions,
): Toolbar {
  const title = find("title");
  const view = find<HTMLSelectElement>("view");
  const scenario = find<HTMLSelectElement>("scenario");
  const colours = find<HTMLInputElement>("colours");
  const scale = find("scale");
  let listed = "";

  const choose = () => {
    if (isView(view.value)) actions.choose(view.value, scenario.value, colours.checked);
  };
  view.addEventListener("change", choose);
  scenario.addEventListener("change", choose);
  colours.addEventListener("change", choose);
  find("smaller").addEventListener("click", () => actions.zoom(1 / zoomStep));
  find("larger").addEventListener("click", () => actions.zoom(zoomStep));
  find("whole").addEventListener("click", () => actions.showAll());
  find("export").addEventListener("click", () => actions.export());
  const search = find<HTMLInputElement>("search");
  const found = find("found");
  search.addEventListener("input", () => {
    const words = search.value.trim();
    const count = actions.count(words);
    found.textContent = words === "" ? "" : count === 0 ? "none" : `${count} found`;
    actions.find(words);
  });
  search.addEventListener("keydown", (event) => {
    if (event.key !== "Enter" && event.key !== "Escape") return;
    event.preventDefault();
    actions.leaveSearch();
  });

  return {
    show(diagram) {
      title.textContent = `Wiring diagram: ${diagram.title}`;
      view.value = diagram.view;
      colours.checked = diagram.colours;
      // Refilling an open list would close it.
      const list = JSON.stringify(diagram.scenarios);
      if (list !== listed) {
        listed = list;
        scenario.replaceChildren(
          option("", "no scenario"),
          ...diagram.scenarios.map((name) => option(name, name)),
        );
      }
      scenario.value = diagram.scenario ?? "";
      scenario.disabled = diagram.scenarios.length === 0;
    },
    showScale(value) {
      scale.textContent = `${Math.round(100 * value)} %`;
    },
  };
}

/** For the buttons and the keys: four steps double the size. */
export const zoomStep = 2 ** 0.25;

function option(value: string, text: string): HTMLOptionElement {
  const made = document.createElement("option");
  made.value = value;
  made.textContent = text;
  return made;
}
