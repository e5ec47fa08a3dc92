import { designSet, type SetDesign } from '../index.ts';
import { STAGES } from '../vocabulary.ts';
import { readArguments, stop } from './arguments.ts';

const USAGE = 'Usage: npm run -s design -- [--stage bars|record|cells|paper] [--json]';

const { words, options } = readArguments(
  process.argv.slice(2),
  { flags: ['json'], options: ['stage'] },
  USAGE,
);
const stage = STAGES.find((each) => each === (options.stage ?? 'paper'));
if (words.length > 0 || stage === undefined) stop(USAGE, 2);
const design = designSet(stage);
if (!design.ok) stop(USAGE, 2);
console.log(options.json ? JSON.stringify(design.value) : inWords(design.value).join('\n'));

function inWords(set: SetDesign): string[] {
  const [least, mean, most] = set.randomSets.map((share) => (100 * share).toFixed(2));
  const patterns = Object.keys(set.table).length;
  return [
    `${set.problems.length} problems: no fewer of ${set.pool} part all ${patterns} patterns from each other and from the right way.`,
    ...partingInWords(set),
    '',
    'Outcome in each problem (0: all right), by pattern. Two that differ in a column are parted by its problem.',
    ...Object.entries(set.table).map(([id, outcomes]) => `${outcomes.join('\t')}\t${id}`),
    '',
    ...inseparableInWords(set),
    '',
    `Random sets of this size part: ${least} % of the pairs at least, ${mean} % on average, ${most} % at most.`,
  ];
}

function partingInWords({ problems, parting }: SetDesign): string[] {
  return problems.flatMap(([one, other], at) => {
    const { parts, alone } = parting[at]!;
    const pairs = alone.map(([first, second]) => `  ${first ?? 'the right way'} | ${second}`);
    return [
      '',
      `${one} × ${other} parts ${parts} pairs; it alone parts ${alone.length}:`,
      ...pairs,
    ];
  });
}

/** Each pair parted is seen in the table; each that is not was played through in all problems. */
function inseparableInWords({ inseparable }: SetDesign): string[] {
  if (inseparable.length === 0) {
    return ['No two are inseparable: each pair differs in some column of the table.'];
  }
  return [
    'Inseparable, for their actions are the same in all 81,000 problems of three by two digits:',
    ...inseparable.map((pair) => `  ${pair.join(' | ')}`),
  ];
}
