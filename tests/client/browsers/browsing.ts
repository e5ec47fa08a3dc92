import { afterAll, beforeAll } from 'vitest';
import { PageServer } from '../../support/page-server.ts';
import type { Browsing, Window } from '../child-runs.ts';
import type { Engine } from './engines.ts';
import type { Remote } from './remote.ts';
import { RemotePage } from './remote-page.ts';

/** Whether a finger of this browser is one to the page, too. */
const feelsFingers = async (remote: Remote): Promise<boolean> => {
  await remote.evaluate(`(addEventListener('pointerdown',
    ({ pointerType }) => { document.title = pointerType; }, { once: true }), '')`);
  const actions = [
    { type: 'pointerMove', x: 2, y: 2, duration: 0 },
    { type: 'pointerDown', button: 0 },
    { type: 'pointerUp', button: 0 },
  ] as const;
  const parameters = { pointerType: 'touch' } as const;
  await remote.perform({ type: 'pointer', id: 'touch', parameters, actions: [...actions] });
  return (await remote.evaluate('document.title')) === 'touch';
};

/** The built pages and one browser of an engine for a test file, there before its tests and gone after them. */
export const browsingForFile = (engine: Engine): Browsing & { readonly remote: Remote } => {
  const server = new PageServer();
  let started: { remote: Remote; address: string; touch: boolean } | undefined;
  const there = () => {
    if (started === undefined) throw new Error('the browser opens before the first test');
    return started;
  };
  beforeAll(async () => {
    const [address, remote] = await Promise.all([server.start(), engine.open()]);
    await remote.go(`${address}/work`);
    started = { remote, address, touch: await feelsFingers(remote) };
  });
  afterAll(async () => {
    await started?.remote.close();
    await server.stop();
  });

  const visit = async (token: string, { width, height }: Window) => {
    const { remote, address } = there();
    await remote.resize(width, height);
    const session = { token, expiresIn: 3600, since: Date.now(), view: 'work' };
    const kept = JSON.stringify(JSON.stringify(session));
    await remote.go(`${address}/work`);
    await remote.evaluate(`(sessionStorage.setItem('session', ${kept}), '')`);
    await remote.go(`${address}/work`);
    return { page: new RemotePage(remote), close: async () => {} };
  };

  return {
    server,
    visit,
    untouchable: () => (there().touch ? null : `${engine.name}'s driver makes a mouse of a finger`),
    get remote() {
      return there().remote;
    },
  };
};
