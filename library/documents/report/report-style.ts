/**
 * The look of a report, on a screen in both colour schemes and on paper. Colour alone carries no meaning. Sizes on paper
 * are in points: a page printed from the browser and the PDF look alike.
 */
export function reportStyle({ title, madeBy }: { readonly title: string; readonly madeBy: string }): string {
  return `${common}
@media screen {${screen}}
@media screen and (prefers-color-scheme: dark) {${dark}}
@media print {${print}}
@page { size: auto; margin: 16mm 15mm 18mm;
  @bottom-left { content: ${cssString(title)}; ${running} }
  @bottom-center { content: ${cssString(madeBy)}; ${running} }
  @bottom-right { content: counter(page) " of " counter(pages); ${running} } }
@page upright { size: portrait; }
@page lying { size: landscape; }
`;
}

const running = `font: 7.5pt "DejaVu Sans", Verdana, sans-serif; color: #444;`;

/** Text as a string of CSS that cannot end early: every character except letters, figures and spaces is written as its number. */
export function cssString(text: string): string {
  const safe = [...text].map((character) =>
    /^[A-Za-z0-9 ]$/.test(character) ? character : `\\${character.codePointAt(0)!.toString(16)} `,
  );
  return `"${safe.join("")}"`;
}

const common = `:root { color-scheme: light; --ink: #161616; --faint: #555; --line: #9a9a9a; --rule: #161616; --paper: #fff; --focus: #1b4a75; }
* { box-sizing: border-box; }
html { -webkit-text-size-adjust: 100%; }
body { margin: 0 auto; color: var(--ink); background: var(--paper); font-family: "DejaVu Sans", Verdana, sans-serif; line-height: 1.5; font-variant-numeric: tabular-nums lining-nums; overflow-wrap: break-word; }
h1, h2, h3 { line-height: 1.25; font-weight: 700; text-wrap: balance; }
h1 { margin: 0; font-size: 1.9em; }
header { border-bottom: 3px solid var(--rule); padding-bottom: 0.8em; margin-bottom: 1.4em; }
header p { margin: 0.4em 0 0; color: var(--faint); }
h2 { font-size: 1.35em; margin: 0 0 0.7em; padding-bottom: 0.25em; border-bottom: 1.5px solid var(--rule); }
h3 { font-size: 1.08em; margin: 1.8em 0 0.5em; }
.number { font-weight: 400; color: var(--faint); margin-right: 0.35em; }
p, ul, ol, dl { margin: 0 0 0.9em; }
p, li, dd { max-width: 46em; }
ul, ol { padding-left: 1.4em; }
li { margin-bottom: 0.25em; }
a { color: inherit; text-decoration-color: var(--line); text-underline-offset: 0.15em; }
nav { margin-bottom: 2.2em; }
nav h2 { font-size: 1em; border: 0; margin-bottom: 0.3em; }
nav ol { list-style: none; padding: 0; columns: 2; column-gap: 3em; max-width: 46em; }
nav li { break-inside: avoid; }
section { margin-bottom: 3em; }
table { border-collapse: collapse; width: 100%; font-family: "DejaVu Sans Condensed", "DejaVu Sans", Verdana, sans-serif; font-stretch: condensed; line-height: 1.35; }
caption { text-align: left; font-weight: 700; padding: 0 0 0.45em; }
th, td { text-align: left; vertical-align: top; padding: 0.32em 0.55em; border-bottom: 0.6px solid var(--line); unicode-bidi: isolate; }
th:first-child, td:first-child { padding-left: 0; }
th:last-child, td:last-child { padding-right: 0; }
thead th { vertical-align: bottom; border-bottom: 1.2px solid var(--rule); font-weight: 700; }
tbody th { font-weight: 400; }
tbody tr:last-child > * { border-bottom: 1.2px solid var(--rule); }
.end { text-align: right; }
.end + :not(.end) { padding-left: 1.9em; }
.pen { min-width: 6.5em; border-left: 0.6px solid var(--line); border-right: 0.6px solid var(--line); }
tbody .pen { height: 2.2em; }
.note { font-size: 0.85em; color: var(--faint); margin: 0.4em 0 0; max-width: 72em; break-before: avoid; }
.above { margin: 1.4em 0 0; }
.table-frame { margin-top: 1.4em; }
.above + .table-frame { margin-top: 0.6em; }
.table-frame + .notice, .note + .notice { margin-top: 1.8em; }
.facts > div { display: grid; grid-template-columns: minmax(9em, 16em) 1fr; gap: 0 1.4em; padding: 0.35em 0; border-bottom: 0.6px solid var(--line); }
dt { color: var(--faint); }
dd { margin: 0; }
.notice { border: 1.5px solid var(--rule); border-left-width: 7px; padding: 0.8em 1.1em 0.5em; margin: 0 0 1.4em; }
.notice-title { font-weight: 700; margin: 0 0 0.35em; }
.notice ul { margin: 0; }
.finding { border: 0.6px solid var(--line); border-left: 5px solid var(--mark); padding: 0.75em 1.1em 0.7em; margin: 0 0 1em; }
.finding h3 { margin: 0 0 0.35em; }
.finding p { margin-bottom: 0.5em; }
.severity { color: var(--mark); margin-right: 0.5em; }
.severity::after { content: ":"; }
.error { --mark: #8f1414; }
.warning { --mark: #7a4a00; border-left-style: double; }
.info { --mark: #1b4a75; border-left-style: dashed; }
.hint { --mark: #555; border-left-style: dotted; }
dl.small { font-size: 0.85em; margin: 0; }
.finding p.small { font-size: 0.85em; margin: 0.6em 0 0.2em; }
.finding ul.small { font-size: 0.85em; margin: 0; padding-left: 1.2em; }
dl.small > div { display: grid; grid-template-columns: 9.5em 1fr; gap: 0 1em; }
figure { margin: 0 0 1.6em; }
figcaption { margin-top: 0.6em; font-weight: 700; }
.drawing svg { display: block; max-width: 100%; height: auto; margin: 0 auto; }
details { margin-top: 0.4em; font-size: 0.85em; color: var(--faint); }
footer { border-top: 1.2px solid var(--rule); color: var(--faint); font-size: 0.85em; padding-top: 0.6em; }`;

