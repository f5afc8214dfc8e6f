import { framedPage, type PageFrame } from "../page-frame.ts";

/** The page of the view of the boards, empty. It contains no text of any plan: all content comes later, as messages. */
export function boardsPageHtml(frame: PageFrame): string {
  return framedPage(frame, { title: "Boards", body });
}

const body = `<header>
<h1 id="title">Boards</h1>
<label><input type="checkbox" id="conductors"> Conductors</label>
<label>Size <select id="size">
<option value="fit">as wide as the view</option>
<option value="1">100 %</option>
<option value="1.5">150 %</option>
<option value="2">200 %</option>
</select></label>
<div role="group" aria-label="Changes made here">
<button type="button" id="undo">Undo</button>
<button type="button" id="redo">Redo</button>
</div>
</header>
<div id="notice" role="status"></div>
<div id="said" role="status"></div>
<main>
<div id="boards"></div>
<div id="beside">
<section id="arrangement" aria-labelledby="arrangement-title" hidden>
<h2 id="arrangement-title" tabindex="-1">Suggested arrangement</h2>
<div id="arrangement-facts"></div>
<div role="group" aria-labelledby="arrangement-title">
<button type="button" id="take">Take</button>
<button type="button" id="leave">Leave</button>
<button type="button" id="cancel">Cancel</button>
</div>
</section>
<section aria-labelledby="about-title">
<h2 id="about-title">Selected part</h2>
<div id="about"><p>None. A click or the Tab key selects one.</p></div>
</section>
<section id="effects" aria-labelledby="effects-title">
<h2 id="effects-title">Effects of the move</h2>
<div id="effect" aria-live="polite"></div>
</section>
<section id="loose" aria-labelledby="loose-title">
<h2 id="loose-title">On no surface yet</h2>
<ol id="unplaced"></ol>
</section>
<details><summary>Conductors and their lengths</summary><table id="lengths"></table></details>
<p id="how">Drag a part, or move it with the arrow keys: the text changes when it is let go or Enter is pressed. R turns it by a quarter, B puts it on the next board, Escape leaves it as it was. Enter on a part that does not move goes to its line. "Suggest an arrangement" looks for places for the parts without one, and the text changes only when the suggestion is taken.</p>
</div>
</main>`;
