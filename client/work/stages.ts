import { loadStage, type Stage } from '../../engine/child.ts';

/** Fetches the rules of the stages that an attempt is made of; false when the network does not give them. */
export const loadStages = async (stages: readonly Stage[]): Promise<boolean> => {
  const rules = [...new Set(stages)].map(loadStage);
  return (await Promise.allSettled(rules)).every(({ status }) => status === 'fulfilled');
};
