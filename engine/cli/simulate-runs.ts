import { spawn } from 'node:child_process';
import { availableParallelism } from 'node:os';
import { text } from 'node:stream/consumers';
import type { Simulated, Simulation } from '../index.ts';
import { stop } from './arguments.ts';

/** One run in a process of its own: as if it alone had been asked for. */
async function runOf(simulation: Simulation): Promise<Simulated> {
  const options = Object.entries(simulation).flatMap(([name, value]) => [`--${name}`, `${value}`]);
  const child = spawn(
    process.execPath,
    [...process.execArgv, process.argv[1]!, ...options, '--json'],
    { stdio: ['ignore', 'pipe', 'inherit'] },
  );
  const ended = new Promise<number | null>((done) => child.on('close', done));
  const written = await text(child.stdout);
  if ((await ended) !== 0) stop(`${simulation.stage}: the run broke off`, 1);
  return JSON.parse(written);
}

/** The runs in their order, as many at once as there are processors. What comes of them does not hang on it. */
export async function runsOf(simulations: readonly Simulation[]): Promise<readonly Simulated[]> {
  const results: Simulated[] = [];
  const waiting = [...simulations.entries()];
  const work = async (): Promise<void> => {
    for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) {
      results[next[0]] = await runOf(next[1]);
    }
  };
  await Promise.all(Array.from({ length: availableParallelism() }, work));
  return results;
}

type Beside = Simulated & { readonly random?: Simulated };

/** By stage, the figures for random problems beside; the last stage's stand on top, too. */
export function besideRandom(
  runs: readonly Simulated[],
): Beside & { readonly stages: Readonly<Record<string, Beside>> } {
  const stages: Record<string, Beside> = {};
  for (const run of runs) {
    const designed = stages[run.stage];
    stages[run.stage] = designed === undefined ? run : { ...designed, random: run };
  }
  return { ...stages[runs.at(-1)!.stage]!, stages };
}
