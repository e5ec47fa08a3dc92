import type { Square, Told } from './beads.ts';
import type { CellsPupil, CellsSlip } from './cells-pupil.ts';
import type { Chance } from './chance.ts';
import { otherDigit } from './sheet.ts';

export interface PlannedInCells {
  readonly slip: CellsSlip;
  readonly happened: () => string | null;
}

type Change = (told: Told, pupil: CellsPupil, chance: Chance) => Told[] | null;

const isSquare = (told: Told): boolean => told.do === 'write' && told['square'] !== undefined;
const isOn = (told: Told, line: string): boolean => told.do === 'write' && told['line'] === line;

function dueAt(pupil: CellsPupil, row: number, column: number): number {
  return (pupil.tiles.bottom.get(column) ?? 0) * (pupil.tiles.right.get(row) ?? 0);
}

const CHANGES: Readonly<Record<string, Change>> = {
  'wrong tile': (told, _pupil, chance) =>
    told.do === 'layTile'
      ? [{ ...told, digit: otherDigit(told['digit'] as number, 9, chance) }]
      : null,
  'missing tile': (told, { given }) => {
    // Without its only digit a number asks for nothing at all: that is work not begun.
    const digits = told['edge'] === 'bottom' ? given.across : given.up;
    const others = digits.some((digit, index) => digit > 0 && index !== told['index']);
    return told.do === 'layTile' && others ? [] : null;
  },
  'extra tile': (told, { given }, chance) => {
    if (told.do !== 'layTile') return null;
    const [edge, index, most] = chance.maybe(0.5)
      ? ['bottom', given.across.length, given.columns]
      : ['right', given.up.length, given.rows];
    return (index as number) < (most as number)
      ? [{ do: 'layTile', edge, index, digit: chance.below(10) }, told]
      : null;
  },
  'wrong digit of a fact': (told, _pupil, chance) =>
    isSquare(told) ? [{ ...told, digit: otherDigit(told['digit'] as number, 9, chance) }] : null,
  'missing digit of a fact': (told) => (isSquare(told) && told['digit'] !== 0 ? [] : null),
  'digit where nothing is due': (told, pupil, chance) => {
    if (!isSquare(told)) return null;
    const row = pupil.given.rows - 1;
    const column = pupil.given.columns - 1;
    if (row < pupil.given.up.length || dueAt(pupil, row, column) > 0) return null;
    const digit = 1 + chance.below(9);
    return [told, { do: 'write', square: [row, column], slot: 'own', digit }];
  },
  'digit one square too far left': (told, pupil) => {
    if (!isSquare(told) || told['digit'] === 0) return null;
    const [row, column] = told['square'] as Square;
    if (column + 1 >= pupil.given.columns) return null;
    // What stands there already is overwritten, and what is still to come overwrites it: another slip.
    const there = pupil.squares.has(`${row}:${column + 1}@${told['slot']}`);
    const later = dueAt(pupil, row, column + 1) + dueAt(pupil, row, column) > 0 && !there;
    return later ? null : [{ ...told, square: [row, column + 1] }];
  },
  'wrong digit of the sum': (told, _pupil, chance) =>
    isOn(told, 'product')
      ? [{ ...told, digit: otherDigit(told['digit'] as number, 9, chance) }]
      : null,
  'missing digit of the sum': (told) => (isOn(told, 'product') && told['digit'] !== 0 ? [] : null),
  'wrong carry of the sum': (told, _pupil, chance) =>
    isOn(told, 'carry:product')
      ? [{ ...told, digit: otherDigit(told['digit'] as number, 9, chance) }]
      : null,
  'carry of the sum forgotten': (told) => (isOn(told, 'carry:product') ? [] : null),
  'wrong point': (told, { given }, chance) =>
    told.do === 'point' ? [{ ...told, places: 1 - given.origin + chance.below(3) }] : null,
  smudge: (told, pupil, chance) => {
    const right = [...pupil.squares].filter(([, digit]) => digit > 0);
    if (right.length === 0 || told.do === 'point' || told['line'] !== undefined) return null;
    const [key, digit] = chance.pick(right);
    const [square, slot] = key.split('@');
    const where = { square: square!.split(':').map(Number), slot };
    return [
      told,
      chance.maybe(0.3)
        ? { do: 'rub', ...where }
        : { do: 'write', ...where, digit: otherDigit(digit, 9, chance) },
    ];
  },
};

function told(name: string, chance: Chance): PlannedInCells {
  let wait = chance.below(12);
  let happened: string | null = null;
  return {
    happened: () => happened,
    slip: {
      tell: (meant, pupil) => {
        if (happened !== null) return null;
        wait -= 1;
        const done = wait < 0 ? CHANGES[name]!(meant, pupil as CellsPupil, chance) : null;
        if (done === null) return null;
        happened = `${name}: ${JSON.stringify(meant)} → ${JSON.stringify(done)}`;
        return done;
      },
    },
  };
}

function once<T>(
  chance: Chance,
  change: (right: T) => T | null,
): PlannedInCells & { take: (right: T) => T } {
  let wait = chance.below(6);
  let happened: string | null = null;
  const take = (right: T): T => {
    if (happened !== null) return right;
    const other = change(right);
    if (other === null) return right;
    wait -= 1;
    if (wait >= 0) return right;
    happened = `${right} taken for ${other}`;
    return other;
  };
  return { slip: {}, happened: () => happened, take };
}

/** Every kind of wrong action with tiles, figures on squares and the sum. */
export const CELLS_SLIPS: Readonly<Record<string, (chance: Chance) => PlannedInCells>> = {
  ...Object.fromEntries(
    Object.keys(CHANGES).map((name) => [name, (chance: Chance) => told(name, chance)]),
  ),
  'fact misremembered': (chance) => {
    const slip = once<number>(chance, (right) =>
      right === 0 ? null : otherDigit(right, 81, chance),
    );
    return { ...slip, slip: { fact: slip.take } };
  },
  'units and tens in each other’s place': (chance) => {
    let happened: string | null = null;
    let wait = chance.below(4);
    return {
      happened: () => happened,
      slip: {
        turned: (value) => {
          if (happened !== null || value % 11 === 0) return false;
          wait -= 1;
          if (wait >= 0) return false;
          happened = `${value} turned`;
          return true;
        },
      },
    };
  },
  'column added wrong': (chance) => {
    let happened: string | null = null;
    let wait = chance.below(4);
    return {
      happened: () => happened,
      slip: {
        value: (value, most) => {
          if (happened !== null) return value;
          wait -= 1;
          if (wait >= 0) return value;
          const other = otherDigit(value, most, chance);
          happened = `${value} taken for ${other}`;
          return other;
        },
      },
    };
  },
};

/** Several slips in one: the first that has something to change changes it. */
export function togetherInCells(planned: readonly PlannedInCells[]): CellsSlip {
  return {
    tell: (meant, pupil) =>
      planned.reduce<Told[] | null>(
        (done, { slip }) => done ?? slip.tell?.(meant, pupil) ?? null,
        null,
      ),
    value: (value, most, sum) =>
      planned.reduce((taken, { slip }) => slip.value?.(taken, most, sum) ?? taken, value),
    fact: (right) => planned.reduce((taken, { slip }) => slip.fact?.(taken) ?? taken, right),
    turned: (value) => planned.some(({ slip }) => slip.turned?.(value) ?? false),
  };
}
