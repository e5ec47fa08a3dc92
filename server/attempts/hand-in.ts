import type { Transaction } from '../database/transaction.ts';
import type { Delivery } from '../delivery/delivery.ts';
import type { Placement } from '../sessions/schema.ts';
import { hasLineItem, scoreRow, ungraded } from './finish.ts';
import type { Open } from './standings.ts';

/** Puts the score of finished, released work on its way to the gradebook, if there is one for it. */
export async function handIn(
  { attempt, activity, standing }: Open,
  placement: Placement,
  trial: boolean,
  delivery: Pick<Delivery, 'enqueueScore'>,
  transaction: Transaction,
): Promise<void> {
  if (ungraded(attempt.trial || trial, placement) !== null) return;
  if (!hasLineItem(placement) || attempt.finishedAt === null) return;
  const row = scoreRow(standing.works, attempt, placement, activity, attempt.finishedAt);
  if (row !== null) await delivery.enqueueScore(transaction, row);
}
