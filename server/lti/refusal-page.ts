import { createHash } from 'node:crypto';
import { ADVICE, REFUSALS, type RefusalCode } from './refusals.ts';

const STYLE = `body{margin:0;padding:2rem 1.5rem;font:1.125rem/1.6 system-ui,sans-serif;color:#2b2622;background:#faf6ef}
main{max-width:36rem;margin:0 auto}h1{font-size:1.5rem;line-height:1.3}code{font-size:1rem}
@media(prefers-color-scheme:dark){body{color:#f1eae0;background:#241f1b}}`;

const STYLE_HASH = createHash('sha256').update(STYLE).digest('base64');

/** The page runs nothing and sends nothing: it can only be read. */
export function refusalPolicy(framing: readonly string[]): string {
  const ancestors = ["'self'", ...framing].join(' ');
  return `default-src 'none'; style-src 'sha256-${STYLE_HASH}'; img-src data:; base-uri 'none'; form-action 'none'; frame-ancestors ${ancestors}`;
}

/** What happened, what to do, and the code to pass on. */
export function refusalPage(code: RefusalCode): string {
  const { title, text } = ADVICE[REFUSALS[code].advice];
  return `<!doctype html>
<html lang="en">
<head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title}</title><link rel="icon" href="data:,"><style>${STYLE}</style></head>
<body><main><h1>${title}</h1><p>${text}</p><p>Code: <code>${code}</code></p></main></body>
</html>`;
}
