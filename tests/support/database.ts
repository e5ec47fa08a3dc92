import { randomBytes } from 'node:crypto';
import { afterAll, beforeAll, inject } from 'vitest';
import { type Database, openDatabase } from '../../server/database/open.ts';
import { createLog } from '../../server/log.ts';

/** The address of a database that nothing else in this run uses. */
export function freshUri(): string {
  const uri = new URL(inject('mongodbUri'));
  uri.pathname = `test-${randomBytes(6).toString('hex')}`;
  return uri.href;
}

/** A database for one test file, there before its tests and gone after them. */
export function databaseForFile(): () => Database {
  let database: Database | undefined;
  beforeAll(async () => {
    const settings = { mongodbUri: freshUri(), dataFolder: '', freeMegabytes: 0 };
    const opened = await openDatabase(settings, createLog('silent'));
    if (!opened.ok) throw new Error(opened.fault.text);
    database = opened.value;
  });
  afterAll(async () => {
    await database?.connection.dropDatabase();
    await database?.close();
  });
  return () => {
    if (database === undefined) throw new Error('the database opens before the first test');
    return database;
  };
}
