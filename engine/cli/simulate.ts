import { simulate } from '../index.ts';
import { STAGES, type Stage } from '../vocabulary.ts';
import { readArguments, stop } from './arguments.ts';

const USAGE =
  'Usage: npm run -s simulate -- --seed S --pupils N --problems K --slip P [--stage paper] [--set designed|random] [--json]';
const LIMITS = { seed: 2 ** 32 - 1, pupils: 100_000, problems: 40, slip: 0.5 } as const;

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

function stageOf(): Stage {
  const stage = STAGES.find((each) => each === (options.stage ?? 'paper'));
  return stage ?? stop(`--stage is none of ${STAGES.join(', ')}.`, 2);
}

function setOf(): 'designed' | 'random' {
  const set = options.set ?? 'designed';
  return set === 'designed' || set === 'random' ? set : stop(USAGE, 2);
}

const result = simulate({
  seed: numberOf('seed', true),
  pupils: numberOf('pupils', true),
  problems: numberOf('problems', true),
  slip: numberOf('slip', false),
  stage: stageOf(),
  set: setOf(),
});
if (!result.ok) stop(`${result.fault.at}: ${result.fault.code}`, 1);
console.log(JSON.stringify(result.value, null, options.json ? undefined : 2));
