import { isSameSquare, type Square } from '../../mat/geometry.ts';
import type { Entry } from '../../mat/sheet.ts';
import type { Plan, Scene } from '../scene.ts';
import { withClaims } from './claims.ts';
import { type Amiss, amissIn, isDoubted, lostIn, rightBefore, stands } from './facts-read.ts';
import { digitDue, factsOf, isTurned, writtenValue } from './facts-row.ts';
import type { Fault } from './line-reading.ts';
import { type Fact, PARTS, type Part, type Squares } from './squares.ts';

export type Judged = Fault & { readonly kind: 'fact' | 'where'; readonly pair: Square };

export function factStep(plan: Plan, pair: Square): number {
  return nearestStep(plan, pair, 'fact');
}

/** The pair's own step, else the nearest of its row, else of the nearest row; −1: the problem has no facts. */
function nearestStep(plan: Plan, pair: Square, kind: 'fact' | 'where'): number {
  const row = pair[0];
  const column = pair[1];
  const own = column < plan.columns ? plan.tables[kind][row * plan.columns + column] : undefined;
  if (own !== undefined && column >= 0) return own;
  let best = -1;
  let nearest = Number.POSITIVE_INFINITY;
  for (let up = 0; up < plan.up.length; up += 1)
    for (let across = 0; across < plan.across.length; across += 1) {
      const step = plan.tables[kind][up * plan.columns + across] ?? -1;
      const distance = Math.abs(up - row) * plan.columns + Math.abs(across - column);
      if (step >= 0 && distance < nearest) [best, nearest] = [step, distance];
    }
  return best;
}

const NO_FAULTS: readonly Judged[] = [];

/** Which fact and place of it are not as due: a wrong value spends `fact`, a right digit elsewhere `where`. */
export function squareFaults(scene: Scene, squares: Squares): readonly Judged[] {
  for (let row = 0; row < squares.length; row += 1) {
    if (!squares[row]!.quiet) return faultsIn(scene, squares);
  }
  return NO_FAULTS;
}

/** `amiss`: what needs a fault to account for it; both slots of a fact stand in it one after the other. */
function faultsIn(scene: Scene, squares: Squares): readonly Judged[] {
  const { plan } = scene;
  const faults: Judged[] = [];
  const amiss: Amiss[] = [];
  for (let row = 0; row < squares.length; row += 1) {
    const { quiet, best } = squares[row]!;
    if (quiet) continue;
    for (const each of amissIn(plan, squares[row]!)) {
      if (isTurned(each.fact)) {
        if (faults.at(-1)?.pair !== each.fact.pair) faults.push(turnedFault(scene, each.fact));
      } else if (each.entry !== undefined || best.ends.row) amiss.push(each);
    }
  }
  // Digits that are due where nothing stands, and were found elsewhere.
  const found: Amiss[] = [];
  for (const read of squares)
    for (const entry of lostIn(read)) {
      const places = lackingIn(plan, squares, found, entry.digit);
      const place = places.find(({ fact }) => isPair(fact, entry.of!));
      if (place !== undefined) found.push(place);
      faults.push(strayFault(scene, squares, entry));
    }
  for (const each of amiss.filter((some) => mayBelongElsewhere(squares, some))) {
    const entry = each.entry!;
    const home = nearestHome(lackingIn(plan, squares, found, entry.digit), entry);
    if (home === undefined) continue;
    found.push(home, each);
    faults.push(faultOf(scene, 'where', home.fact, [entry], home.fact.due!));
  }
  const rest = amiss.filter((each) => !isFound(found, each));
  for (let index = 0; index < rest.length; index += 1) {
    const { fact, entry } = rest[index]!;
    // Two wrong digits are one misremembered fact.
    const beside = rest[index + 1]?.fact === fact ? rest[index + 1] : undefined;
    if (beside !== undefined) index += 1;
    if (entry === undefined && beside?.entry === undefined && !hasEnded(squares, fact)) continue;
    const entries = [entry, beside?.entry].filter((each) => each !== undefined);
    faults.push(faultOf(scene, 'fact', fact, entries, fact.due!));
  }
  return withClaims(
    scene,
    faults.filter(
      ({ step, acts }) =>
        step >= 0 && !acts.some((act) => squares.some((read) => isDoubted(plan, read, act))),
    ),
  );
}

