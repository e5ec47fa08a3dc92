import { ordinal } from './en.ts';
import { many } from './many.ts';
import type { Values } from './values.ts';

/** What help says, in English: fetched when it is first asked for. */
export const helpEn = {
  howTile: 'Lay the tile {digit} at the {place}.',
  howLift: 'Take {bars} away from the marked square.',
  howLiftTile: 'Take the tile away at the {place}.',
  howLay: 'Lay {bars} on the marked square.',
  howCount: 'Count the marked pile, bar by bar.',
  howTen: 'Pick bars in the marked square that make ten.',
  howExchange: ({ tens }: Values) =>
    `Take ${tens} ${many(tens, 'ten', 'tens')} from the marked square and lay ${tens} ${many(tens, 'bead', 'beads')} to the left.`,
  howSlide: 'Slide the marked pile to the other marked square.',
  howSay: 'Read the row from left to right, with its zeros.',
  howWrite: 'Read the pile at the {place} and write its digit.',
  whereHere: 'Look at the marked place.',
  howPoint: '{across} times {up} are {place}: the last digit of the product stands for {place}.',
  howUndo: 'Undo the last move.',
  howBegin: ({ row }: Values) => `Touch the multiplier’s digit of the ${ordinal(row)} row.`,
  howDigit: 'Write {digit} at the {place}.',
  howCarry: 'Write a small {digit} above the {place}.',
  howFigureUnits: 'Write the units, {digit}, in the lower corner of the marked square.',
  howFigureTens: 'Write the tens, {digit}, in the upper corner of the marked square.',
  howRub: 'Rub out the digit at the marked place.',
  howSquare: '{column} times {row} makes {place}: the marked square.',
  howWorth: '{column} times {row} makes {worth}.',
  howTell: 'Read the tiles from left to right.',
  howDone: 'All is laid. Say that you are done.',
  askTiles: 'Which digits are still missing? The units stand in the corner.',
  askLay: 'Which square still wants bars? The two tiles tell which bar, and how many.',
  askCount: 'Which pile holds ten or more?',
  askRow: 'What lies in this row? Read it from the left.',
  askSlide: 'Which piles are not yet in the bottom row? Follow their colour down.',
  askFact: 'How much is the fact? Its units lie here, its tens one square to the left.',
  askFigures: 'How much is the fact? Its units stay here, its tens go one square to the left.',
  askWrite: 'What comes next from the right? Was anything carried?',
  askAdd: 'What do the digits above each other make? Was anything carried?',
  askWalk: 'Follow the column up and the row across: what do they make together?',
  askTell: 'Which tile has the highest place?',
  askRead: 'Which digit is still to be written?',
} as const;
