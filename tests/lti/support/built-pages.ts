import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

const client = fileURLToPath(new URL('../../../client/', import.meta.url));

/** A page that signs in with the real code and shows what came of it, without the work behind it. */
const PAGE = `
import { signIn } from '${client}launch/confirm.ts';
import { openInTab } from '${client}launch/open-tab.ts';
const outcome = await signIn();
document.body.dataset.outcome = JSON.stringify(outcome);
const button = document.querySelector('button');
button.onclick = () => openInTab(outcome.problem.reopen);
`;

/** Builds the browser's side of a launch into a folder of its own, and gives its path. */
export async function buildPages(): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'launch-pages-'));
  const entry = join(folder, 'page.ts');
  const outDir = join(folder, 'dist');
  writeFileSync(entry, PAGE);
  await build({
    root: client,
    configFile: false,
    logLevel: 'silent',
    build: {
      ...{ outDir, manifest: true, target: 'es2022', modulePreload: { polyfill: false } },
      rollupOptions: { input: { login: join(client, 'launch/login.ts'), page: entry } },
    },
  });
  const manifest = JSON.parse(readFileSync(join(outDir, '.vite', 'manifest.json'), 'utf8'));
  const page = Object.values<{ name: string; file: string }>(manifest).find(
    ({ name }) => name === 'page',
  );
  const html = `<!doctype html><body><button>open</button><!--boot--><script type="module" src="/${page?.file}"></script></body>`;
  writeFileSync(join(outDir, 'index.html'), html);
  return outDir;
}
