import { prompting } from '../judge/prompting.ts';
import type { StageRules } from '../judge/stage.ts';
import { tiles } from '../judge/tiles.ts';
import { nextPrompt } from './prompt-moves.ts';
import { nextTile } from './tile-moves.ts';

/** Both numbers laid in tiles and read back. */
export const build: StageRules = {
  id: 'build',
  aspects: [tiles, prompting],
  next: (scene, findings) => nextTile(scene) ?? nextPrompt(scene, findings),
};
