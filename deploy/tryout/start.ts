/**
 * `npm start`: the tool with its database and the try-out school beside it, on one address.
 * `npm start -- --check`: the same without people, see check/check.ts.
 */
import { resolve } from 'node:path';
import { ROOT } from './child-process.ts';
import { type Kept, keepRunning } from './keep-running.ts';
import { prepare, startSchool, startTool } from './stack.ts';

/** npm ends its shell but not what runs in it; then there is nobody left to talk to. */
const whenParentEnds = (then: () => void): void => {
  const parent = process.ppid;
  setInterval(() => process.ppid !== parent && then(), 500).unref();
};

const run = async (): Promise<void> => {
  const running: Kept[] = [];
  let leaving: Promise<never> | null = null;
  const leave = (code: number, reason?: string): Promise<never> => {
    leaving ??= (async () => {
      if (reason) console.error(reason);
      await Promise.all(running.map((one) => one.stop()));
      process.exit(code);
    })();
    return leaving;
  };
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => leave(0));
  whenParentEnds(() => leave(0));
  const giveUp = (reason: string) => void leave(1, reason);
  try {
    const plan = await prepare(resolve(ROOT, process.env.PLACEWEAVE_DATA ?? '.data'));
    running.push(
      ...(await Promise.all([
        keepRunning('The tool', () => startTool(plan), giveUp),
        keepRunning('The school', () => startSchool(plan), giveUp),
      ])),
    );
    console.log(`\nHarbour Lane School is open:  ${plan.school}\n(Ctrl-C closes it.)`);
  } catch (error) {
    giveUp((error as Error).message);
  }
};

if (process.env.NODE_ENV === 'production') {
  console.error('npm start is for trying things out; in production run the server alone.');
  process.exitCode = 2;
} else if (process.argv.includes('--check')) {
  const { check } = await import('./check/check.ts');
  process.exitCode = await check();
} else {
  await run();
}