/** Where nothing stands, this digit is due, and none was found for it yet. */
function lackingIn(
  plan: Plan,
  squares: Squares,
  found: readonly Amiss[],
  digit: number,
): readonly Amiss[] {
  return squares.flatMap((read) =>
    amissIn(plan, read).filter(
      (each) =>
        each.entry === undefined &&
        digitDue(each.fact.due!, each.part) === digit &&
        !isTurned(each.fact) &&
        !isFound(found, each),
    ),
  );
}

function isFound(found: readonly Amiss[], { fact, part }: Amiss): boolean {
  return found.some((each) => each.fact.pair === fact.pair && each.part === part);
}

function isPair({ pair }: Pick<Fact, 'pair'>, other: Square): boolean {
  return isSameSquare(pair, other);
}

function turnedFault(scene: Scene, fact: Fact): Judged {
  const entries = PARTS.flatMap((part) => fact[part] ?? []);
  return faultOf(scene, 'where', fact, entries, fact.due!);
}

/** A digit that names its pair: right for it and elsewhere, or of a wrong value. */
function strayFault(scene: Scene, squares: Squares, entry: Entry): Judged {
  const read = squares[entry.of![0]];
  const fact = read && factsOf(scene.plan, read.best).find((each) => isPair(each, entry.of!));
  const due = fact?.due ?? 0;
  const digits = PARTS.map((part) => digitDue(due, part));
  const kind = digits.includes(entry.digit) ? 'where' : 'fact';
  const home = fact ?? { pair: entry.of!, units: undefined, tens: undefined };
  return faultOf(scene, kind, home, [entry], due);
}

/**
 * A digit where nothing is due, or over one that was right: it may have been meant for another pair. Beside a wrong
 * digit of the same fact it is part of that fact, and so it is while the fact is still being written.
 */
function mayBelongElsewhere(squares: Squares, { fact, part, entry }: Amiss): boolean {
  if (entry === undefined || entry.digit === 0 || entry.of !== undefined) return false;
  const beside = part === 'units' ? 'tens' : 'units';
  const { lapsed } = squares[fact.pair[0]]!;
  if (fact[beside] !== undefined && !stands(lapsed, fact, beside)) return false;
  if (rightBefore(lapsed, fact, part) !== undefined || fact.due === 0) return true;
  return hasEnded(squares, fact) && digitDue(fact.due!, part) === 0;
}

/** Whether nothing more comes in its row. */
function hasEnded(squares: Squares, { pair }: Fact): boolean {
  return squares[pair[0]]!.best.ends.row;
}

function nearestHome(places: readonly Amiss[], { square }: Entry): Amiss | undefined {
  let nearest = Number.POSITIVE_INFINITY;
  let home: Amiss | undefined;
  for (const each of places) {
    const { pair } = each.fact;
    const distance = 30 * Math.abs(pair[0] - square[0]) + Math.abs(pair[1] - square[1]);
    if (distance < nearest) [nearest, home] = [distance, each];
  }
  return home;
}

function faultOf(
  { plan }: Scene,
  kind: Judged['kind'],
  fact: Pick<Fact, 'pair' | Part>,
  entries: readonly Entry[],
  due: number,
): Judged {
  const acts = entries.map(({ act }) => act);
  const given = writtenValue(fact);
  const step = nearestStep(plan, fact.pair, kind);
  return { kind, pair: fact.pair, step, at: -1, acts, given, due, missing: entries.length === 0 };
}
