import { type Interval, intervalOf, intervalOfMean } from './interval.ts';
import type { Pupil, Told } from './measure.ts';

/** Figures of a run; a figure is null where no pupil bears on it. Intervals: 95 %. */
export interface Figures {
  readonly single: {
    readonly recall: number | null;
    readonly precision: number | null;
    readonly interval: Interval;
    readonly precisionInterval: Interval;
  };
  readonly pairs: { readonly recall: number | null; readonly interval: Interval };
  readonly slipsOnly: { readonly falseAlarms: number | null; readonly interval: Interval };
  readonly outside: {
    readonly falseNames: number | null;
    readonly unnamed: number | null;
    readonly interval: Interval;
    readonly unnamedInterval: Interval;
  };
  /** Ids in a report, on average: rivals that the work cannot tell apart are reported together. */
  readonly groupSize: number | null;
  readonly groupSizeInterval: Interval | null;
  readonly perPattern: Readonly<Record<string, PatternFigures>>;
}

export interface PatternFigures {
  readonly recall: number | null;
  readonly precision: number | null;
  readonly interval: Interval;
  readonly precisionInterval: Interval;
  /** Pupils who hold it, alone. */
  readonly n: number;
}

/** A pair of ids that nothing done at the stage can tell apart. */
export type Inseparable = readonly (readonly [string, string])[];

export function figuresOf(run: readonly Told[], inseparable: Inseparable): Figures {
  const of = (kind: Pupil['kind']) => run.filter(({ pupil }) => pupil.kind === kind);
  const [singles, pairs] = [of('single'), of('pair')];
  const [slipsOnly, outside] = [of('slipsOnly'), of('outside')];
  const found = singles.filter((told) => namesAll(told, inseparable)).length;
  const groups = singles.flatMap(({ pupil, explanation }) =>
    explanation.reported.map(({ ids }) => ({ ids, right: isRight(pupil, ids, inseparable) })),
  );
  const rightGroups = groups.filter(({ right }) => right).length;
  const both = pairs.filter((told) => namesAll(told, inseparable)).length;
  const alarms = slipsOnly.filter(namesAny).length;
  const falseNames = outside.filter(namesAny).length;
  const unnamed = outside.filter(({ explanation }) => explanation.unnamed).length;
  return {
    single: {
      recall: share(found, singles.length),
      precision: share(rightGroups, groups.length),
      interval: intervalOf(found, singles.length),
      precisionInterval: intervalOf(rightGroups, groups.length),
    },
    pairs: { recall: share(both, pairs.length), interval: intervalOf(both, pairs.length) },
    slipsOnly: {
      falseAlarms: share(alarms, slipsOnly.length),
      interval: intervalOf(alarms, slipsOnly.length),
    },
    outside: {
      falseNames: share(falseNames, outside.length),
      unnamed: share(unnamed, outside.length),
      interval: intervalOf(falseNames, outside.length),
      unnamedInterval: intervalOf(unnamed, outside.length),
    },
    groupSize: share(
      groups.reduce((sum, { ids }) => sum + ids.length, 0),
      groups.length,
    ),
    groupSizeInterval: intervalOfMean(groups.map(({ ids }) => ids.length)),
    perPattern: perPattern(singles, inseparable),
  };
}

function share(part: number, of: number): number | null {
  return of === 0 ? null : part / of;
}

function namesAny({ explanation }: Told): boolean {
  return explanation.reported.length > 0;
}

/** A report of several rivals is right only where they are known to be inseparable. */
function isRight({ holds }: Pupil, ids: readonly string[], inseparable: Inseparable): boolean {
  const held = holds.find(({ pattern }) => ids.includes(pattern.id));
  if (held === undefined) return false;
  const { id } = held.pattern;
  return ids.every(
    (other) =>
      other === id || inseparable.some((pair) => pair.includes(id) && pair.includes(other)),
  );
}

function namesAll({ pupil, explanation }: Told, inseparable: Inseparable): boolean {
  return pupil.holds.every(({ pattern }) =>
    explanation.reported.some(
      ({ ids }) => ids.includes(pattern.id) && isRight(pupil, ids, inseparable),
    ),
  );
}

function perPattern(
  singles: readonly Told[],
  inseparable: Inseparable,
): Record<string, PatternFigures> {
  const figures: Record<string, PatternFigures> = {};
  const ids = new Set(singles.map(({ pupil }) => pupil.holds[0]!.pattern.id));
  for (const id of [...ids].sort()) {
    const own = singles.filter(({ pupil }) => pupil.holds[0]!.pattern.id === id);
    const named = singles.flatMap(({ pupil, explanation }) =>
      explanation.reported
        .filter((report) => report.ids.includes(id))
        .map(({ ids: all }) => isRight(pupil, all, inseparable)),
    );
    const found = own.filter((told) => namesAll(told, inseparable)).length;
    const right = named.filter(Boolean).length;
    figures[id] = {
      recall: share(found, own.length),
      precision: share(right, named.length),
      interval: intervalOf(found, own.length),
      precisionInterval: intervalOf(right, named.length),
      n: own.length,
    };
  }
  return figures;
}
