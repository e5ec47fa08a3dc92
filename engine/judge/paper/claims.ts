import type { Scene } from '../scene.ts';

interface Charge {
  readonly step: number;
  readonly acts: readonly number[];
}

/** What an answer has charged for an action stays with that step; one charge pays for one fault. */
export function withClaims<F extends Charge>(
  { claims }: Scene,
  faults: readonly F[],
): readonly F[] {
  if (claims.size === 0) return faults;
  const own = new Set(faults.map(({ step }) => step));
  return faults.map((fault) => {
    const claimed = fault.acts.map((act) => claims.get(act));
    if (claimed.includes(fault.step)) return fault;
    const step = claimed.find((each) => each !== undefined && !own.has(each));
    if (step === undefined) return fault;
    own.add(step);
    return { ...fault, step };
  });
}
