import { many } from './many.ts';
import type { Values } from './values.ts';

const ORDINALS = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth'];
export const ordinal = (row: unknown) => ORDINALS[Number(row)] ?? `${Number(row) + 1}th`;
const bars = (values: Values) =>
  `${values.count} ${many(values.count, 'bar', 'bars')} of ${values.kind}`;

const FAMILIES = [
  '',
  'thousands',
  'millions',
  'billions',
  'trillions',
  'quadrillions',
  'quintillions',
];
const WITHIN = ['', 'ten ', 'hundred '];
const SIMPLE = ['units', 'tens', 'hundreds'];
const PARTS = ['', 'thousandths', 'millionths', 'billionths', 'trillionths'];
const TENTHS = ['', 'tenths', 'hundredths'];

const wholePlace = (place: number) =>
  place < 3 ? SIMPLE[place] : `${WITHIN[place % 3]}${FAMILIES[Math.floor(place / 3)]}`;
const partPlace = (depth: number) =>
  depth < 3 ? TENTHS[depth] : `${WITHIN[depth % 3]}${PARTS[Math.floor(depth / 3)]}`;

/** Every word of the pages in English; values arrive already written for the reader where they are numbers. */
export const en = {
  place: ({ place }: Values) =>
    `${Number(place) >= 0 ? wholePlace(Number(place)) : partPlace(-Number(place))}`,
  theRow: (v: Values) => `${ordinal(v.row)} row`,

  // The mat, for ears
  mat: 'Mat',
  squareName: 'row {row}, column {column}, place {place}, {pile}',
  squareAsked: 'row {row}, column {column}, {pile}',
  asked: 'asked about',
  squareEmpty: 'empty',
  inUpper: '{digit} in the upper corner',
  inLower: '{digit} in the lower corner',
  pileMakes: '{bars}, makes {total}',
  someBars: bars,
  again: 'look again',
  marked: 'marked',
  tileBelow: 'number below, {place}: {digit}',
  tileBeside: 'number at the side, {place}: {digit}',
  noTile: 'no tile',
  productCell: 'product, {place}: {digit}',
  rowCell: '{row}, {place}: {digit}',
  carriedCell: '{digit} carried',
  noDigit: 'empty',

  // Moves
  moves: 'Where you are in the work',
  moveTiles: 'Tiles',
  moveLay: 'Lay',
  moveCount: 'Count',
  moveRow: 'Row',
  moveSlide: 'Slide',
  moveRead: 'Read',
  moveWalk: 'Questions',
  moveTell: 'Read back',
  moveFigures: 'Facts',
  moveRows: 'Rows',
  moveAdd: 'Add',

  // Tools
  tools: 'Tools',
  undo: 'Undo',
  readAloud: 'Read aloud',
  check: 'Check',
  hint: 'Help me',
  seeWorked: 'See one worked',
  keys: 'Keys',
  numbersOnBars: 'Numbers on the bars',
  close: 'Close',
  rub: 'Rub out',
  point: 'Point',
  pointAfter: 'then the point',
  carry: 'Carry',
  problem: '{multiplicand} × {multiplier}',
  progress: 'Problem {now} of {all}',
  trial: 'Trial: nothing is marked',
  backToClass: 'Back to the class',

  // The tray
  bars: 'Bars',
  howMany: 'How many?',
  barKind: 'bar of {kind}',
  digits: 'Digits',
  pickTile: 'Press a place beside the mat, then a digit.',
  rows: 'Rows',
  rowMakes: 'This row makes',
  times: '× {digit}',
  touchDigit: 'Which digit?',
  say: 'Say it',
  said: 'Said: {answer}',
  rowDone: 'This row is done',
  productDone: 'The product is done',
  problemDone: 'I am finished',
  leaveIt: 'Leave it like this',
  nextProblem: 'Next problem',
  seeResult: 'See my work',
  pressSquare: 'Press a square to open it.',
  pressPile: 'Press a pile, then the square it slides to.',
  pressDigit: 'Press a place of the product, then a digit.',
  pressDigitCarry: 'Press a place, then a digit. “Carry” makes the next one small.',
  pressWhere: 'Press the square where the new bars go.',
  howManyIn: 'How many do you lay there, in the {place}?',
  pressFact: 'Press a bar, then its square.',
  factNow: 'Fact',
  factNext: 'Next fact',
  factBefore: 'Fact before',
  pressCorner: 'Press a square, then a digit.',
  corners: 'Corner',
  upperCorner: 'Upper corner',
  lowerCorner: 'Lower corner',
  questions: 'Questions',
  question: 'Question {at}',
  answered: 'answered',
  answer: 'Your answer',
  nextQuestion: 'Next question',
  typeAnswer: 'Write your answer with the digits.',
  pressPointAfter: 'Press the digit that the point comes after, then the point.',
  paper: 'Squared paper',
  productLine: 'Product',

  // A square opened
  opened: 'Square opened: {place}, {row}',
  backToMat: 'Back to the mat',
  pickedSum: '{sum} beads picked',
  noPick: 'Pick bars that make ten.',
  pick: 'bar of {kind}, {at} of {all}',
  mould: 'ten',
  makeTen: 'Make a ten',
  makeTenSplit: 'Make a ten with {take} of the {kind}',
  makeTenAndExchange: 'Make a ten and exchange',
  takeAway: 'Take away',
  pileIs: 'The pile makes',
  counted: 'That is it',
  toOtherSquare: 'To another square',
  exchangeTens: ({ tens }: Values) => `Exchange ${tens} ${many(tens, 'ten', 'tens')}`,
  howManyThere: 'How many do you lay there?',
  openThis: 'Open this square: {place}',
  nothingLeft: 'The mat ends here.',

  // Sentences: what is next
  nextTiles: 'Set {multiplicand} along the bottom and {multiplier} up the side.',
  nextLay: ({ row }: Values) => `Lay the bars of the ${ordinal(row)} row.`,
  nextCount: ({ row }: Values) => `Count each pile of the ${ordinal(row)} row. Exchange every ten.`,
  nextCountBottom: 'Count the bottom row from the right. Exchange every ten.',
  nextSay: ({ row }: Values) => `What does the ${ordinal(row)} row make?`,
  nextRowDone: ({ row }: Values) => `Is the ${ordinal(row)} row done?`,
  nextSlide: 'Slide the piles down along the diagonals.',
  nextRead: 'Read the product and write it.',
  nextPoint: 'Where does the point of the product stand?',
  nextProductDone: 'Is the product done?',
  nextProblemDone: 'Is all your work done?',
  nextMend: 'Something is not as it should be. Look over the mat.',
  nextFact: ({ row }: Values) => `Lay the facts of the ${ordinal(row)} row.`,
  nextFigures: ({ row }: Values) => `Write the facts of the ${ordinal(row)} row on their squares.`,
  nextBegin: ({ row }: Values) => `Touch the digit that makes the ${ordinal(row)} row.`,
  nextWriteRow: ({ row }: Values) => `Write what the ${ordinal(row)} row makes.`,
  nextMultiplyRow: ({ row }: Values) => `Multiply and write the ${ordinal(row)} row.`,
  nextMultiply: 'Multiply and write the product.',
  nextAddRows: 'Add the rows and write the product.',
  nextAddDiagonals: 'Add along the diagonals and write the product.',
  askWorth: 'What is one bead worth on the marked square?',
  askSquare: 'Which square is worth {worth}? Press it.',
  askCategory: '{across} times {up}: which square? Press it.',
  askNumberBelow: 'Which number stands along the bottom?',
  askNumberBeside: 'Which number stands up the side?',
  carriedTens: 'The tens are in your hand. Where does the new bar go?',
  openTask: 'This mat is yours. Lay what you like.',
  taskOnly: 'Work out {multiplicand} × {multiplier}.',
  lookAgain: 'Look again at what is lifted.',
  allRight: 'All is right so far.',
  rowRight: 'That row is right.',
  openedSentence: 'Count this pile. Is there a ten in it?',
  openedTens: 'Exchange the tens: each becomes one in the square to the left.',
  openedDone: 'Go on to the left, or back to the mat.',
  openedEmpty: 'This square is empty.',

  // What happened
  didTile: '{digit} laid.',
  didLift: 'Taken away.',
  didLay: '{bars} laid.',
  didCount: 'Counted: {total}.',
  didTen: 'A ten is made.',
  didExchange: ({ tens, ones, place }: Values) =>
    `${tens} ${many(tens, 'ten', 'tens')} exchanged, ${ones} laid in the ${place}.`,
  didSlide: 'Slid to the {place}, {row}.',
  didSay: 'Said: {answer}.',
  didShow: 'Row {row}, column {column}.',
  didBegin: ({ row }: Values) => `The ${ordinal(row)} row begins.`,
  didWrite: '{digit} written at the {place}.',
  didPoint: ({ places }: Values) =>
    `The point is set: ${places} ${many(places, 'digit', 'digits')} after it.`,
  didRub: 'Rubbed out.',
  didUndo: 'Undone: {what}',
  pickedUp: 'Picked up.',
  putBack: 'Put back.',
  bounced: 'That does not fit yet. Try once more.',
  refusedNotTen: 'These do not make ten.',
  refusedNothingThere: 'There is nothing there.',
  refusedOff: 'That is off the mat.',
  refusedUndo: 'There is nothing to undo.',
  refusedFinished: 'This problem is finished.',
  refused: 'That cannot be done here.',

  // Saving
  saved: 'Saved',
  saving: 'Saving…',
  unsent: ({ count }: Values) =>
    `Not saved yet: ${count} ${many(count, 'move', 'moves')}. Work on.`,
  ended: 'Please open this again from your course. Your work is kept on this device.',
  notTaken: ({ count }: Values) =>
    `${count} ${many(count, 'move', 'moves')} could not be saved. Please tell your teacher.`,
  mayForget: 'This browser may forget here what is not saved yet.',
  notKept: 'This browser keeps nothing here: leave the page only when it says “Saved”.',
  aside: ({ count }: Values) =>
    `${count} ${many(count, 'move', 'moves')} from another page did not fit any more.`,

  // The end
  toResult: 'Back to the result',
  forYourself: 'A round for yourself: nothing is sent',

  // Messages
  messageNotOpened: 'Please open this from your course.',
  messageNoProof: 'Your browser keeps nothing inside this page. Open it in a tab of its own.',
  messageExpired: 'This page was left too long. Please open it again from your course.',
  messageUnreachable: 'The server does not answer. Please try again in a moment.',
  messageOther: 'This cannot be opened. Please tell your teacher.',
  messageGuest: 'Work is kept only for people who are signed in to this course.',
  messageMentor:
    'This is where your child works on the mat. There is nothing here that you need to do.',
  messageNoActivity:
    'No work has been chosen for this place yet. Teacher: give the custom parameter “activity” of this place the id of an activity.',
  messageUnknownActivity:
    'The work that this place asks for does not exist for this school. Teacher: check the custom parameter “activity” of this place.',
  messageCode: 'For your teacher: {code}',
  openInTab: 'Open in a tab',
  tryAgain: 'Try again',
  loading: 'One moment…',
} as const;
