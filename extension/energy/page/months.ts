import type { EnergyView } from "../../../server/language/messages.ts";

const titles = [
  "Month",
  "Verdict",
  "Use, Wh/day",
  "Yield, Wh/day",
  "Missing, Wh/day",
  "Lowest charge, %",
] as const;

/** A row for each month, with its verdict as a sign and in words. The month whose week is drawn is chosen by its name. */
export function drawMonths(
  table: HTMLElement,
  { months, month: chosen }: NonNullable<EnergyView["shown"]>,
  choose: (month: number) => void,
): void {
  const focused = (document.activeElement as HTMLElement | null)?.dataset.month;
  const head = document.createElement("tr");
  head.append(
    ...titles.map((title) => {
      const cell = document.createElement("th");
      cell.scope = "col";
      cell.textContent = title;
      return cell;
    }),
  );
  const rows = months.map(({ month, name, sign, verdict, use, yield: given, missing, lowest }) => {
    const row = document.createElement("tr");
    row.className = month === chosen ? "chosen" : "";
    const heading = document.createElement("th");
    heading.scope = "row";
    const button = document.createElement("button");
    button.type = "button";
    button.dataset.month = String(month);
    button.textContent = name;
    button.setAttribute("aria-pressed", String(month === chosen));
    button.title = "Show its worst week";
    button.addEventListener("click", () => choose(month));
    heading.append(button);
    const words = document.createElement("td");
    const mark = document.createElement("span");
    mark.className = "sign";
    mark.textContent = sign;
    mark.setAttribute("aria-hidden", "true");
    words.append(mark, ` ${verdict}`);
    row.append(
      heading,
      words,
      ...[use, given, missing, lowest].map((figure) => {
        const cell = document.createElement("td");
        cell.className = "figure";
        cell.textContent = figure;
        return cell;
      }),
    );
    return row;
  });
  const [top, body] = [document.createElement("thead"), document.createElement("tbody")];
  top.append(head);
  body.append(...rows);
  table.replaceChildren(top, body);
  if (focused !== undefined)
    table.querySelector<HTMLElement>(`[data-month="${focused}"]`)?.focus({ preventScroll: true });
}
