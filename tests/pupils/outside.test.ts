import { describe, expect, test } from 'vitest';
import { CATALOGUE } from '../../engine/patterns/catalogue/index.ts';
import { undesignedProblems } from '../../engine/patterns/design/designed.ts';
import { doneWork } from '../../engine/patterns/done.ts';
import { differences, readWorks, wrongIn } from '../../engine/patterns/reading.ts';
import { type Variant, variantsFor } from '../../engine/patterns/variants.ts';
import { OUTSIDERS } from '../../engine/pupils/outside.ts';
import { playThrough } from '../../engine/pupils/play.ts';

/** Silence about a procedure says something only if it is near to none of the catalogue, yet plainly wrong. */
describe.each(['bars', 'record', 'cells', 'paper'] as const)(
  'outside procedures at %s',
  (stage) => {
    const problems = undesignedProblems(stage, 6, 5);
    const variants = variantsFor(
      CATALOGUE,
      problems.map((problem) => doneWork(problem, [])),
    );

    test.each(
      OUTSIDERS.filter(({ stages }) => stages.includes(stage)).map(
        (each) => [each.id, each] as const,
      ),
    )('%s is no pattern under another name', (_id, { beliefs }) => {
      const reading = readWorks(
        problems.map((problem) => doneWork(problem, playThrough(problem, beliefs))),
      );
      const wrong = wrongIn(reading).length;
      /** Of all decisions that either has otherwise than the right way: those that both have alike. */
      const likeness = (variant: Variant) => {
        const own = differences(reading, reading.heldBy([variant]), reading.heldBy([]));
        const alike = own.filter(({ held }) => held).length;
        return alike / Math.max(own.length, wrong);
      };
      expect(wrong).toBeGreaterThanOrEqual(6);
      expect(Math.max(...variants.map(likeness))).toBeLessThanOrEqual(0.5);
    });
  },
);
