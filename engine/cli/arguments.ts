/** Usage is exit code 2, bad input 1: what a script can tell apart. */
export function stop(message: string, code: 1 | 2): never {
  process.stderr.write(`${message}\n`);
  process.exit(code);
}

export interface Arguments {
  readonly words: readonly string[];
  readonly options: Readonly<Record<string, string | true>>;
}

/** `--name value` for the named options, `--name` for the flags; anything else is a word. */
export function readArguments(
  given: readonly string[],
  known: { readonly flags: readonly string[]; readonly options: readonly string[] },
  usage: string,
): Arguments {
  const words: string[] = [];
  const options: Record<string, string | true> = {};
  for (let index = 0; index < given.length; index += 1) {
    const word = given[index]!;
    const name = word.slice(2);
    if (!word.startsWith('--')) words.push(word);
    else if (known.flags.includes(name)) options[name] = true;
    else if (known.options.includes(name) && given[index + 1] !== undefined) {
      index += 1;
      options[name] = given[index]!;
    } else stop(`Unknown or incomplete option ${word}.\n${usage}`, 2);
  }
  return { words, options };
}

/** A fault in words for the command line. */
export function faultText(fault: { readonly code: string; readonly at: string }): string {
  const { code, at, ...values } = fault;
  const rest = Object.entries(values).map(([name, value]) => `${name} ${JSON.stringify(value)}`);
  if (code === 'doesNotFit')
    return `${at}: does not fit on the mat; size needed: ${rest.join(', ')}`;
  if (code === 'impossible') return `no problem satisfies these together: ${clausesText(values)}`;
  if (code === 'tooLarge') return tooLargeText(at, values);
  const known = CODES[code] ?? code;
  return `${at}: ${known}${rest.length === 0 ? '' : ` (${rest.join(', ')})`}`;
}

interface Values {
  readonly clauses?: readonly { readonly at: string; readonly written: unknown }[];
  readonly limit?: { readonly multiplicand: number; readonly multiplier: number };
  readonly because?: readonly string[];
}

/** The smallest set of clauses that cannot hold together, each with what was written. */
function clausesText({ clauses = [] }: Values): string {
  return clauses.map(({ at, written }) => `${at} ${JSON.stringify(written)}`).join('; ');
}

function tooLargeText(at: string, { limit, because = [] }: Values): string {
  const size = `${limit?.multiplicand} × ${limit?.multiplier} digits`;
  return `${at}: with ${because.join(', ')} problems are counted up to ${size}`;
}

const CODES: Readonly<Record<string, string>> = {
  notText: 'is missing or no text',
  notANumber: 'is not a number written in digits, with "." for the point',
  tooLong: 'is too long',
  unknownWord: 'is not a word that is known here',
  unknownField: 'is not a field that is known here',
  notForThisStage: 'does not belong to this stage',
  oneRowOnly: 'has more than one digit: this stage has one row only',
  notAnObject: 'is not an object',
  unknownAction: 'is not an action that is known',
  notAWholeNumber: 'is not a whole number',
  outOfRange: 'is out of range',
  notASquare: 'is not a square [row, column]',
  notAList: 'is not a list',
  notYesOrNo: 'is not true or false',
  notAMark: 'is no mark from 0 to 1',
  notAFact: 'is no fact: two digits from 1 to 9, or one digit for all its facts',
  notAZeroCondition: 'is no condition on zeros that is known here',
  emptyRange: 'begins above its end',
  notShortText: 'is no short text',
  notBars: 'is no list of two to ten bars',
  nothingToExchange: 'and ones are both 0: there is nothing to exchange',
  notPlayable: 'has no synthetic pupils',
  nothingShows: 'are too few for any pattern to show',
  unknownSubject: 'is neither a skill nor a fact',
  notAChance: 'is no chance from 0 to 1',
  evidenceReversed: 'and slip come to 1 or more: a right answer would speak against knowing',
  tooMany: 'has too many entries',
  tooFew: 'asks for more problems than there are',
};
