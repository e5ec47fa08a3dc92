import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';
import { compressedBeside, plainImports, thinTemplates } from './bundling.ts';
import { CHUNKS } from './chunks.ts';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** Pages by name; the platform's login page is an entry of its own because it must be small and loads nothing of the work. */
const pages = { main: here('index.html'), login: here('launch/login.ts') };

export default defineConfig({
  root: here('.'),
  base: '/',
  plugins: [thinTemplates(), plainImports(), compressedBeside()],
  build: {
    outDir: here('dist'),
    emptyOutDir: true,
    manifest: true,
    target: 'es2022',
    // Every asset stays a file of our own origin: the page's policy allows no data: address but the icon's.
    assetsInlineLimit: 0,
    modulePreload: false,
    rolldownOptions: {
      output: { codeSplitting: { includeDependenciesRecursively: false, groups: CHUNKS } },
      input: Object.fromEntries(Object.entries(pages).filter(([, path]) => existsSync(path))),
    },
  },
});
