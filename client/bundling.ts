import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { brotliCompressSync, constants, gzipSync } from 'node:zlib';
import type { Plugin } from 'vite';

/** Styles lose what only people read: line breaks and the blanks round signs. Blanks that mean something stay. */
const thinStyles = (css: string): string =>
  css
    .replace(/\s*\n\s*/g, ' ')
    .replace(/ ?([{};,]) ?/g, '$1')
    .replace(/: /g, ':')
    .replace(/;}/g, '}');

/** In markup a run of blanks with a line break in it shows as one blank. */
const thinMarkup = (markup: string): string => markup.replace(/\s*\n\s*/g, ' ');

/** Takes the lay-out of templates away before bundling: a child's page has a budget, and no minifier looks inside them. */
export const thinTemplates = (): Plugin => ({
  name: 'thin-templates',
  enforce: 'pre',
  apply: 'build',
  transform: (code, id) =>
    /\/client\/.*\.ts$/.test(id)
      ? code.replace(/\bcss`[^`]*`/g, thinStyles).replace(/\b(?:html|svg)`[^`]*`/g, thinMarkup)
      : null,
});

/** The bundler's own wrapper round `import()` only fetches styles ahead, and no part here has styles of its own. */
export const plainImports = (): Plugin => ({
  name: 'plain-imports',
  enforce: 'pre',
  apply: 'build',
  load: (id) =>
    id.endsWith('vite/preload-helper.js') ? 'export const __vitePreload = (load) => load();' : null,
});

/** Lays each script and style beside itself as tightly as can be: compressed once at a build, not at every request. */
export const compressedBeside = (): Plugin => ({
  name: 'compressed-beside',
  apply: 'build',
  // As it lies in the folder: a bundle may still be changed while it is written.
  writeBundle({ dir = '' }, bundle) {
    for (const name of Object.keys(bundle).filter((each) => /\.(js|css)$/.test(each))) {
      const whole = readFileSync(join(dir, name));
      writeFileSync(join(dir, `${name}.br`), brotliCompressSync(whole));
      writeFileSync(
        join(dir, `${name}.gz`),
        gzipSync(whole, { level: constants.Z_BEST_COMPRESSION }),
      );
    }
  },
});
