/** The built pages of the browser's side, each with its block of data. */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';

export interface Pages {
  /** The page of the work, with what it needs to sign in. Null when it is not built. */
  launch(block: object): Promise<string | null>;
  /** The page that keeps this browser's proof before the platform's sign-in. Null when it is not built. */
  login(block: object): Promise<string | null>;
}

interface Manifest {
  [entry: string]: { file: string };
}

const PLACE = '<!--boot-->';
const LOGIN_ENTRY = 'launch/login.ts';

/** Read anew each time: both files are small, and a new build counts at once. */
export function createPages(folder: string): Pages {
  return {
    async launch(block) {
      const html = await textOf(join(folder, 'index.html'));
      return html?.includes(PLACE) ? html.replace(PLACE, () => dataBlock('boot', block)) : null;
    },

    async login(block) {
      const manifest = await textOf(join(folder, '.vite', 'manifest.json'));
      const entry = manifest === null ? undefined : (JSON.parse(manifest) as Manifest)[LOGIN_ENTRY];
      return entry === undefined ? null : loginHtml(entry.file, block);
    },
  };
}

function loginHtml(script: string, block: object): string {
  return `<!doctype html>
<html lang="en">
<head><meta charset="utf-8"><title>Placeweave</title><link rel="icon" href="data:,"></head>
<body>${dataBlock('login', block)}<script type="module" src="/${script}"></script></body>
</html>`;
}

/** Data in a page: no text in it can end the element. */
function dataBlock(id: string, block: object): string {
  const json = JSON.stringify(block).replaceAll('<', '\\u003c');
  return `<script type="application/json" id="${id}">${json}</script>`;
}

function textOf(path: string): Promise<string | null> {
  return readFile(path, 'utf8').catch(() => null);
}
