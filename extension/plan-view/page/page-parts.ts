/** An element of the page, by its id. */
export function find<T extends HTMLElement>(id: string): T {
  const found = document.getElementById(id);
  if (!found) throw new Error(`the page has no #${id}`);
  return found as T;
}

export function paragraph(text: string): HTMLElement {
  const made = document.createElement("p");
  made.textContent = text;
  return made;
}

/** The buttons and keys by which changes made in a view are undone and redone. The editor would undo within the page instead. */
export function onUndoAndRedo(act: (message: { readonly type: "undo" | "redo" }) => void): void {
  find("undo").addEventListener("click", () => act({ type: "undo" }));
  find("redo").addEventListener("click", () => act({ type: "redo" }));
  document.addEventListener(
    "keydown",
    (event) => {
      const { key, ctrlKey, metaKey, shiftKey, altKey } = event;
      const isUndo = key.toLowerCase() === "z" && !shiftKey;
      const isRedo = key.toLowerCase() === "y" || (key.toLowerCase() === "z" && shiftKey);
      if (!(ctrlKey || metaKey) || altKey || !(isUndo || isRedo)) return;
      event.preventDefault();
      event.stopPropagation();
      act({ type: isUndo ? "undo" : "redo" });
    },
    { capture: true },
  );
}

/** Rows of words, the first of each as its heading. */
export function drawTable(
  table: HTMLElement,
  titles: readonly string[],
  rows: readonly (readonly string[])[],
): void {
  const cell = (text: string, scope?: "col" | "row") => {
    const made = document.createElement(scope ? "th" : "td");
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
  head.append(line(titles.map((title) => cell(title, "col"))));
  body.append(
    ...rows.map(([first = "", ...others]) => line([cell(first, "row"), ...others.map((text) => cell(text))])),
  );
  table.hidden = rows.length === 0;
  table.replaceChildren(head, body);
}
