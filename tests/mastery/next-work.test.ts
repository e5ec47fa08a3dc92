import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  nextWork,
  type Occasion,
  type Proposal,
  type Subject,
  standingsOf,
} from '../../engine/mastery/index.ts';
import { STAGE_SKILLS } from '../../engine/mastery/stage-skills.ts';
import { makeProblems, parseSpecification } from '../../engine/problems/index.ts';
import { SKILLS, STAGES } from '../../engine/vocabulary.ts';

const MONDAY = 20_000;

/** A history a subject: "+" right, "-" wrong first attempts, half on one day, half on the next. */
const history = (marks: Partial<Record<Subject, string>>): Occasion[] =>
  (Object.entries(marks) as [Subject, string][]).flatMap(([subject, row]) =>
    [...row].map((mark, index) => ({
      problem: `p${index}`,
      day: MONDAY + (index < row.length / 2 ? 0 : 1),
      subject,
      right: mark === '+',
      aided: false,
    })),
  );

const allKnown = Object.fromEntries(STAGE_SKILLS.bars.map((skill) => [skill, '++++++']));
const proposed = (marks: Partial<Record<Subject, string>>, today = MONDAY + 2): Proposal[] =>
  nextWork(standingsOf(history(marks)), 'bars', today);
const worksOf = (proposals: readonly Proposal[]): string[] => proposals.map(({ work }) => work);

describe('what might come next', () => {
  it('is more of the same or the free mat before anything is known of the child', () => {
    const [again, open] = proposed({});
    expect(again).toMatchObject({
      work: 'again',
      stage: 'bars',
      reason: { key: 'next.tooEarly', values: { stage: 'bars', skills: 7 } },
    });
    expect(open).toMatchObject({ work: 'open', stage: 'open', specification: null });
  });

  it('is the next stage when every skill of this one may be called known', () => {
    expect(proposed(allKnown)[0]).toMatchObject({
      work: 'forward',
      stage: 'facts',
      reason: { key: 'next.forward', values: { stage: 'bars', skills: 7, next: 'facts' } },
    });
    expect(worksOf(proposed({ ...allKnown, sliding: '++' }))).not.toContain('forward');
  });

  it('is practice of the weakest skill, with its counts as the reason', () => {
    const proposals = proposed({ ...allKnown, exchanging: '+-+-+-', counting: '+++-++' });
    expect(proposals[0]).toMatchObject({
      work: 'practise',
      reason: {
        key: 'next.practise',
        values: { skill: 'exchanging', problems: 6, right: 3, days: 2, lastDay: MONDAY + 1 },
      },
      specification: { stage: 'bars', exchanges: { from: 1 } },
    });
  });

  it('is another presentation when the latest three attempts were wrong', () => {
    const proposals = proposed({ ...allKnown, counting: '++---' });
    expect(proposals[0]).toMatchObject({
      work: 'presentAgain',
      reason: { values: { skill: 'counting', wrong: 3 } },
      specification: null,
    });
  });

  it('is problems with the facts that are not yet known', () => {
    const facts = { '6x7': '+-+--', '3x3': '++++++', '7x8': '-+--+', '8x9': '+++-++' } as const;
    const proposal = proposed({ ...allKnown, ...facts }).find(({ work }) => work === 'facts');
    expect(proposal?.reason.values.facts).toBe('6x7 7x8');
    expect(proposal?.specification?.facts?.required).toEqual([
      [6, 7],
      [7, 8],
    ]);
  });

  it('is a skill known long ago', () => {
    const marks = { ...allKnown, worth: '++++++' };
    expect(worksOf(proposed(marks, MONDAY + 14))).not.toContain('refresh');
    const proposal = proposed(marks, MONDAY + 15).find(({ work }) => work === 'refresh');
    expect(proposal?.reason.values.ago).toBe(14);
  });

  it('is always two or three different choices, each with a reason and playable problems', () => {
    const subject = fc.constantFrom<Subject>(...SKILLS, '6x7', '7x8', '2x2', '9x9');
    const marks = fc.array(fc.tuple(subject, fc.stringMatching(/^[+-]{1,8}$/)), { maxLength: 12 });
    const ago = fc.integer({ min: 0, max: 40 });
    fc.assert(
      fc.property(marks, fc.constantFrom(...STAGES), ago, (rows, stage, days) => {
        const standings = standingsOf(history(Object.fromEntries(rows)));
        const proposals = nextWork(standings, stage, MONDAY + days);
        expect([2, 3]).toContain(proposals.length);
        expect(new Set(proposals.map((proposal) => JSON.stringify(proposal))).size).toBe(
          proposals.length,
        );
        for (const { reason, specification } of proposals) {
          expect(reason.key).toMatch(/^next\./);
          if (specification) expectPlayable(specification);
        }
      }),
      { numRuns: 60 },
    );
  });
});

function expectPlayable(specification: object): void {
  const parsed = parseSpecification({ ...specification, count: 5 });
  const made = parsed.ok ? makeProblems(parsed.value) : parsed;
  expect(made).toMatchObject({ ok: true });
}
