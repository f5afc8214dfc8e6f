/** The addresses and the secret that connect a page to its tab. */
export interface PageFrame {
  /** Fresh for each page: only the script below can run. */
  readonly nonce: string;
  /** The origin of the extension's own files, as a policy names it. */
  readonly source: string;
  readonly script: string;
  readonly style: string;
}

/** A whole page: its policy lets one script and one style sheet through, and nothing else. */
export function framedPage(
  { nonce, source, script, style }: PageFrame,
  { title, body }: { readonly title: string; readonly body: string },
): string {
  const policy = `default-src 'none'; script-src 'nonce-${nonce}'; style-src ${source}; base-uri 'none'; form-action 'none'`;
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${attribute(policy)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<link rel="stylesheet" href="${attribute(style)}">
<title>${title}</title>
</head>
<body>
${body}
<script nonce="${attribute(nonce)}" src="${attribute(script)}"></script>
</body>
</html>
`;
}

function attribute(text: string): string {
  return text.replaceAll("&", "&amp;").replaceAll('"', "&quot;").replaceAll("<", "&lt;");
}
