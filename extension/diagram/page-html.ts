import { framedPage, type PageFrame } from "../page-frame.ts";

/**
 * The page of a diagram panel, empty. It contains no text of any plan: all content comes later, as messages, and is set as text
 * or as a checked picture.
 */
export function pageHtml(frame: PageFrame): string {
  return framedPage(frame, { title: "Wiring diagram", body });
}

const body = `<header>
<h1 id="title">Wiring diagram</h1>
<label>View
<select id="view"><option value="one-line">One line</option><option value="wiring">Wiring</option></select></label>
<label>Figures of
<select id="scenario"><option value="">no scenario</option></select></label>
<label><input type="checkbox" id="colours">Conductor colours</label>
<label>Find
<input type="search" id="search" autocomplete="off" spellcheck="false"></label>
<span id="found" role="status"></span>
<div role="group" aria-label="Size of the picture">
<button type="button" id="smaller" aria-label="Smaller">−</button>
<span id="scale"></span>
<button type="button" id="larger" aria-label="Larger">+</button>
<button type="button" id="whole">Show all</button>
</div>
<button type="button" id="export">Export…</button>
</header>
<main>
<div id="notice" hidden></div>
<div id="stage" role="group" tabindex="0" aria-label="Wiring diagram" aria-describedby="keys"></div>
<p id="keys" hidden>Arrow keys move the picture, plus and minus change its size, 0 shows all of it. Tab goes from part to part, Enter to the line where a part is written, Escape back to the text.</p>
</main>
<section id="details" aria-label="Details" aria-live="polite"></section>`;
