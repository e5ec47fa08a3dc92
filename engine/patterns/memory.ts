import type { Problem } from '../problem.ts';
import { type ByList, keepAt, keptAt } from './by-list.ts';
import { type Bearing, bearsOn, type Compared, compare, compareBeyond } from './compared.ts';
import { newFork } from './effect.ts';
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
  readonly compared: Map<Topic<unknown>, ByList<Compared>>;
  readonly bearing: Map<Topic<unknown>, BearingOnTopic>;
}

/** Variants that bear on a topic: whatever the facts; and, by fact (`10 a + b`), those about facts alone. */
interface BearingOnTopic {
  readonly always: readonly ListedVariant[];
  readonly byFact: readonly (readonly ListedVariant[])[];
  /** Both, by the facts that come up; where a topic does not say which: all. */
  readonly known: Map<string, Bearing>;
  all: Bearing | null;
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

/** The sightings, all of one topic, compared now or when they were seen before. */
export function comparedIn(
  memory: Memory,
  problem: Problem,
  sightings: readonly Sighting[],
): readonly Compared[] {
  const { topic } = sightings[0]!;
  const kept = keptOf(memory, problem).compared;
  let own = kept.get(topic);
  if (own === undefined || own.size >= MOST_KEPT) {
    own = new Map();
    kept.set(topic, own);
  }
  const found: Compared[] = [];
  for (const sighting of sightings) found.push(recalled(own, problem, sighting));
  return found;
}

function recalled(own: ByList<Compared>, problem: Problem, sighting: Sighting): Compared {
  const { key, beyond } = sighting;
  let core = keptAt(own, key);
  if (core === undefined) {
    core = compare(problem, sighting);
    keepAt(own, key, core);
  }
  if (beyond === null) return core;
  const wholeKey = key.concat(BEYOND, beyond.key);
  let whole = keptAt(own, wholeKey);
  if (whole === undefined) {
    whole = compareBeyond(core, sighting);
    keepAt(own, wholeKey, whole);
  }
  return whole;
}

/** A key says how long it is: with more behind it, it is no other sighting's. */
const BEYOND = -2;

/** The variants that may have something otherwise in it. */
export function bearingIn(
  memory: Memory,
  problem: Problem,
  topic: Topic<unknown>,
  seen: unknown,
): Bearing {
  const onTopic = bearingOn(memory, problem, topic);
  if (topic.facts === undefined) {
    onTopic.all ??= bearingOf(onTopic, EVERY_FACT);
    return onTopic.all;
  }
  const facts = topic.facts(problem, seen);
  const key = facts.join();
  const own = onTopic.known.get(key) ?? bearingOf(onTopic, facts);
  onTopic.known.set(key, own);
  return own;
}

function bearingOf({ always, byFact }: BearingOnTopic, facts: readonly number[]): Bearing {
  const variants = [...always, ...new Set(facts.flatMap((fact) => byFact[fact]!))];
  return { variants, effects: newFork() };
}

function bearingOn(memory: Memory, problem: Problem, topic: Topic<unknown>): BearingOnTopic {
  const { bearing } = keptOf(memory, problem);
  const known = bearing.get(topic);
  if (known !== undefined) return known;
  const all = memory.variants.filter(
    (variant) => mayBear(variant, problem) && bearsOn(variant.beliefs, topic),
  );
  const ofFacts = all.filter(isOfFactsAlone);
  const own: BearingOnTopic = {
    known: new Map(),
    all: null,
    always: all.filter((variant) => !isOfFactsAlone(variant)),
    byFact: EVERY_FACT.map((fact) =>
      ofFacts.filter(({ beliefs }) => wrongFactsOf(beliefs).includes(fact)),
    ),
  };
  bearing.set(topic, own);
  return own;
}
