import type { Action, Finishable, Line, PointOn } from '../mat/action.ts';
import { MAT_LIMITS, type Square } from '../mat/geometry.ts';
import { fail, ok, type Result } from '../result.ts';
import { EDGES, HINT_LEVELS, SLOTS } from '../vocabulary.ts';
import { type Fields, readFields, readInteger, readOneOf, strangerIn } from './read.ts';

/** Wide enough for any mat and any slip beside it; what is off the mat is for physics to refuse. */
const LIMITS = {
  index: 30,
  square: 30,
  place: 60,
  bars: 99,
  tens: 999,
  total: 99_999,
  text: 60,
  prompt: 999,
} as const;

type Reader<T> = (value: unknown, at: string) => Result<T>;

const integer =
  (least: number, most: number): Reader<number> =>
  (value, at) =>
    readInteger(value, at, least, most);
const oneOf =
  <T extends string | number>(words: readonly T[]): Reader<T> =>
  (value, at) =>
    readOneOf(value, at, words);

const square: Reader<Square> = (value, at) => {
  if (!Array.isArray(value) || value.length !== 2) return fail('notASquare', at);
  for (const index of [0, 1]) {
    const read = readInteger(value[index], `${at}[${index}]`, 0, LIMITS.square);
    if (!read.ok) return read;
  }
  return ok([value[0], value[1]] as const);
};

const text: Reader<string> = (value, at) =>
  typeof value !== 'string' || value.length > LIMITS.text ? fail('notShortText', at) : ok(value);

const row = integer(0, MAT_LIMITS.rows.most - 1);
const LINE = /^(?:(?:partial|carry):[0-5]|product|carry:product)$/;
const POINT_ON = /^(?:multiplicand|multiplier|product|partial:[0-5])$/;
const FINISHABLE = /^(?:row:[0-5]|product|problem)$/;
const matching =
  <T extends string>(pattern: RegExp, code: string): Reader<T> =>
  (value, at) =>
    typeof value === 'string' && pattern.test(value) ? ok(value as T) : fail(code, at);

const bars: Reader<readonly number[]> = (value, at) => {
  if (!Array.isArray(value) || value.length < 2 || value.length > 10) return fail('notBars', at);
  for (const [index, kind] of value.entries()) {
    const read = readInteger(kind, `${at}[${index}]`, 1, 9);
    if (!read.ok) return read;
  }
  return ok(value.slice() as number[]);
};

const split: Reader<{ kind: number; take: number }> = (value, at) => {
  const read = fieldsOf<{ kind: number; take: number }>(value, at, {
    kind: integer(2, 9),
    take: integer(1, 8),
  });
  if (read.ok && read.value.take >= read.value.kind) return fail('outOfRange', `${at}.take`);
  return read;
};

const answer: Reader<string | Square> = (value, at) =>
  Array.isArray(value) ? square(value, at) : text(value, at);

interface Shape {
  readonly [field: string]: Reader<unknown> | { readonly optional: Reader<unknown> };
}

function fieldsOf<T>(value: unknown, at: string, shape: Shape): Result<T> {
  const fields = readFields(value, at);
  if (!fields.ok) return fields;
  const stranger = strangerIn(fields.value, ['do', ...Object.keys(shape)], at);
  if (!stranger.ok) return stranger;
  const found: Record<string, unknown> = {};
  for (const [name, entry] of Object.entries(shape)) {
    const given = fields.value[name];
    if (typeof entry !== 'function' && given === undefined) continue;
    const read = (typeof entry === 'function' ? entry : entry.optional)(
      given,
      at === '' ? name : `${at}.${name}`,
    );
    if (!read.ok) return read;
    found[name] = read.value;
  }
  return ok(found as T);
}

const tile = { edge: oneOf(EDGES), index: integer(0, LIMITS.index) };
const digit = integer(0, 9);
const place = integer(-LIMITS.place, LIMITS.place);
const line = matching<Line>(LINE, 'unknownLine');
const some = (most: number) => integer(1, most);

const SHAPES: Readonly<Record<string, (fields: Fields) => Shape>> = {
  layTile: () => ({ ...tile, digit }),
  liftTile: () => tile,
  layBars: () => ({ square, kind: some(9), count: some(LIMITS.bars), of: { optional: square } }),
  liftBars: () => ({ square, kind: some(10), count: some(LIMITS.tens), of: { optional: square } }),
  count: () => ({ square, total: integer(0, LIMITS.total) }),
  makeTen: () => ({ square, bars, split: { optional: split } }),
  exchange: () => ({
    from: square,
    tens: integer(0, LIMITS.tens),
    to: square,
    ones: integer(0, LIMITS.tens),
  }),
  slide: () => ({ from: square, to: square }),
  begin: () => ({ line, row }),
  write: (fields) =>
    fields.square === undefined
      ? { line, place, digit }
      : { square, slot: oneOf(SLOTS), digit, of: { optional: square } },
  rub: (fields) => (fields.square === undefined ? { line, place } : { square, slot: oneOf(SLOTS) }),
  point: () => ({
    on: matching<PointOn>(POINT_ON, 'unknownLine'),
    places: integer(0, LIMITS.place),
  }),
  say: (fields) =>
    fields.prompt === undefined
      ? { row, answer: text }
      : { prompt: integer(0, LIMITS.prompt), answer },
  check: () => ({}),
  hint: () => ({ level: oneOf(HINT_LEVELS), step: { optional: text } }),
  finish: () => ({ what: matching<Finishable>(FINISHABLE, 'unknownFinish') }),
  undo: () => ({}),
};

/** The wire form of `{"do": NAME, …}`; a new, clean object comes back. */
export function parseAction(value: unknown, at = ''): Result<Action> {
  const fields = readFields(value, at);
  if (!fields.ok) return fields;
  const name = fields.value.do;
  const shape = typeof name === 'string' && Object.hasOwn(SHAPES, name) ? SHAPES[name] : undefined;
  if (shape === undefined) {
    return fail('unknownAction', at === '' ? 'do' : `${at}.do`, { known: Object.keys(SHAPES) });
  }
  const read = fieldsOf<Record<string, unknown>>(value, at, shape(fields.value));
  if (!read.ok) return read;
  const action = { do: name, ...read.value } as unknown as Action;
  if (action.do === 'exchange' && action.tens === 0 && action.ones === 0) {
    return fail('nothingToExchange', at === '' ? 'tens' : `${at}.tens`);
  }
  return ok(action);
}
