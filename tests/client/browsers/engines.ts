import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';
import { openFirefox } from './firefox.ts';
import type { Remote } from './remote.ts';
import { openWebKit } from './webkit.ts';

export interface Engine {
  readonly name: string;
  /** The commands that it needs, each with the Debian package that brings it. */
  readonly needs: Readonly<Record<string, string>>;
  open(): Promise<Remote>;
}

export const FIREFOX: Engine = {
  name: 'Firefox',
  needs: { 'firefox-esr': 'firefox-esr' },
  open: openFirefox,
};

export const WEBKIT: Engine = {
  name: 'WebKit',
  needs: { WebKitWebDriver: 'webkit2gtk-driver', Xvfb: 'xvfb' },
  open: openWebKit,
};

const isThere = (command: string): boolean =>
  (process.env['PATH'] ?? '').split(delimiter).some((folder) => {
    try {
      accessSync(join(folder, command), constants.X_OK);
      return true;
    } catch {
      return false;
    }
  });

/** What to do where an engine cannot be started; null where it can. */
export const lacking = ({ needs }: Engine): string | null => {
  const packages = Object.keys(needs)
    .filter((command) => !isThere(command))
    .map((command) => needs[command]);
  return packages.length === 0
    ? null
    : `not installed: apt-get install --no-install-recommends ${packages.join(' ')}`;
};
