import {
  act,
  type Problem,
  type Suggestion,
  startWork,
  type Work,
  worked,
} from '../../engine/child.ts';

/** The worked presentation as positions: position k is what lies after k moves. Each is made once, when it is first wanted. */
export class Reel {
  readonly moves: readonly Suggestion[];
  private readonly works: Work[];

  constructor(problem: Problem) {
    this.moves = worked(problem);
    this.works = [startWork(problem)];
  }

  get length(): number {
    return this.moves.length;
  }

  /** The position after `at` moves, 0 to `length`. */
  workAt(at: number): Work {
    for (let next = this.works.length; next <= at; next += 1)
      this.works.push(act(this.works[next - 1]!, this.moves[next - 1]!.action));
    return this.works[at]!;
  }
}
