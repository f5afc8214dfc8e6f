import type { ShownElement } from "../messages.ts";

/** The strip below the picture: what is known of the chosen element. It is read out when it changes, and only then. */
export interface Details {
  show(element: ShownElement | undefined): void;
}

/** @param goTo called when somebody wants to see where the element is written */
export function createDetails(strip: HTMLElement, goTo: (element: ShownElement) => void): Details {
  let shown: string | undefined;
  return {
    show(element) {
      // Only what is said counts: where the element stands in the picture may change with every key.
      const said = element ? JSON.stringify({ ...element, box: undefined }) : "";
      if (said === shown) return;
      shown = said;
      strip.replaceChildren(...(element ? contentOf(element, goTo) : [paragraph("hint", hint)]));
    },
  };
}

const hint = "Choose a part or a conductor to read about it here. A click also shows its line.";

function contentOf(element: ShownElement, goTo: (element: ShownElement) => void): HTMLElement[] {
  const { name, kind, description, severity, findings, written } = element;
  const heading = document.createElement("h2");
  heading.textContent = name;
  const what = document.createElement("span");
  what.className = "kind";
  what.textContent = kinds[kind];
  const head = document.createElement("div");
  head.className = "head";
  head.append(heading, what);
  if (severity) head.append(markOf(severity));
  if (written) {
    const button = document.createElement("button");
    button.type = "button";
    button.textContent = "Go to its line";
    button.addEventListener("click", () => goTo(element));
    head.append(button);
  }
  const said = document.createElement("p");
  said.append(...withFindings(description, findings));
  const unsaid = findings.filter((finding) => !description.includes(finding));
  return [head, said, ...unsaid.map((finding) => paragraph("found", finding))];
}

function markOf(severity: keyof typeof severities): HTMLElement {
  const mark = document.createElement("span");
  mark.className = `severity ${severity}`;
  mark.textContent = severities[severity];
  return mark;
}

/** The description, with the findings in it set off from the rest. */
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
