import { stepOf } from '../judge/ledger.ts';
import { digitsOn, lineOfRow } from '../judge/lines.ts';
import type { Finding, Scene } from '../judge/scene.ts';
import type { Suggestion } from '../judge/work.ts';
import type { Line } from '../mat/action.ts';
import { beginLine, rubDigit, writeDigit } from './captions.ts';

/** Begins a row's line on the first that is free. */
export function nextBegin(scene: Scene, row: number): Suggestion | null {
  if (scene.plan.up.length === 1 || lineOfRow(scene, row) !== null) return null;
  const { begun } = scene.position.paper;
  for (let index = 0; index < scene.plan.up.length; index += 1) {
    const line: Line = `partial:${index}`;
    if (begun[line] === undefined) return beginLine(line, row);
  }
  // Every line is begun already, two of them for one row: the later one is taken for this row.
  const taken = Object.entries(begun);
  const doubled = taken.find(([line, of]) =>
    taken.some(([other, same]) => same === of && other < line),
  );
  return doubled === undefined ? null : beginLine(doubled[0] as Line, row);
}

interface Asked {
  readonly line: Line;
  /** Digits due from the origin up; undefined where nothing need be written. */
  readonly due: readonly (number | undefined)[];
  readonly findings: readonly Finding[];
  readonly stepAt: (place: number) => string;
  readonly move: 'writePartial' | 'writeProduct' | 'writeSum';
}

/** The lowest digit of a line that is not as it is due; digits that are right already stay. */
export function nextOnLine(
  scene: Scene,
  { line, due, findings, stepAt, move }: Asked,
): Suggestion | null {
  const { origin } = scene.plan.problem.mat;
  for (const [index, written] of digitsOn(scene, line).entries()) {
    const place = origin + index;
    const wanted = due[index];
    const step = stepOf(scene.plan, stepAt(place));
    if (written === wanted) continue;
    if (written !== undefined && step >= 0 && findings[step]!.grade === 'right') continue;
    if (wanted === undefined && (written === undefined || written === 0)) continue;
    if (wanted === undefined) return rubDigit({ do: 'rub', line, place });
    const key = stepAt(place).startsWith('zero') ? 'writeZero' : move;
    return writeDigit({ do: 'write', line, place, digit: wanted }, key);
  }
  return null;
}

/** A row's placeholders and digits; a row that makes nothing stays empty. */
export function rowDigits(
  row: number,
  digits: readonly number[],
  empty: boolean,
): (number | undefined)[] {
  return empty ? [] : [...Array.from({ length: row }, () => 0), ...digits];
}
