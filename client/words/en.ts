import { many } from './many.ts';
import type { Values } from './values.ts';

const ORDINALS = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth'];
const ordinal = (row: unknown) => ORDINALS[Number(row)] ?? `${Number(row) + 1}th`;
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
  squareEmpty: 'empty',
  pileMakes: '{bars}, makes {total}',
  someBars: bars,
  again: 'look again',
  tileBelow: 'number below, {place}: {digit}',
  tileBeside: 'number at the side, {place}: {digit}',
  noTile: 'no tile',
  productCell: 'product, {place}: {digit}',
  noDigit: 'empty',

  // Moves
  moves: 'Where you are in the work',
  moveTiles: 'Tiles',
  moveLay: 'Lay',
  moveCount: 'Count',
  moveRow: 'Row',
  moveSlide: 'Slide',
  moveRead: 'Read',

  // Tools
  tools: 'Tools',
  undo: 'Undo',
  readAloud: 'Read aloud',
  check: 'Check',
  hint: 'Help me',
  keys: 'Keys',
  numbersOnBars: 'Numbers on the bars',
  close: 'Close',
  rub: 'Rub out',
  point: 'Point',
  pointAfter: '{cell}, then the point',
  problem: '{multiplicand} × {multiplier}',
  progress: 'Problem {now} of {all}',
  trial: 'Trial: nothing is marked',
  backToClass: 'Back to the class',

  // The tray
  bars: 'Bars',
  howMany: 'How many?',
  barKind: 'bar of {kind}',
  handHolds: 'In your hand: {bars}. Press a square.',
  digits: 'Digits',
  pickTile: 'Press a place beside the mat, then a digit.',
  takeTile: 'Take the tile away',
  rows: 'Rows',
  rowMakes: 'This row makes',
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
  exchangeTens: ({ tens }: Values) => `Exchange ${tens} ${many(tens, 'ten', 'tens')}`,
  howManyThere: 'How many do you lay there?',
  tenBecomes: 'A ten here becomes one in this square.',
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
  taskOnly: 'Work out {multiplicand} × {multiplier}.',
  lookAgain: 'Look again at what is lifted.',
  allRight: 'All is right so far.',
  rowRight: 'That row is right.',
  openedSentence: 'Count this pile. Is there a ten in it?',
  openedTens: 'Exchange the tens: each becomes one in the square to the left.',
  openedDone: 'Go on to the left, or back to the mat.',
  openedEmpty: 'This square is empty.',

  // Hints: how
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
  howPoint: 'Count the digits after the point in both numbers: the product has as many.',
  howUndo: 'Undo the last move.',
  howDone: 'All is laid. Say that you are done.',
  askTiles: 'Which digits are still missing? The units stand in the corner.',
  askLay: 'Which square still wants bars? The two tiles tell which bar, and how many.',
  askCount: 'Which pile holds ten or more?',
  askRow: 'What lies in this row? Read it from the left.',
  askSlide: 'Which piles are not yet in the bottom row? Follow their colour down.',
  askRead: 'Which digit is still to be written?',

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
  didWrite: '{digit} written at the {place}.',
  didPoint: ({ places }: Values) =>
    `The point is set: ${places} ${many(places, 'digit', 'digits')} after it.`,
  didRub: 'Rubbed out.',
  didUndo: 'Undone.',
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
  notKept: 'This browser keeps nothing here: leave the page only when it says “Saved”.',
  aside: ({ count }: Values) =>
    `${count} ${many(count, 'move', 'moves')} from another page did not fit any more.`,

  // The end
  resultTitle: 'Your work',
  resultAtOnce: 'right at once',
  resultMended: 'put right',
  resultHinted: 'with help',
  resultFollows: 'right after a slip',
  resultNotRight: 'to look at again',
  resultOpen: 'not done',
  resultScore: '{awarded} of {available}',
  resultSent: 'Your teacher has your work.',
  resultWaiting: 'On its way to your teacher.',
  resultUnsent: 'Your work is still on this device. Keep the page open until it is saved.',
  resultByTeacher: 'Your teacher will show you the result.',
  resultProblem: 'Look at {problem}',
  goBack: 'Back to my work',
  allDone: 'All problems are finished.',

  // Keys
  keysTitle: 'Keys',
  keysWalk: 'Arrow keys',
  keysWalkDoes: 'walk over the mat',
  keysEnter: 'Enter',
  keysEnterDoes: 'opens a square',
  keysSpace: 'Space',
  keysSpaceDoes: 'lays what is in your hand; picks up a pile and lets it slide',
  keysDigit: '1 … 9',
  keysDigitDoes: 'lay a tile, lay bars, count, write',
  keysMore: '+ and −',
  keysMoreDoes: 'how many bars at once',
  keysBack: 'Backspace',
  keysBackDoes: 'takes away, rubs out',
  keysPage: 'Page Down, Page Up',
  keysPageDoes: 'next move, move before',
  keysUndo: 'Ctrl + Z',
  keysUndoDoes: 'undoes',
  keysEscape: 'Escape',
  keysEscapeDoes: 'closes a square, puts back',

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
