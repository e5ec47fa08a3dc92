import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { setTimeout as sleep } from 'node:timers/promises';
import type { Remote } from './remote.ts';

interface Size {
  readonly width: number;
  readonly height: number;
}

type Command = <T = unknown>(method: string, path: string, body?: object) => Promise<T>;

/** WebDriver (W3C) over HTTP, of which one page needs a handful of commands. */
const commandTo =
  (address: string): Command =>
  async <T>(method: string, path: string, body?: object) => {
    const request = { method, ...(body !== undefined && { body: JSON.stringify(body) }) };
    const answer = await fetch(address + path, request);
    const { value } = (await answer.json()) as { value: T & { error?: string; message?: string } };
    if (!answer.ok) throw new Error(`${path}: ${value.error}: ${value.message}`);
    return value;
  };

const freePort = async (): Promise<number> => {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port } = server.address() as { port: number };
  server.close();
  await once(server, 'close');
  return port;
};

/** With its tools the window is never narrower than about this. */
const NARROWEST = 480;

/** A display that nobody sees, with a number that nobody uses. */
const openDisplay = async (): Promise<{ display: string; xvfb: ChildProcess }> => {
  const screen = ['-screen', '0', '1600x1200x24'];
  const xvfb = spawn('Xvfb', ['-displayfd', '3', '-nolisten', 'tcp', ...screen], {
    stdio: ['ignore', 'ignore', 'ignore', 'pipe'],
  });
  const told = xvfb.stdio[3];
  if (!told) throw new Error('the display tells its number');
  const [number] = await once(createInterface({ input: told as NodeJS.ReadableStream }), 'line');
  return { display: `:${number}`, xvfb };
};

const untilReady = async (command: Command): Promise<void> => {
  for (let tries = 0; ; tries += 1) {
    const ready = await command<{ ready: boolean }>('GET', '/status').catch(() => null);
    if (ready?.ready) return;
    if (tries > 200) throw new Error('WebKitWebDriver never answered');
    await sleep(50);
  }
};

/** Debian's WebKitGTK on a display that nobody sees, over WebDriver. */
export const openWebKit = async (): Promise<Remote> => {
  const home = await mkdtemp(join(tmpdir(), 'placeweave-webkit-'));
  await mkdir(join(home, 'gtk-3.0'));
  await writeFile(join(home, 'gtk-3.0', 'settings.ini'), '[Settings]\ngtk-enable-animations=0\n');
  const { display, xvfb } = await openDisplay();
  const port = await freePort();
  const driver = spawn('WebKitWebDriver', [`--port=${port}`], {
    stdio: 'ignore',
    env: {
      ...process.env,
      DISPLAY: display,
      GDK_BACKEND: 'x11',
      XDG_CONFIG_HOME: home,
      // Painting over shared memory costs half of what it does where there is no graphics card.
      WEBKIT_DISABLE_DMABUF_RENDERER: '1',
    },
  });
  const ended = Promise.all([once(driver, 'exit'), once(xvfb, 'exit')]);
  const command = commandTo(`http://127.0.0.1:${port}`);
  await untilReady(command);
  const { sessionId } = await command<{ sessionId: string }>('POST', '/session', {
    capabilities: {},
  });
  const session = `/session/${sessionId}`;
  const evaluate = (expression: string) =>
    command<string>('POST', `${session}/execute/sync`, {
      script: `return ${expression}`,
      args: [],
    });
  /** The window's page once the window has the size: both take it some time after they were asked to. */
  const sized = async (size: Size, isThere: (page: Size) => boolean): Promise<Size> => {
    await command('POST', `${session}/window/rect`, size);
    for (let tries = 0; ; tries += 1) {
      const page = JSON.parse(
        await evaluate('JSON.stringify({ width: innerWidth, height: innerHeight })'),
      );
      if (isThere(page)) return page;
      if (tries > 1_000)
        throw new Error(`${JSON.stringify(size)}: the page has ${JSON.stringify(page)}`);
      await sleep(20);
    }
  };
  // Nothing is beside the page: when it is as wide as the window it is as high, too, but for what is above it.
  const sample = { width: 1013, height: 700 };
  const above = sample.height - (await sized(sample, ({ width }) => width === sample.width)).height;
  return {
    name: 'WebKit',
    evaluate,
    go: async (url) => void (await command('POST', `${session}/url`, { url })),
    resize: async (least, height) => {
      const width = Math.max(least, NARROWEST);
      await sized(
        { width, height: height + above },
        (page) => page.width === width && page.height === height,
      );
    },
    perform: async (source) =>
      void (await command('POST', `${session}/actions`, { actions: [source] })),
    close: async () => {
      await command('DELETE', session).catch(() => {});
      driver.kill();
      xvfb.kill();
      await ended;
      await rm(home, { recursive: true, force: true });
    },
  };
};
