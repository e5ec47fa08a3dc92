import { loadStage } from '../../engine/child.ts';
import { readFragment } from '../problems/address.ts';
import { PwPrint } from './print-page.ts';

/** The printing page on the problems that its address names. Answers are worked in bars, questions at their own stages. */
export const startPrint = async (): Promise<HTMLElement> => {
  await Promise.all((['bars1', 'bars', 'walk', 'build'] as const).map(loadStage));
  return Object.assign(new PwPrint(), { given: readFragment(location.hash) });
};
