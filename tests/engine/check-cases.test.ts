import { expect, it } from 'vitest';
import { checkCases } from './check-cases.ts';

it('agrees with schoolbook arithmetic on 20,000 random problems at random stages', {
  timeout: 600_000,
}, () => {
  expect(checkCases(20_000, 1)).toEqual([]);
});
