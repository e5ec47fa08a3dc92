import type { Problem } from '../problem.ts';
import { bearsOn, type Compared, compare } from './compared.ts';
import type { Sighting, Topic } from './evidence/evidence.ts';
import {
  EVERY_FACT,
  isOfFactsAlone,
  type ListedVariant,
  mayBear,
  wrongFactsOf,
} from './variants.ts';

/** More is forgotten all at once: a class does many things alike, and no two children all things. */
const MOST_KEPT = 1_000;

/** What has been seen in one problem. */
interface Kept {
  readonly compared: Map<Topic<unknown>, Map<string, Compared>>;
  readonly bearing: Map<Topic<unknown>, Bearing>;
}

/** Variants that bear on a topic: whatever the facts; and, by fact (`10 a + b`), those about facts alone. */
interface Bearing {
  readonly always: readonly ListedVariant[];
  readonly byFact: readonly (readonly ListedVariant[])[];
  /** Both, by the facts that come up. */
  readonly known: Map<string, readonly ListedVariant[]>;
}

/** A class works the same problems, and mostly does the same things: each is compared once. */
export interface Memory {
  readonly variants: readonly ListedVariant[];
  readonly problems: WeakMap<Problem, Kept>;
}

export function emptyMemory(variants: readonly ListedVariant[]): Memory {
  return { variants, problems: new WeakMap() };
}

const memories = new WeakMap<readonly ListedVariant[], Memory>();

/** What is remembered of all works that these variants were tried on. */
export function memoryOf(variants: readonly ListedVariant[]): Memory {
  const known = memories.get(variants);
  if (known !== undefined) return known;
  const memory = emptyMemory(variants);
  memories.set(variants, memory);
  return memory;
}

function keptOf({ problems }: Memory, problem: Problem): Kept {
  const known = problems.get(problem);
  if (known !== undefined) return known;
  const kept: Kept = { compared: new Map(), bearing: new Map() };
  problems.set(problem, kept);
  return kept;
}

/** The sighting, compared now or when it was seen before. */
export function comparedIn(memory: Memory, problem: Problem, sighting: Sighting): Compared {
  const { topic, key } = sighting;
  const kept = keptOf(memory, problem).compared;
  let own = kept.get(topic);
  if (own === undefined || own.size >= MOST_KEPT) {
    own = new Map();
    kept.set(topic, own);
  }
  const known = own.get(key);
  if (known !== undefined) return known;
  const compared = compare(problem, sighting);
  own.set(key, compared);
  return compared;
}

/** The variants that may have something otherwise in it. */
export function bearingIn(
  memory: Memory,
  { problem, sighting }: Compared,
): readonly ListedVariant[] {
  const { topic, seen } = sighting;
  const { always, byFact, known } = bearingOn(memory, problem, topic);
  const facts = topic.facts?.(problem, seen) ?? EVERY_FACT;
  const key = facts.join();
  const own = known.get(key) ?? [...always, ...new Set(facts.flatMap((fact) => byFact[fact]!))];
  known.set(key, own);
  return own;
}

function bearingOn(memory: Memory, problem: Problem, topic: Topic<unknown>): Bearing {
  const { bearing } = keptOf(memory, problem);
  const known = bearing.get(topic);
  if (known !== undefined) return known;
  const all = memory.variants.filter(
    (variant) => mayBear(variant, problem) && bearsOn(variant.beliefs, topic),
  );
  const ofFacts = all.filter(isOfFactsAlone);
  const own: Bearing = {
    known: new Map(),
    always: all.filter((variant) => !isOfFactsAlone(variant)),
    byFact: EVERY_FACT.map((fact) =>
      ofFacts.filter(({ beliefs }) => wrongFactsOf(beliefs).includes(fact)),
    ),
  };
  bearing.set(topic, own);
  return own;
}
