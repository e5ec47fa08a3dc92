/** Marked-up text; everything else put into a page is escaped. */
export interface Html {
  markup: string;
}

type Piece = Html | string | number | null | readonly Html[];

const escapeText = (text: string): string =>
  text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replaceAll("'", '&#39;');

const write = (piece: Piece): string => {
  if (piece === null) return '';
  if (typeof piece === 'string' || typeof piece === 'number') return escapeText(String(piece));
  if ('markup' in piece) return piece.markup;
  return piece.map((one) => one.markup).join('\n');
};

export const html = (texts: TemplateStringsArray, ...pieces: Piece[]): Html => ({
  markup: texts.map((text, index) => text + write(pieces[index] ?? null)).join(''),
});

/** A page that posts its form by itself: how a platform passes a browser on. */
export const autoPost = (action: string, fields: Record<string, string>): string => {
  const inputs = Object.entries(fields).map(
    ([name, value]) => html`<input type="hidden" name="${name}" value="${value}">`,
  );
  return html`<!doctype html><html lang="en"><meta charset="utf-8"><title>One moment</title>
<form id="form" method="post" action="${action}">
${inputs}
<noscript><button>Go on</button></noscript></form>
<script>document.getElementById('form').submit();</script></html>`.markup;
};
