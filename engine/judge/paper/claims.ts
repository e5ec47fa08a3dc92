import type { Scene } from '../scene.ts';

interface Charge {
  readonly step: number;
  readonly acts: readonly number[];
}

/**
 * What an answer has charged for an action stays with that step; one charge pays for one fault, and faults that
 * want each other's step change places. What concerns a single action (later in the list) comes first.
 */
export function withClaims<F extends Charge>(
  { claims }: Scene,
  faults: readonly F[],
): readonly F[] {
  if (claims.size === 0) return faults;
  const steps = faults.map(({ step }) => step);
  const settled = new Set<number>();
  for (let index = faults.length - 1; index >= 0; index -= 1) {
    const claimed = faults[index]!.acts.flatMap((act) => claims.get(act) ?? []);
    const free = claimed.filter((step) => !settled.has(step));
    const step = free.includes(steps[index]!) ? steps[index]! : free[0];
    if (step === undefined) continue;
    const other = steps.indexOf(step);
    if (other >= 0) steps[other] = steps[index]!;
    steps[index] = step;
    settled.add(step);
  }
  return faults.map((fault, index) => ({ ...fault, step: steps[index]! }));
}
