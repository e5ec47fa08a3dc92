import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { WebSocket } from 'undici';
import type { Remote } from './remote.ts';

/** Firefox sets the other settings of a driven browser itself. */
const SETTINGS = [
  'user_pref("ui.prefersReducedMotion", 1);',
  'user_pref("browser.shell.checkDefaultBrowser", false);',
  'user_pref("datareporting.policy.dataSubmissionEnabled", false);',
  'user_pref("app.update.enabled", false);',
  'user_pref("dom.w3c_touch_events.enabled", 1);',
].join('\n');

type Command = <T = unknown>(method: string, params: object) => Promise<T>;

/** A connection in WebDriver BiDi (W3C), of which one page needs a handful of commands. */
const connect = async (address: string): Promise<{ command: Command; shut: () => void }> => {
  const socket = new WebSocket(address);
  const waiting = new Map<number, PromiseWithResolvers>();
  let last = 0;
  socket.addEventListener('message', ({ data }) => {
    const { id, type, result, error, message } = JSON.parse(data);
    const asked = waiting.get(id);
    waiting.delete(id);
    if (type === 'success') asked?.resolve(result);
    else asked?.reject(new Error(`${error}: ${message}`));
  });
  await new Promise((resolve, reject) => {
    socket.addEventListener('open', resolve);
    socket.addEventListener('error', reject);
  });
  const command: Command = (method, params) =>
    new Promise((resolve, reject) => {
      last += 1;
      waiting.set(last, { resolve: resolve as (value: unknown) => void, reject });
      socket.send(JSON.stringify({ id: last, method, params }));
    });
  return { command, shut: () => socket.close() };
};

interface PromiseWithResolvers {
  resolve(value: unknown): void;
  reject(error: Error): void;
}

const addressOf = (firefox: ChildProcess): Promise<string> =>
  new Promise((resolve, reject) => {
    firefox.on('exit', (code) => reject(new Error(`Firefox ended with ${code}`)));
    if (firefox.stderr === null) return;
    createInterface({ input: firefox.stderr }).on('line', (line) => {
      const address = /WebDriver BiDi listening on (ws:\S+)/.exec(line)?.[1];
      if (address !== undefined) resolve(`${address}/session`);
    });
  });

interface Evaluated {
  type: 'success' | 'exception';
  result: { value: string };
  exceptionDetails?: { text: string };
}

/** Debian's Firefox without a window, over WebDriver BiDi. */
export const openFirefox = async (): Promise<Remote> => {
  const profile = await mkdtemp(join(tmpdir(), 'placeweave-firefox-'));
  await writeFile(join(profile, 'user.js'), SETTINGS);
  const args = ['--headless', '--remote-debugging-port=0', '--no-remote', '--profile', profile];
  const firefox = spawn('firefox-esr', args, { stdio: ['ignore', 'ignore', 'pipe'] });
  const ended = once(firefox, 'exit');
  const { command, shut } = await connect(await addressOf(firefox));
  await command('session.new', { capabilities: {} });
  const { context } = await command<{ context: string }>('browsingContext.create', { type: 'tab' });
  return {
    name: 'Firefox',
    go: async (url) =>
      void (await command('browsingContext.navigate', { context, url, wait: 'complete' })),
    resize: async (width, height) =>
      void (await command('browsingContext.setViewport', { context, viewport: { width, height } })),
    evaluate: async (expression) => {
      const { type, result, exceptionDetails } = await command<Evaluated>('script.evaluate', {
        expression,
        target: { context },
        awaitPromise: true,
      });
      if (type === 'exception') throw new Error(exceptionDetails?.text);
      return result.value;
    },
    perform: async (source) =>
      void (await command('input.performActions', { context, actions: [source] })),
    close: async () => {
      await command('browser.close', {}).catch(() => {});
      shut();
      await ended;
      await rm(profile, { recursive: true, force: true });
    },
  };
};
