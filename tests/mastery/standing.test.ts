import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Occasion,
  parseOccasions,
  SKILL_PARAMETERS,
  type Standing,
  standingsOf,
  traceKnowledge,
} from '../../engine/mastery/index.ts';

const MONDAY = 20_000;

/** First attempts at exchanging, one problem each: "+" right, "-" wrong, "h" after a hint. */
const attempts = (marks: string, day: number): Occasion[] =>
  [...marks].map((mark, index) => ({
    problem: `${day}/${index}`,
    day,
    subject: 'exchanging',
    right: mark !== '-',
    aided: mark === 'h',
  }));

const standingIn = (occasions: readonly Occasion[]): Standing => standingsOf(occasions)[0]!;

const anyOccasions = fc.array(
  fc.record({
    problem: fc.constantFrom('a', 'b', 'c', 'd', 'e', 'f', 'g'),
    day: fc.integer({ min: MONDAY, max: MONDAY + 4 }),
    subject: fc.constantFrom('exchanging' as const, 'sliding' as const, '6x7' as const),
    right: fc.boolean(),
    aided: fc.boolean(),
  }),
  { maxLength: 30 },
);

describe('how a child stands', () => {
  it('is counts and dates first', () => {
    const standing = standingIn([...attempts('+-h', MONDAY), ...attempts('++', MONDAY + 3)]);
    expect(standing).toMatchObject({
      subject: 'exchanging',
      problems: 4,
      right: 3,
      days: 2,
      aided: 1,
      firstDay: MONDAY,
      lastDay: MONDAY + 3,
      latest: [true, false, true, true],
    });
    expect(Object.keys(standing).at(-1)).toBe('probability');
  });

  it('claims nothing before four problems', () => {
    const three = [...attempts('++', MONDAY), ...attempts('+', MONDAY + 1)];
    expect(standingIn(three)).toMatchObject({ claim: 'tooEarly', probability: null });
    const four = [...three, ...attempts('+', MONDAY + 2)];
    expect(standingIn(four).claim).toBe('known');
  });

  it('claims nothing before two days, however many problems', () => {
    expect(standingIn(attempts('+++++++++', MONDAY)).claim).toBe('tooEarly');
    const helpedNextDay = [...attempts('+++++', MONDAY), ...attempts('h', MONDAY + 1)];
    expect(standingIn(helpedNextDay).claim).toBe('tooEarly');
    const nextDay = [...attempts('+++++', MONDAY), ...attempts('+', MONDAY + 1)];
    expect(standingIn(nextDay).claim).toBe('known');
  });

  it('does not call known what goes wrong', () => {
    const standing = standingIn([...attempts('+-+', MONDAY), ...attempts('--', MONDAY + 1)]);
    expect(standing.claim).toBe('learning');
    expect(standing.probability).toBeLessThan(0.5);
  });

  it('follows the published model over first unaided attempts', () => {
    const standing = standingIn([...attempts('+-h', MONDAY), ...attempts('h+-+', MONDAY + 1)]);
    const traced = traceKnowledge([true, false, true, false, true], SKILL_PARAMETERS.exchanging);
    expect(traced.ok && standing.probability).toBe(traced.ok && traced.value.knownAfterLast);
  });

  it('counts one attempt a problem: the first', () => {
    const first = [...attempts('-+++', MONDAY), ...attempts('+', MONDAY + 1)];
    const again: Occasion[] = first.map((occasion) => ({
      ...occasion,
      day: MONDAY + 2,
      right: true,
    }));
    expect(standingIn([...first, ...again])).toEqual(standingIn(first));
  });

  it('is not moved by attempts after help', () => {
    fc.assert(
      fc.property(anyOccasions, fc.boolean(), (occasions, right) => {
        const known = standingsOf(occasions).find(({ subject }) => subject === 'exchanging');
        fc.pre(known !== undefined);
        const helped = {
          problem: 'new',
          day: MONDAY + 4,
          subject: 'exchanging',
          right,
          aided: true,
        };
        const after = standingsOf([...occasions, helped as Occasion]);
        const standing = after.find(({ subject }) => subject === 'exchanging');
        expect(standing).toEqual({ ...known, aided: known.aided + 1, lastDay: MONDAY + 4 });
      }),
    );
  });

  it('does not depend on the order in which days arrive', () => {
    fc.assert(
      fc.property(anyOccasions, (occasions) => {
        const days = [4, 2, 0, 3, 1].flatMap((day) =>
          occasions.filter((occasion) => occasion.day === MONDAY + day),
        );
        const bySubject = (standings: Standing[]) =>
          standings.toSorted((a, b) => (a.subject < b.subject ? -1 : 1));
        expect(bySubject(standingsOf(days))).toEqual(bySubject(standingsOf(occasions)));
      }),
    );
  });

  it('keeps subjects apart', () => {
    fc.assert(
      fc.property(anyOccasions, (occasions) => {
        for (const standing of standingsOf(occasions)) {
          const own = occasions.filter(({ subject }) => subject === standing.subject);
          expect(standingsOf(own)).toEqual([standing]);
        }
      }),
    );
  });
});

describe('occasions from outside', () => {
  const right = { problem: 'p', day: MONDAY, subject: '6x7', right: true, aided: false };
  const answer = (value: unknown): string => {
    const parsed = parseOccasions(value);
    return parsed.ok ? 'read' : `${parsed.fault.code} ${parsed.fault.at}`;
  };

  it('are read, or refused by code and place', () => {
    expect(answer([right, { ...right, subject: 'sliding' }])).toBe('read');
    expect(answer({})).toBe('notAList occasions');
    expect(answer([right, null])).toBe('notAnObject occasions[1]');
    expect(answer([{ ...right, subject: '7x6' }])).toBe('unknownSubject occasions[0].subject');
    expect(answer([{ ...right, day: 0.5 }])).toBe('notAWholeNumber occasions[0].day');
    expect(answer([{ ...right, right: 1 }])).toBe('notYesOrNo occasions[0].right');
    expect(answer([{ ...right, problem: 3 }])).toBe('notText occasions[0].problem');
    expect(answer([{ ...right, name: 'Ada' }])).toBe('unknownField occasions[0].name');
  });

  it('never throw', () => {
    fc.assert(
      fc.property(fc.oneof(fc.anything(), fc.array(fc.anything())), (value) => {
        const parsed = parseOccasions(value);
        if (!parsed.ok) expect(typeof parsed.fault.at).toBe('string');
        else expect(() => standingsOf(parsed.value)).not.toThrow();
      }),
      { numRuns: 1000 },
    );
  });
});
