import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  FACT_PARAMETERS,
  KNOWN_FROM,
  SKILL_PARAMETERS,
  type TracingParameters,
  traceKnowledge,
} from '../../engine/mastery/index.ts';
import golden from '../golden/tracing.json' with { type: 'json' };

const traced = (answers: readonly boolean[], parameters: TracingParameters) => {
  const result = traceKnowledge(answers, parameters);
  if (!result.ok) throw new Error(JSON.stringify(result.fault));
  return result.value;
};

const expectClose = (found: readonly number[], due: readonly number[]): void => {
  expect(found.length).toBe(due.length);
  for (const [index, value] of due.entries()) {
    expect(Math.abs(found[index]! - value)).toBeLessThan(1e-9);
  }
};

const chance = fc.double({ min: 0.01, max: 0.49, noNaN: true });
const parameters = fc.record({ prior: chance, learn: chance, guess: chance, slip: chance });

describe('knowledge tracing', () => {
  it.each(golden.runs)('agrees with the reference run from prior $prior', (run) => {
    const { knownBefore, correctBefore, knownAfterLast } = traced(
      run.answers.map((answer) => answer === 1),
      run,
    );
    expectClose(knownBefore, run.knownBefore);
    expectClose(correctBefore, run.correctBefore);
    expectClose([knownAfterLast], [run.knownAfterLast]);
  });

  it('multiplies the odds of knowing by a fixed factor, right or wrong, when nothing is learnt', () => {
    // Odds form of the update: × (1 − S)/G after a right answer, × S/(1 − G) after a wrong one.
    fc.assert(
      fc.property(parameters, fc.boolean(), (some, right) => {
        const { prior, guess, slip } = some;
        const { knownAfterLast } = traced([right], { ...some, learn: 0 });
        const factor = right ? (1 - slip) / guess : slip / (1 - guess);
        const odds = (prior / (1 - prior)) * factor;
        expect(knownAfterLast).toBeCloseTo(odds / (1 + odds), 12);
      }),
    );
  });

  it('needs as long a streak as published for four sets of parameters', () => {
    // Streaks to 0.95: (.4,.1,.2,.1) 3; (.25,.15,.1,.08) 2; (.3,.1,.05,.1) 2; (.3,.1,.3,.1) 4.
    const streak = (prior: number, learn: number, guess: number, slip: number): number => {
      for (let length = 1; ; length++) {
        const answers = new Array<boolean>(length).fill(true);
        const { knownAfterLast } = traced(answers, { prior, learn, guess, slip });
        if (knownAfterLast >= KNOWN_FROM) return length;
      }
    };
    expect(streak(0.4, 0.1, 0.2, 0.1)).toBe(3);
    expect(streak(0.25, 0.15, 0.1, 0.08)).toBe(2);
    expect(streak(0.3, 0.1, 0.05, 0.1)).toBe(2);
    expect(streak(0.3, 0.1, 0.3, 0.1)).toBe(4);
  });

  it('stays a probability, and a right answer never leaves less belief than a wrong one', () => {
    fc.assert(
      fc.property(fc.array(fc.boolean(), { maxLength: 30 }), parameters, (answers, some) => {
        const { knownBefore, knownAfterLast } = traced(answers, some);
        for (const known of [...knownBefore, knownAfterLast]) {
          expect(known).toBeGreaterThanOrEqual(0);
          expect(known).toBeLessThanOrEqual(1);
        }
        const [right, wrong] = [true, false].map((last) => traced([...answers, last], some));
        expect(right!.knownAfterLast).toBeGreaterThanOrEqual(wrong!.knownAfterLast);
      }),
    );
  });

  it('refuses parameters that are no chances or turn evidence round', () => {
    const some = { prior: 0.3, learn: 0.1, guess: 0.1, slip: 0.1 };
    const refused = (change: Partial<TracingParameters>) => {
      const result = traceKnowledge([true], { ...some, ...change });
      return result.ok ? 'followed' : `${result.fault.code} ${result.fault.at}`;
    };
    expect(refused({ prior: 1.1 })).toBe('notAChance parameters.prior');
    expect(refused({ learn: Number.NaN })).toBe('notAChance parameters.learn');
    expect(refused({ slip: -0.1 })).toBe('notAChance parameters.slip');
    expect(refused({ guess: 0.5, slip: 0.5 })).toBe('evidenceReversed parameters.guess');
    expect(refused({})).toBe('followed');
  });

  it.each(Object.entries({ ...SKILL_PARAMETERS, 'a fact': FACT_PARAMETERS }))(
    'has plausible published parameters for %s',
    (_, { prior, learn, guess, slip }) => {
      // Ranges proposed for constructed answers; guess ≤ 0.3 and slip ≤ 0.1 keep a fit from degenerating.
      expect(prior).toBeGreaterThanOrEqual(0.25);
      expect(prior).toBeLessThanOrEqual(0.4);
      expect(learn).toBeGreaterThanOrEqual(0.1);
      expect(learn).toBeLessThanOrEqual(0.15);
      expect(guess).toBeGreaterThanOrEqual(0.02);
      expect(guess).toBeLessThanOrEqual(0.1);
      expect(slip).toBe(0.1);
    },
  );
});
