import { findingsOf, momentOf } from './judge/findings.ts';
import { type Run, sceneOf } from './judge/run.ts';
import type { Say } from './judge/work.ts';
import type { HintLevel } from './vocabulary.ts';

export interface Hint {
  readonly step: string;
  readonly say: Say;
}

const LEVELS = { 1: 'ask', 2: 'where', 3: 'how' } as const;

/**
 * Help with one step: asks, shows where, shows how. Without `step` the first unmet step of the list, and the
 * same for a step that is met or unknown; null when every step is met. Places are in the values, so that the
 * words can name them ("tenths times hundredths").
 */
export function hintFor(run: Run, level: HintLevel, step?: string): Hint | null {
  const scene = sceneOf(run);
  const findings = findingsOf(run.stage, scene, momentOf(run.state.position));
  const named = step === undefined ? -1 : (run.plan.indexOf.get(step) ?? -1);
  const unmet = findings.findIndex(({ grade }) => grade !== 'right');
  const index = named >= 0 && findings[named]!.grade !== 'right' ? named : unmet;
  if (index < 0) return null;
  const { id, skill } = run.plan.steps[index]!;
  const { given, due } = findings[index]!;
  const how = level === 3 ? { given, due } : {};
  const where = level > 1 ? whereOf(run, id) : {};
  return { step: id, say: { key: `${LEVELS[level]}.${skill}`, values: { ...where, ...how } } };
}

/** Row, column and the places of the step's two digits, or the one place that it is about. */
function whereOf({ plan }: Run, id: string): Record<string, number | string | readonly number[]> {
  const { multiplicand, multiplier, mat } = plan.problem;
  const [kind = '', first = '', second = ''] = id.split(':');
  if (kind === 'tile') {
    const lowest = first === 'right' ? multiplier.lowest : multiplicand.lowest;
    return { edge: first, place: lowest + Number(second) };
  }
  if (kind === 'row') {
    const [row, place] = [Number(first), Number(second)];
    const column = place - mat.origin - row;
    // Above the multiplicand's digits there is only what was carried.
    const pair = column < multiplicand.digits.length;
    const places = [multiplicand.lowest + column, multiplier.lowest + row];
    return pair ? { row, place, places } : { row, place };
  }
  if (kind === 'zero') return { row: Number(first), place: mat.origin + Number(second) };
  if (second !== '') {
    const [row, column] = [Number(first), Number(second)];
    const places = [multiplicand.lowest + column, multiplier.lowest + row];
    return { row, column, place: mat.origin + row + column, places };
  }
  if (kind === 'point') {
    return { places: [multiplicand.lowest, multiplier.lowest], place: mat.origin };
  }
  if (kind === 'said' || kind === 'slid') return { row: Number(first) };
  return first === '' ? {} : { place: Number(first) };
}
