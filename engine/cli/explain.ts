import { type Explanation, explain } from '../index.ts';
import { readArguments, stop } from './arguments.ts';
import { workIn } from './work-file.ts';

const USAGE = 'Usage: npm run -s explain -- FILE… [--json]';

function inWords({ reported, unnamed, notTested }: Explanation, files: readonly string[]): string {
  const named = reported.map(({ ids, posterior, steps }) => {
    const where = steps.map(({ work, step }) => `${files[work]} ${step}`).join(', ');
    return `${ids.join(' or ')} (${(100 * posterior).toFixed(1)} %): ${where}`;
  });
  const nothing = unnamed ? [] : ['No pattern: what is wrong looks like single slips.'];
  const regular = unnamed ? ['Something regular that fits no pattern known here.'] : [];
  const untested = notTested.length === 0 ? [] : [`Not tested: ${notTested.join(', ')}.`];
  return [...(named.length === 0 ? nothing : named), ...regular, ...untested].join('\n');
}

const { words, options } = readArguments(
  process.argv.slice(2),
  { flags: ['json'], options: [] },
  USAGE,
);
if (words.length === 0) stop(USAGE, 2);
const explanation = explain(words.map(workIn));
console.log(options.json ? JSON.stringify(explanation) : inWords(explanation, words));
