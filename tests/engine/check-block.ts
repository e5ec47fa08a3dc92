import { checkBlock } from './check-cases.ts';

/** A process of `check:engine`: checks each block that it is sent and answers with the faults. */
process.on('message', (message) => {
  const { block, cases, seed } = message as { block: number; cases: number; seed: number };
  process.send!(checkBlock(block, cases, seed));
});
