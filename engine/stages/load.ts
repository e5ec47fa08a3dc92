import type { StageRules } from '../judge/stage.ts';
import type { Stage } from '../vocabulary.ts';
import { know } from './known.ts';

const FILES: Readonly<Record<Stage, () => Promise<StageRules>>> = {
  walk: async () => (await import('./walk.ts')).walk,
  build: async () => (await import('./build.ts')).build,
  bars1: async () => (await import('./bars.ts')).bars1,
  bars: async () => (await import('./bars.ts')).bars,
  facts: async () => (await import('./facts.ts')).facts,
  record: async () => (await import('./record.ts')).record,
  cells: async () => (await import('./cells.ts')).cells,
  paper: async () => (await import('./paper.ts')).paper,
  open: async () => (await import('./open.ts')).open,
};

/** Makes a stage playable where not all are loaded from the start: a child's page fetches only what its work needs. */
export async function loadStage(stage: Stage): Promise<void> {
  know(await FILES[stage]());
}
