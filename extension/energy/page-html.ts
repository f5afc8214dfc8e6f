import { framedPage, type PageFrame } from "../page-frame.ts";

/** The page of the view of energy, empty. It contains no text of any plan: all content comes later, as messages. */
export function energyPageHtml(frame: PageFrame): string {
  return framedPage(frame, { title: "Energy of the months", body });
}

const body = `<header>
<h1 id="title">Energy of the months</h1>
<label id="of-period">Period <select id="period"></select></label>
<label id="of-bank">Bank <select id="bank"></select></label>
<div role="group" aria-label="Changes made here">
<button type="button" id="undo">Undo</button>
<button type="button" id="redo">Redo</button>
</div>
</header>
<div id="notice" role="status"></div>
<div id="said" role="status"></div>
<main>
<section aria-labelledby="months-title">
<h2 id="months-title">Month by month</h2>
<table id="months"></table>
<div id="summary" aria-live="polite"></div>
</section>
<section id="levers" aria-labelledby="levers-title">
<h2 id="levers-title">Try other numbers</h2>
<p id="how">A lever shows its effect while it moves, and changes its number in the text when it is let go. With the keyboard: arrow keys move it, Enter writes it, Escape leaves it as it was.</p>
<div id="rows"></div>
<details id="least"><summary>The least single change that keeps up</summary>
<p id="least-notes" aria-live="polite"></p>
<table id="least-rows"></table>
</details>
</section>
<section id="week" aria-labelledby="week-title">
<h2 id="week-title"></h2>
<div id="chart"></div>
<details><summary>The same in words</summary><p id="words"></p></details>
</section>
<p id="caution">The sun of a month is known to about 15 %, and single years differ. A verdict is no promise: do not let lives depend on it.</p>
</main>`;
