import { prompting } from '../judge/prompting.ts';
import type { StageRules } from '../judge/stage.ts';
import { nextPrompt } from './prompt-moves.ts';

/** What the squares are worth, and where a place is to be found. */
export const walk: StageRules = { id: 'walk', aspects: [prompting], next: nextPrompt };
