import { type Simulation, simulate } from '../index.ts';
import type { Stage } from '../vocabulary.ts';
import { readArguments, stop } from './arguments.ts';
import { besideRandom, runsOf } from './simulate-runs.ts';
import { inWords } from './simulate-words.ts';

const USAGE = `Usage: npm run -s simulate -- --seed S --pupils N --problems K --slip P [--stage bars|record|cells|paper] [--set designed|random] [--json]
Without --stage: all four stages, the figures of paper first. Without --set: problems chosen by set design, with random problems beside.`;
const LIMITS = { seed: 2 ** 32 - 1, pupils: 100_000, problems: 40, slip: 0.5 } as const;
const PLAYED: readonly Stage[] = ['bars', 'record', 'cells', 'paper'];
const SETS: readonly Simulation['set'][] = ['designed', 'random'];

const { words, options } = readArguments(
  process.argv.slice(2),
  { flags: ['json'], options: ['seed', 'pupils', 'problems', 'slip', 'stage', 'set'] },
  USAGE,
);
if (words.length > 0) stop(USAGE, 2);

function numberOf(name: keyof typeof LIMITS, whole: boolean): number {
  const written = options[name];
  const value = Number(written);
  const isNumber = typeof written === 'string' && /^\d+(\.\d+)?$/.test(written);
  if (!isNumber || value > LIMITS[name] || (whole && !Number.isInteger(value))) {
    stop(`--${name} is missing or no number from 0 to ${LIMITS[name]}.\n${USAGE}`, 2);
  }
  return value;
}

/** The one that is named, or all. */
function choice<T extends string>(name: 'stage' | 'set', from: readonly T[]): readonly T[] {
  const named = options[name];
  if (named === undefined) return from;
  const known = from.find((each) => each === named);
  return known === undefined ? stop(`--${name} is none of ${from.join(', ')}.`, 2) : [known];
}

const run = {
  seed: numberOf('seed', true),
  pupils: numberOf('pupils', true),
  problems: numberOf('problems', true),
  slip: numberOf('slip', false),
};
const [stages, sets] = [choice('stage', PLAYED), choice('set', SETS)];
const simulations = stages.flatMap((stage) => sets.map((set) => ({ ...run, stage, set })));
if (simulations.length === 1) {
  const result = simulate(simulations[0]!);
  if (!result.ok) stop(`${result.fault.at}: ${result.fault.code}`, 1);
  console.log(options.json ? JSON.stringify(result.value) : inWords([result.value]));
} else {
  const all = await runsOf(simulations);
  console.log(options.json ? JSON.stringify(besideRandom(all)) : inWords(all));
}
