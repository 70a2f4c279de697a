export const escaped = (text: string): string =>
  text.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;").replace(/"/g, "&quot;");
export const marked = (text: string): string => escaped(text).replace(/`([^`]+)`/g, "<code>$1</code>");

export const list = (items: readonly string[]): string => `<ul>${items.map((item) => `<li>${item}</li>`).join("")}</ul>`;

/** A table that may be wider than a phone: it is scrolled by keys too. */
export const scrolled = (name: string, table: string): string =>
  `<div class="scroll" tabindex="0" role="region" aria-label="${escaped(name)}">${table}</div>`;

/** A page of the help; one with a script of its own brings a style of its own too. */
export const page = (title: string, body: string, own?: string): string => `<!doctype html>
<html lang="en">
  <head>
    <meta charset="utf-8">
    <meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; base-uri 'none'; form-action 'none'">
    <meta name="viewport" content="width=device-width, initial-scale=1">
    <title>${escaped(title)} - Porewise</title>
    <link rel="stylesheet" href="../taskpane.css">
    <link rel="stylesheet" href="help.css">
${own ? `    <link rel="stylesheet" href="${own}.css">\n` : ""}    <script defer src="help.js"></script>
${own ? `    <script defer src="${own}.js"></script>\n` : ""}  </head>
  <body>
    <main>
${body}
    </main>
  </body>
</html>
`;

export const back = '<p class="back"><a href="index.html">All questions</a></p>';
