import { many } from './many.ts';
import type { Values } from './values.ts';

const bars = ({ count, kind }: Values) => `${count} ${many(count, 'bar', 'bars')} of ${kind}`;
const withCarry = ({ carry }: Values) => (carry === 0 ? '' : `, and ${carry} carried`);

/** Every word of a presentation in English: one short caption a move, and the page round it. */
export const presentEn = {
  presentTitle: 'Present',
  presentIntro:
    'A worked problem, move by move, for the class. Arrow keys, Page Up and Page Down, Space or a clicker go forward and back.',
  ofActivity: 'Problems of “{title}”',
  ownProblem: 'A problem of your own',
  stage: 'Stage',
  numbers: 'Numbers',
  numbersLike: '934 × 314',
  start: 'Begin',
  notClear: 'Write two numbers with × between them.',
  notPlayable: 'This stage does not take these numbers, or no mat holds them.',
  noNetwork: 'The server does not answer. Please try again in a moment.',
  stageWalk: 'Walk the squares',
  stageBuild: 'Build the numbers',
  stageBars1: 'Bars, one row',
  stageBars: 'Bars, several rows',
  stageFacts: 'Known facts',
  stageRecord: 'Record the partial products',
  stageCells: 'Figures on the squares',
  stagePaper: 'Squared paper',
  stageOpen: 'Open mat, laid by hand',
  questions: '{stage}, {count} questions',
  named: '{numbers}, {stage}',
  forward: 'Forward',
  back: 'Back',
  toStart: 'To the start',
  captions: 'Words',
  choose: 'Another problem',
  close: 'Close',
  at: 'Move {at} of {all}',
  noteTitle: 'Note as presented',
  noteIntro:
    'The note is a file on this device; it is not sent anywhere. Keep it where your records are.',
  noteTo: 'Presented to',
  noteOn: 'On',
  noteSave: 'Save the note as a file',
  noteSaved: 'Saved as {file}.',
  noteMissing: 'Write to whom it was presented.',

  begin: '{numbers}',
  beginQuestions: 'Questions about the mat',
  layTileBottom: 'Below the mat, {place}: the tile {digit}.',
  layTileRight: 'At the side, {place}: the tile {digit}.',
  liftTile: 'The tile is taken away.',
  layBars: (values: Values) =>
    `${values.count} times ${values.kind}: ${bars(values)}, in the ${values.place}.`,
  layFact: (values: Values) => `${bars(values)} in the ${values.place}.`,
  liftBars: (values: Values) => `${bars(values)} taken away.`,
  count: 'Counted, in the {place}: {total}.',
  makeTen: 'These make ten.',
  exchange: ({ tens, next }: Values) =>
    `${tens} ${many(tens, 'ten', 'tens')} exchanged: ${tens} in the ${next}.`,
  slide: 'Down the diagonal: all are {place}.',
  sayRow: 'The {row} makes {answer}.',
  askSquare: 'Which square is worth {worth}?',
  askCategory: '{across} times {up}: which square?',
  sayPrompt: '{answer}.',
  sayPlace: 'This one.',
  sayNumber: '{answer}.',
  beginRow: 'The digit {digit}, at the {place}, makes the {row}.',
  writePartial: (values: Values) =>
    `${values.up} times ${values.across}${withCarry(values)}, makes ${values.total}: ${values.digit} written.`,
  writePartialLast: 'What was carried: {digit} written.',
  writePartialRead: 'In the {place} of the {row}: {digit}.',
  writeZero: 'Nothing in the {place} of this row: a zero.',
  writeCarry: '{digit} is carried to the {place}.',
  writeProduct: 'The product, {place}: {digit}.',
  writeSum: (values: Values) =>
    `The ${values.place} make ${values.total}${withCarry(values).replace(', and', ', with')}: ${values.digit} written.`,
  writeSquareOwn: '{up} times {across} is {total}: its units, {digit}, stay here.',
  writeSquareLeft: '{up} times {across} is {total}: its tens, {digit}, go one square to the left.',
  rub: 'Rubbed out.',
  point: ({ places }: Values) =>
    `The point: ${places} ${many(places, 'digit', 'digits')} after it, as many as in both numbers.`,
  finishRow: 'The {row} is done.',
  finishProduct: 'The product can be read.',
  finishProblem: 'That is all: {numbers} is worked.',
  finishQuestions: 'That is all.',
  undo: 'Taken back.',
} as const;
