import { canPlay, designSet } from '../index.ts';
import { STAGES } from '../vocabulary.ts';
import { readArguments, stop } from './arguments.ts';

const USAGE = 'Usage: npm run -s design -- [--stage paper] [--json]';

const { words, options } = readArguments(
  process.argv.slice(2),
  { flags: ['json'], options: ['stage'] },
  USAGE,
);
const stage = STAGES.find((each) => each === (options.stage ?? 'paper'));
if (words.length > 0 || stage === undefined || !canPlay(stage)) stop(USAGE, 2);
const design = designSet(stage);
if (options.json) console.log(JSON.stringify(design));
else {
  const { problems, table, inseparable, randomSets } = design;
  const rows = Object.entries(table).map(([id, outcomes]) => `${outcomes.join('\t')}\t${id}`);
  const percent = randomSets.map((share) => (100 * share).toFixed(1)).join(', ');
  console.log(problems.map(([one, other]) => `${one} × ${other}`).join('\n'));
  console.log(['', 'Outcome in each problem (0: all right), by pattern', ...rows].join('\n'));
  console.log(`\nDone alike in every problem of three by two digits: ${inseparable.length} pairs`);
  for (const pair of inseparable) console.log(pair.join(' = '));
  console.log(`\nRandom sets of this size part (%; least, mean, most): ${percent}`);
}
