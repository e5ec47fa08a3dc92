import { mongo } from 'mongoose';
import type { ErrorCode } from '../errors.ts';

/** MongoDB error codes (mongodb/mongo, src/mongo/base/error_codes.yml). */
const CODE = { duplicateKey: 11_000, writeConflict: 112, outOfDiskSpace: 14_031 } as const;

/** The code under which a failure of the database is answered, or `null` if it is not the database's. */
export function failureOf(fault: unknown): ErrorCode | null {
  if (fault instanceof mongo.MongoServerError) return serverFailure(fault);
  if (fault instanceof mongo.MongoError) return 'databaseAway';
  const name = fault instanceof Error ? fault.name : '';
  return name.startsWith('Mongoose') && !name.includes('Validat') ? 'databaseAway' : null;
}

function serverFailure(fault: mongo.MongoServerError): ErrorCode {
  if (fault.code === CODE.outOfDiskSpace) return 'diskFull';
  if (fault.code === CODE.writeConflict) return 'busy';
  const passing = fault.hasErrorLabel('RetryableWriteError') || away(fault);
  return passing ? 'databaseAway' : 'broken';
}

/** Stepping down, shutting down, recovering: the server will be back. */
function away(fault: mongo.MongoServerError): boolean {
  return [91, 189, 10_107, 11_600, 11_602, 13_435, 13_436].includes(Number(fault.code));
}

/** An upsert that met another upsert of the same key finds the record the second time. */
export async function upserting<T>(upsert: () => Promise<T>): Promise<T> {
  try {
    return await upsert();
  } catch (fault) {
    const met = fault instanceof mongo.MongoServerError && fault.code === CODE.duplicateKey;
    if (met) return upsert();
    throw fault;
  }
}
