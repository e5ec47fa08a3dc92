import type { ClientSession, Connection } from 'mongoose';

/** What a store needs to take part in a transaction. */
export type Transaction = ClientSession;

/** All or nothing; tried again when it meets another one. What the task returns is what was committed. */
export async function inTransaction<T>(
  connection: Connection,
  task: (transaction: Transaction) => Promise<T>,
): Promise<T> {
  const session = await connection.startSession();
  try {
    return await session.withTransaction(() => task(session), {
      readConcern: { level: 'snapshot' },
      writeConcern: { w: 'majority', journal: true },
    });
  } finally {
    await session.endSession();
  }
}
