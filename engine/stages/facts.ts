import { counting } from '../judge/counting.ts';
import { rightWays, shapeOf } from '../judge/fact-shape.ts';
import { facts as factSteps } from '../judge/facts.ts';
import { at, ownDue, squareAt } from '../judge/ledger.ts';
import { productLine } from '../judge/reading.ts';
import { saying } from '../judge/saying.ts';
import type { Aspect, Scene } from '../judge/scene.ts';
import { settling } from '../judge/settling.ts';
import { sliding } from '../judge/sliding.ts';
import type { StageRules } from '../judge/stage.ts';
import { tiles } from '../judge/tiles.ts';
import type { Suggestion } from '../judge/work.ts';
import type { Square } from '../mat/geometry.ts';
import { nextSaying } from './bar-moves.ts';
import { layBars, liftBars, undo } from './captions.ts';
import { nextWithBars, pointOfBars } from './with-bars.ts';

/** Units on the pair's square, tens on the square to the left: what of it is not there yet. */
function nextFact(scene: Scene, row: number): Suggestion | null {
  for (let column = 0; column < scene.plan.across.length; column += 1) {
    const pair: Square = [row, column];
    const due = ownDue(scene.position, pair) ?? 0;
    const { lays } = scene.ledger.plots[at(scene.plan, pair)]!;
    const move = due === 0 || lays.length > 1 ? null : layRest(scene, pair, due);
    if (move !== null) return move;
  }
  return null;
}

function layRest(scene: Scene, pair: Square, due: number): Suggestion | null {
  const { bySquare } = shapeOf(scene.plan, scene.ledger.plots[at(scene.plan, pair)]!.lays);
  const [split, whole] = rightWays(scene.plan, pair, due);
  if (
    whole !== undefined &&
    bySquare.get(at(scene.plan, pair)) === due &&
    bySquare.size === whole.size
  )
    return null;
  for (const [index, beads] of split!) {
    if ((bySquare.get(index) ?? 0) > 0) continue;
    const square = squareAt(scene.plan, index);
    return layBars(scene, { do: 'layBars', square, kind: beads, count: 1, of: pair });
  }
  return null;
}

/** The last action is taken back if it was the slip; bars of a wrong fact are lifted while they still lie there. */
function nextMend(scene: Scene): Suggestion | null {
  const { ledger, plan, lastAct } = scene;
  if (ledger.debts.some(({ act }) => act === lastAct)) return undo();
  for (const [index, { lays }] of ledger.plots.entries()) {
    const pair = squareAt(plan, index);
    const due = ownDue(scene.position, pair) ?? 0;
    const shape = shapeOf(plan, lays).bySquare;
    const astray = lays.find(({ square, kind, count }) => {
      const here = at(plan, square);
      const wanted = rightWays(plan, pair, due).some((way) => shape.get(here) === way.get(here));
      const lies = scene.position.piles[square[0]]![square[1]]!.bars[kind - 1]! >= count;
      return !wanted && count > 0 && lies;
    });
    if (astray !== undefined) {
      const { square, kind, count } = astray;
      return liftBars(scene, { do: 'liftBars', square, kind, count, of: pair });
    }
  }
  return null;
}

/** Piles are still counted when rows meet, but no pair has a step for it: the place pays. */
const countingOnly: Aspect = { ...counting, steps: () => [] };

/** As bars, each fact laid from memory: no counting out, no exchange inside a fact. */
export const facts: StageRules = {
  id: 'facts',
  aspects: [tiles, factSteps, countingOnly, saying, sliding, settling, productLine, pointOfBars],
  next: nextWithBars(nextSaying, nextFact, nextMend),
};