const screen = `
body { max-width: 84em; padding: 2.5em 2.5em 3em; font-size: 0.9375rem; }
.table-frame { overflow-x: auto; }
table { font-size: 0.875em; }
.drawing { border: 1px solid var(--line); padding: 0.5em; background: #fff; }
.table-frame:focus-visible, .drawing:focus-visible, a:focus-visible, summary:focus-visible { outline: 2px solid var(--focus); outline-offset: 2px; }
.many-columns td:not(.end):not(:first-child) { min-width: 6em; }
@media (max-width: 40em) { body { padding: 1.2em; } nav ol { columns: 1; } .facts > div, dl.small > div { grid-template-columns: 1fr; } }
`;

/** The drawing keeps its white sheet: its inks are for paper. */
const dark = `
:root { color-scheme: dark; --ink: #e8e8e8; --faint: #b4b4b4; --line: #6e6e6e; --rule: #e8e8e8; --paper: #161616; --focus: #8fc1f0; }
.error { --mark: #ff9d92; }
.warning { --mark: #f2ba66; }
.info { --mark: #8fc1f0; }
.hint { --mark: #b4b4b4; }
`;

const print = `
body { font-size: 9pt; page: upright; }
section.portrait, figure.portrait { page: upright; }
section.landscape, figure.landscape { page: lying; }
.new-page { break-before: page; }
h1, h2, h3, caption, .notice-title { break-after: avoid; }
thead { display: table-header-group; }
tr, .finding, .notice, figure, .facts > div { break-inside: avoid; }
p { orphans: 3; widows: 3; }
table { font-size: 7.5pt; }
table.many-columns { font-size: 6.5pt; }
.many-columns th, .many-columns td { padding: 0.28em 0.4em; }
.drawing svg { width: auto; }
figure.landscape .drawing svg { max-height: 150mm; }
figure.portrait .drawing svg { max-height: 225mm; }
nav ol { columns: 3; max-width: none; }
details, footer { display: none; }
a { text-decoration: none; }
`;
