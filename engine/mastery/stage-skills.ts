import type { Skill, Stage } from '../vocabulary.ts';

/** What every problem of a stage asks for; the point is asked for only where a number has one. */
export const STAGE_SKILLS: Readonly<Record<Stage, readonly Skill[]>> = {
  walk: ['worth', 'finding'],
  build: ['building'],
  bars1: ['building', 'laying', 'counting', 'exchanging', 'saying', 'reading'],
  bars: ['building', 'laying', 'counting', 'exchanging', 'saying', 'sliding', 'reading'],
  facts: ['building', 'fact', 'place', 'exchanging', 'saying', 'sliding', 'reading'],
  record: [
    'building',
    'laying',
    'counting',
    'exchanging',
    'partial',
    'placeholder',
    'sliding',
    'reading',
  ],
  cells: ['building', 'fact', 'place', 'adding'],
  paper: ['partial', 'placeholder', 'adding'],
  open: [],
};

/** The usual order in the trade (common practice, no source); a guide starts anywhere. */
export const STAGE_ORDER: readonly Stage[] = [
  'walk',
  'build',
  'bars1',
  'bars',
  'facts',
  'record',
  'paper',
];

/** The stage that usually follows; null after the last. The bridge `cells` leads to paper. */
export function stageAfter(stage: Stage): Stage | null {
  if (stage === 'cells') return 'paper';
  const index = STAGE_ORDER.indexOf(stage);
  return index < 0 ? null : (STAGE_ORDER[index + 1] ?? null);
}
