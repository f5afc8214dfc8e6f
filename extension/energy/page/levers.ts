import type { EnergyLever } from "../../../server/language/messages.ts";

export interface Levers {
  /** Those of the text; one that is being moved stays where it is. */
  show(levers: readonly EnergyLever[], canMove: boolean): void;
  isMoving(): boolean;
  /** Back to the values of the text. */
  settle(): void;
}

interface LeverActions {
  move(lever: string, value: number): void;
  letGo(lever: string, value: number): void;
  leaveAsIs(): void;
}

interface Row {
  readonly element: HTMLElement;
  readonly slider: HTMLInputElement;
  readonly figure: HTMLOutputElement;
  readonly label: HTMLLabelElement;
  readonly hint: HTMLElement;
  lever: EnergyLever;
}

/** A row for each lever: its name, the figure in the text, the lever, and a sentence where there is something to know before it moves. */
export function createLevers(place: HTMLElement, { move, letGo, leaveAsIs }: LeverActions): Levers {
  const rows = new Map<string, Row>();
  /** The lever that is away from its value in the text. */
  let moving: Row | undefined;

  const settle = () => {
    moving = undefined;
    for (const row of rows.values()) {
      row.slider.value = String(row.lever.value);
      showFigure(row);
    }
  };
  const written = (row: Row) => {
    const value = Number(row.slider.value);
    if (value === row.lever.value) return giveUp();
    letGo(row.lever.id, value);
    moving = undefined;
  };
  const giveUp = () => {
    settle();
    leaveAsIs();
  };

  const rowFor = (lever: EnergyLever): Row => {
    const known = rows.get(lever.id);
    if (known) return known;
    const [element, label, slider] = [
      document.createElement("div"),
      document.createElement("label"),
      document.createElement("input"),
    ];
    const [figure, hint] = [document.createElement("output"), document.createElement("p")];
    const row: Row = { element, slider, figure, label, hint, lever };
    const id = `lever-${rows.size}-${Date.now()}`;
    element.className = "lever";
    slider.type = "range";
    slider.id = id;
    label.htmlFor = id;
    hint.id = `${id}-hint`;
    figure.htmlFor.add(id);
    let byKeys = false;
    slider.addEventListener("input", () => {
      moving = row;
      showFigure(row);
      move(row.lever.id, Number(slider.value));
    });
    slider.addEventListener("change", () => {
      if (!byKeys) written(row);
    });
    slider.addEventListener("pointerdown", () => {
      byKeys = false;
    });
    slider.addEventListener("keydown", (event) => {
      byKeys = true;
      if (moving !== row) return;
      if (event.key === "Enter") written(row);
      else if (event.key === "Escape") {
        event.stopPropagation();
        giveUp();
      }
    });
    // A lever that is left by Tab has not been confirmed.
    slider.addEventListener("blur", () => {
      if (byKeys && moving === row) giveUp();
    });
    element.append(label, figure, slider, hint);
    rows.set(lever.id, row);
    return row;
  };

  return {
    show(levers, canMove) {
      const wanted = new Set(levers.map(({ id }) => id));
      for (const [id, row] of rows) {
        if (wanted.has(id)) continue;
        if (moving === row) moving = undefined;
        row.element.remove();
        rows.delete(id);
      }
      for (const lever of levers) {
        const row = rowFor(lever);
        row.lever = lever;
        row.label.textContent = lever.label;
        const { slider, hint } = row;
        [slider.min, slider.max, slider.step] = [lever.from, lever.most, lever.step].map(String) as [
          string,
          string,
          string,
        ];
        slider.disabled = lever.fixed !== undefined || !canMove;
        slider.hidden = lever.fixed !== undefined;
        hint.textContent = lever.fixed ?? lever.hint;
        hint.hidden = hint.textContent === "";
        if (hint.hidden) slider.removeAttribute("aria-describedby");
        else slider.setAttribute("aria-describedby", hint.id);
        if (moving !== row) slider.value = String(lever.value);
        showFigure(row);
        // Moving an element in the document would end a drag.
        if (row.element.parentElement !== place) place.append(row.element);
      }
    },
    isMoving: () => moving !== undefined,
    settle,
  };
}

/** "200 Ah", or "200 → 260 Ah" while the lever is elsewhere. */
function showFigure({ slider, figure, lever }: Row): void {
  const { value, unit, fixed } = lever;
  const at = fixed === undefined ? Number(slider.value) : value;
  const figures = at === value ? String(value) : `${value} → ${at}`;
  figure.textContent = unit === "" ? figures : `${figures} ${unit}`;
  slider.setAttribute("aria-valuetext", unit === "" ? String(at) : `${at} ${unit}`);
}
