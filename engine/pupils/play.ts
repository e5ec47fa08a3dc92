import type { Action } from '../mat/action.ts';
import type { Problem } from '../problem.ts';
import type { Stage } from '../vocabulary.ts';
import { playBars } from './bars.ts';
import type { Beliefs } from './beliefs.ts';
import { playCells } from './cells.ts';
import { type Hand, handOf, USUAL_HABITS } from './hand.ts';
import { playPaper } from './paper.ts';

type Player = (problem: Problem, beliefs: Beliefs, hand: Hand) => void;

const PLAYERS: Readonly<Partial<Record<Stage, Player>>> = {
  bars: playBars,
  record: playBars,
  cells: playCells,
  paper: playPaper,
};

/** The actions of a pupil who believes this; without a hand of its own: the usual habits, no slips. */
export function playThrough(
  problem: Problem,
  beliefs: Beliefs,
  hand: Hand = handOf(USUAL_HABITS),
): readonly Action[] {
  PLAYERS[problem.stage]?.(problem, beliefs, hand);
  return hand.actions;
}

/** Whether synthetic pupils can work at the stage. */
export function canPlay(stage: Stage): boolean {
  return PLAYERS[stage] !== undefined;
}
