import type { Told } from './beads.ts';
import type { Chance } from './chance.ts';
import type { PaperPupil, PaperSlip } from './paper-pupil.ts';
import { otherDigit } from './sheet.ts';

/** One slip that waits for its occasion; `happened` says what it was, null: the occasion never came. */
export interface Planned {
  readonly slip: PaperSlip;
  readonly happened: () => string | null;
}

type Change = (told: Told, pupil: PaperPupil, chance: Chance) => Told[] | null;

function isOn(told: Told, prefix: string): boolean {
  return told.do === 'write' && (told['line'] as string).startsWith(prefix);
}

/** The lines that hold the rows: with a one-digit multiplier it may be the product's. */
function isRow(told: Told, { given }: PaperPupil): boolean {
  return isOn(told, 'partial') || (given.up.length === 1 && isOn(told, 'product'));
}

function isSum(told: Told, { given }: PaperPupil): boolean {
  return isOn(told, 'product') && given.up.length > 1;
}

function indexOf(told: Told, { given }: PaperPupil): number {
  return (told['place'] as number) - given.origin;
}

/** A zero before the digits of the row. */
function isPlaceholder(told: Told, pupil: PaperPupil): boolean {
  const first = pupil.firsts.get(told['line'] as string) ?? 0;
  return isRow(told, pupil) && indexOf(told, pupil) < first;
}

function isZeroRow(told: Told, pupil: PaperPupil): boolean {
  const begun = pupil.told.findLast((each) => each.do === 'begin' && each['line'] === told['line']);
  const { up, across } = pupil.given;
  const nothing = up[(begun?.['row'] as number) ?? 0] === 0 || across.every((digit) => digit === 0);
  return nothing && up.length > 1;
}

function isDigit(told: Told, pupil: PaperPupil): boolean {
  return isRow(told, pupil) && !isPlaceholder(told, pupil) && !isZeroRow(told, pupil);
}

const wrong = (told: Told, chance: Chance): Told[] => [
  { ...told, digit: otherDigit(told['digit'] as number, 9, chance) },
];

const CHANGES: Readonly<Record<string, Change>> = {
  'wrong digit of a row': (told, pupil, chance) =>
    isDigit(told, pupil) ? wrong(told, chance) : null,
  'missing digit of a row': (told, pupil) =>
    isDigit(told, pupil) && told['digit'] !== 0 ? [] : null,
  'wrong placeholder': (told, pupil, chance) =>
    isPlaceholder(told, pupil) && !isZeroRow(told, pupil) ? wrong(told, chance) : null,
  'digit in a zero row': (told, pupil, chance) =>
    isRow(told, pupil) && isZeroRow(told, pupil) ? wrong(told, chance) : null,
  'wrong carry of a row': (told, _pupil, chance) =>
    isOn(told, 'carry') && told['line'] !== 'carry:product' ? wrong(told, chance) : null,
  'carry of a row forgotten': (told) =>
    isOn(told, 'carry') && told['line'] !== 'carry:product' ? [] : null,
  'wrong digit of the sum': (told, pupil, chance) =>
    isSum(told, pupil) ? wrong(told, chance) : null,
  'missing digit of the sum': (told, pupil) =>
    isSum(told, pupil) && told['digit'] !== 0 ? [] : null,
  'wrong carry of the sum': (told, { given }, chance) =>
    isOn(told, 'carry:product') && given.up.length > 1 ? wrong(told, chance) : null,
  'carry of the sum forgotten': (told, { given }) =>
    isOn(told, 'carry:product') && given.up.length > 1 ? [] : null,
  'digit too many': (told, pupil, chance) => {
    if (pupil.habits.leadingZero || (!isDigit(told, pupil) && !isSum(told, pupil))) return null;
    const line = told['line'] as string;
    const { up, across } = pupil.given;
    const row =
      (pupil.told.findLast((each) => each['line'] === line && each.do === 'begin')?.[
        'row'
      ] as number) ?? 0;
    const above =
      up.length > 1 && line === 'product' ? up.length + across.length : row + across.length + 1;
    const place = pupil.given.origin + above;
    return [{ do: 'write', line, place, digit: 1 + chance.below(9) }, told];
  },
  'wrong point': (told, { given }, chance) =>
    told.do === 'point' ? [{ ...told, places: tooMany(-given.origin, chance) }] : null,
  /** Writes over something that stands right, or rubs it out. */
  smudge: (told, pupil, chance) => {
    const right = [...pupil.sheet.written('partial'), ...pupil.sheet.written('product')].filter(
      (each) => isDigit({ do: 'write', ...each }, pupil) || isSum({ do: 'write', ...each }, pupil),
    );
    const fromTheLeft = isSum(told, pupil) && pupil.habits.digits === 'from the left';
    if (right.length === 0 || told.do === 'point' || fromTheLeft) return null;
    const { line, place, digit } = chance.pick(right);
    const rub = digit > 0 && chance.maybe(0.3);
    return [
      told,
      rub
        ? { do: 'rub', line, place }
        : { do: 'write', line, place, digit: otherDigit(digit, 9, chance) },
    ];
  },
};

