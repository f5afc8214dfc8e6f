/** The addresses and the secret that connect a page to its panel. */
export interface PageFrame {
  /** Fresh for each page: only the script below can run. */
  readonly nonce: string;
  /** The origin of the extension's own files, as a policy names it. */
  readonly source: string;
  readonly script: string;
  readonly style: string;
}

/**
 * The page of a diagram panel, empty. It contains no text of any plan: all content comes later, as messages, and is set as text
 * or as a checked picture.
 */
export function pageHtml({ nonce, source, script, style }: PageFrame): string {
  const policy = `default-src 'none'; script-src 'nonce-${nonce}'; style-src ${source}; base-uri 'none'; form-action 'none'`;
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${attribute(policy)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<link rel="stylesheet" href="${attribute(style)}">
<title>Wiring diagram</title>
</head>
<body>
<header>
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
<section id="details" aria-label="Details" aria-live="polite"></section>
<script nonce="${attribute(nonce)}" src="${attribute(script)}"></script>
</body>
</html>
`;
}

function attribute(text: string): string {
  return text.replaceAll("&", "&amp;").replaceAll('"', "&quot;").replaceAll("<", "&lt;");
}
