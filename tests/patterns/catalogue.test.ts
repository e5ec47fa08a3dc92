import { describe, expect, test } from 'vitest';
import { type Action, parseProblem, replay } from '../../engine/index.ts';
import { textOf } from '../../engine/numerals/numeral.ts';
import { CATALOGUE } from '../../engine/patterns/catalogue/index.ts';
import { type Example, PRESENTATIONS } from '../../engine/patterns/pattern.ts';
import { type Beliefs, RIGHT_WAY } from '../../engine/pupils/beliefs.ts';
import { playThrough } from '../../engine/pupils/play.ts';
import { SKILLS, STAGES } from '../../engine/vocabulary.ts';

function playedBy(beliefs: Beliefs, { gives: _, ...written }: Example): readonly Action[] {
  const problem = parseProblem(written);
  if (!problem.ok) throw new Error(JSON.stringify(problem.fault));
  return playThrough(problem.value, beliefs);
}

/** The product as it stands in the end, its point where it was set. */
function productOf({ gives: _, ...written }: Example, actions: readonly Action[]): string {
  const problem = parseProblem(written);
  if (!problem.ok) throw new Error(JSON.stringify(problem.fault));
  const { paper } = replay(problem.value, actions).position;
  const digits = Object.entries(paper.lines.product ?? {})
    .sort(([one], [other]) => Number(one) - Number(other))
    .map(([, digit]) => digit);
  const places = paper.points.product ?? 0;
  while (digits.length > places + 1 && digits.at(-1) === 0) digits.pop();
  return textOf(digits, -places);
}

test('there are at least forty patterns, and no two of one name or sign', () => {
  expect(CATALOGUE.length).toBeGreaterThanOrEqual(40);
  expect(new Set(CATALOGUE.map(({ id }) => id)).size).toBe(CATALOGUE.length);
  expect(new Set(CATALOGUE.map(({ sign }) => sign)).size).toBe(CATALOGUE.length);
});

describe.each(CATALOGUE.map((pattern) => [pattern.id, pattern] as const))('%s', (_id, pattern) => {
  test('says everything that a pattern must say', () => {
    expect(pattern.id).toMatch(/^[a-zé’' ,-]{8,70}$/);
    expect(SKILLS).toContain(pattern.skill);
    expect(pattern.stages.length).toBeGreaterThan(0);
    for (const stage of pattern.stages) expect(STAGES).toContain(stage);
    expect(pattern.stages).toContain(pattern.fires.stage);
    expect(pattern.stages).toContain(pattern.silent.stage);
    expect(pattern.sign).toMatch(/^[a-zA-Z]+$/);
    expect(PRESENTATIONS).toContain(pattern.repeat);
    expect(['read', 'fromMemory', 'derived']).toContain(pattern.source.basis);
    expect(pattern.source.text.length).toBeGreaterThan(10);
    expect(Object.keys(pattern.beliefs).length).toBeGreaterThan(0);
  });

  test('fires on its one example and is silent on the other', () => {
    const differs = (example: Example, beliefs: Beliefs) =>
      JSON.stringify(playedBy(beliefs, example)) !== JSON.stringify(playedBy(RIGHT_WAY, example));
    const all = Object.values(pattern.beliefs);
    expect(all.some((beliefs) => differs(pattern.fires, beliefs))).toBe(true);
    expect(all.some((beliefs) => differs(pattern.silent, beliefs))).toBe(false);
  });

  test('ends with the product that its source gives, where it gives one', () => {
    const { gives } = pattern.fires;
    if (gives === undefined) return;
    const [beliefs] = Object.values(pattern.beliefs);
    expect(productOf(pattern.fires, playedBy(beliefs!, pattern.fires))).toBe(gives);
  });
});