/** Too few may be right, where zeros at the end are left out. */
function tooMany(right: number, chance: Chance): number {
  return right + 1 + chance.below(3);
}

function told(name: string, chance: Chance): Planned {
  let wait = chance.below(12);
  let happened: string | null = null;
  return {
    happened: () => happened,
    slip: {
      tell: (meant, pupil) => {
        if (happened !== null) return null;
        wait -= 1;
        const done = wait < 0 ? CHANGES[name]!(meant, pupil, chance) : null;
        if (done === null) return null;
        happened = `${name}: ${JSON.stringify(meant)} → ${JSON.stringify(done)}`;
        return done;
      },
    },
  };
}

function misremembered(sum: boolean): (chance: Chance) => Planned {
  return (chance) => {
    let wait = chance.below(8);
    let happened: string | null = null;
    return {
      happened: () => happened,
      slip: {
        value: (value, most, isSumColumn) => {
          if (happened !== null || isSumColumn !== sum) return value;
          wait -= 1;
          if (wait >= 0) return value;
          const other = otherDigit(value, most, chance);
          happened = `${value} remembered as ${other}`;
          return other;
        },
      },
    };
  };
}

/** Row 0 has no placeholders: its lowest digit answers for a shift. */
function shifted(by: number, least = 0): (chance: Chance) => Planned {
  return (chance) => {
    let wait = chance.below(3);
    let happened: string | null = null;
    return {
      happened: () => happened,
      slip: {
        shift: (row) => {
          if (happened !== null || row + by < 0 || row < least) return 0;
          wait -= 1;
          if (wait >= 0) return 0;
          happened = `row ${row} shifted by ${by}`;
          return by;
        },
      },
    };
  };
}

function begunTwice(): Planned {
  let happened: string | null = null;
  return {
    happened: () => happened,
    slip: {
      begin: (row, before) => {
        if (happened !== null || before.length === 0) return row;
        happened = `row ${before.at(-1)} in place of ${row}`;
        return before.at(-1)!;
      },
    },
  };
}

/** Every kind of wrong action on paper. */
export const PAPER_SLIPS: Readonly<Record<string, (chance: Chance) => Planned>> = {
  ...Object.fromEntries(
    Object.keys(CHANGES).map((name) => [name, (chance: Chance) => told(name, chance)]),
  ),
  'fact misremembered': misremembered(false),
  'column added wrong': misremembered(true),
  'placeholder forgotten': shifted(-1),
  'placeholder too many': shifted(1, 1),
  'first row too far left': shifted(1),
  'row worked twice': begunTwice,
};

/** Two slips in one: the first that has something to change changes it. */
export function together(planned: readonly Planned[]): PaperSlip {
  return {
    tell: (meant, pupil) =>
      planned.reduce<Told[] | null>(
        (done, { slip }) => done ?? slip.tell?.(meant, pupil) ?? null,
        null,
      ),
    value: (value, most, sum) => {
      for (const { slip } of planned) {
        const other = slip.value?.(value, most, sum) ?? value;
        if (other !== value) return other;
      }
      return value;
    },
    shift: (row) => planned.reduce((shift, { slip }) => shift || (slip.shift?.(row) ?? 0), 0),
    begin: (row, before) =>
      planned.reduce((worked, { slip }) => slip.begin?.(worked, before) ?? worked, row),
  };
}
