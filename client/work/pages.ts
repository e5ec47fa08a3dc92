import type { Stage } from '../../engine/child.ts';
import type { StagePage } from './tool.ts';

const kept: Partial<Record<Stage, StagePage>> = {};

export const keepPage = (stage: Stage, page: StagePage): void => {
  kept[stage] = page;
};

/** The page of a stage that was fetched before. */
export const pageOf = (stage: Stage): StagePage => {
  const page = kept[stage];
  if (page === undefined) throw new Error(`the page of the stage ${stage} was not fetched`);
  return page;
};
