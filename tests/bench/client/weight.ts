import { STAGES } from '../../../engine/index.ts';
import { compressedBytes, pageAt } from '../../support/page-weight.ts';
import type { Figure } from '../figure.ts';

const BUDGET_KB = 70;

/** The heaviest of the stages' pages, in the heaviest language. */
export const weightFigure = (): Figure => {
  const [stage, bytes] = STAGES.map((one) => [one, compressedBytes(pageAt(one))] as const).reduce(
    (most, one) => (one[1] > most[1] ? one : most),
  );
  const measured = bytes / 1000;
  return {
    what: `JavaScript and CSS of a child's page as sent over https, heaviest stage (${stage})`,
    unit: 'kB',
    ...{ measured, floor: null, ratio: null, budget: BUDGET_KB, holds: measured <= BUDGET_KB },
  };
};
