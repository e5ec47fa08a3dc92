import type { ChildProcess } from './child-process.ts';

export interface Kept {
  stop(): Promise<void>;
}

const CALM = 60_000;
const MOST_IN_A_ROW = 3;

/**
 * Starts a process again whenever it ends by itself, and says so; after three ends within a minute of their starts it
 * reports the last words and gives up.
 */
export const keepRunning = async (
  name: string,
  start: () => Promise<ChildProcess>,
  giveUp: (reason: string) => void,
): Promise<Kept> => {
  let stopping = false;
  let child = await start();
  const watch = async () => {
    let inARow = 0;
    while (!stopping) {
      const how = await child.ended;
      if (stopping) return;
      inARow = Date.now() - child.startedAt < CALM ? inARow + 1 : 1;
      if (inARow >= MOST_IN_A_ROW) {
        return giveUp(`${name} keeps ending (${how}):\n${await child.lastWords()}`);
      }
      console.error(`${name} ended (${how}); starting it again.`);
      child = await start();
    }
  };
  const watched = watch().catch((error: Error) => giveUp(`${name}: ${error.message}`));
  return {
    async stop() {
      stopping = true;
      await child.stop();
      await watched;
    },
  };
};
