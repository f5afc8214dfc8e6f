import type { ShownElement } from "../messages.ts";

/** The strip below the picture, with the details of the chosen element. It is read out when it changes, and only then. */
export interface Details {
  /** @param beside the other elements written at the same place of the text, such as a circuit's conductors */
  show(element: ShownElement | undefined, beside: readonly ShownElement[]): void;
}

export interface DetailsActions {
  /** The user wants to see where the element is written. */
  goTo(element: ShownElement): void;
  /** The user wants to read about another one. */
  choose(element: ShownElement): void;
}

export function createDetails(strip: HTMLElement, actions: DetailsActions): Details {
  let shown: string | undefined;
  return {
    show(element, beside) {
      // Compares only the displayed content: the position of the element in the picture may change with every key.
      const said = JSON.stringify(
        [element ?? "", beside.map(({ id, severity }) => [id, severity])],
        (key, value) => (key === "box" ? undefined : value),
      );
      if (said === shown) return;
      shown = said;
      strip.replaceChildren(...(element ? contentOf(element, beside, actions) : [paragraph("hint", hint)]));
    },
  };
}

const hint = "Choose a part or a conductor to read about it here. A click also shows its line.";

function contentOf(
  element: ShownElement,
  beside: readonly ShownElement[],
  { goTo, choose }: DetailsActions,
): HTMLElement[] {
  const { name, kind, description, severity, findings, facts = [], written } = element;
  const heading = document.createElement("h2");
  heading.textContent = name;
  const what = document.createElement("span");
  what.className = "kind";
  what.textContent = kinds[kind];
  const head = document.createElement("div");
  head.className = "head";
  head.append(heading, what);
  if (severity) head.append(markOf(severity));
  if (written) head.append(button("Go to its line", () => goTo(element)));
  const said = document.createElement("p");
  said.append(...withFindings(description, findings));
  const unsaid = findings.filter((finding) => !description.includes(finding));
  const content = [
    head,
    ...(facts.length > 0 ? [listOf(facts)] : []),
    said,
    ...unsaid.map((finding) => paragraph("found", finding)),
  ];
  if (beside.length === 0) return content;
  const others = paragraph("beside", "Written in the same place:");
  for (const other of beside) {
    const to = button(`${other.name}, ${kinds[other.kind]}`, () => choose(other));
    if (other.severity) to.append(markOf(other.severity));
    others.append(" ", to);
  }
  return [...content, others];
}

function listOf(facts: NonNullable<ShownElement["facts"]>): HTMLElement {
  const list = document.createElement("dl");
  for (const { label, value } of facts) {
    const pair = document.createElement("div");
    const [term, detail] = [document.createElement("dt"), document.createElement("dd")];
    term.textContent = label;
    detail.textContent = value;
    pair.append(term, detail);
    list.append(pair);
  }
  return list;
}

function button(text: string, act: () => void): HTMLButtonElement {
  const made = document.createElement("button");
  made.type = "button";
  made.textContent = text;
  made.addEventListener("click", act);
  return made;
}

function markOf(severity: keyof typeof severities): HTMLElement {
  const mark = document.createElement("span");
  mark.className = `severity ${severity}`;
  mark.textContent = severities[severity];
  return mark;
}

/** The description, with its findings emphasised. */
function withFindings(description: string, findings: readonly string[]): (string | HTMLElement)[] {
  for (const finding of findings) {
    const at = finding === "" ? -1 : description.indexOf(finding);
    if (at < 0) continue;
    const found = document.createElement("strong");
    found.textContent = finding;
    return [
      ...withFindings(description.slice(0, at), findings),
      found,
      ...withFindings(description.slice(at + finding.length), findings),
    ];
  }
  return [description];
}

function paragraph(name: string, text: string): HTMLElement {
  const made = document.createElement("p");
  made.className = name;
  made.textContent = text;
  return made;
}

const kinds = { part: "part", conductor: "conductor", protection: "protection" };
const severities = { error: "Error", warning: "Warning", info: "Note", hint: "Hint" };
