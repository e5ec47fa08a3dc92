import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';
import { openDatabase } from '../../server/database/open.ts';
import { createLog } from '../../server/log.ts';
import { unpackBrowser } from './open-page.ts';

declare module 'vitest' {
  export interface ProvidedContext {
    /** The address of the one real MongoDB of this run. */
    mongodbUri: string;
  }
}

/**
 * One real MongoDB for the whole run, got the way the server gets its own; each test file takes a database of its own.
 * The browser is unpacked before any of them runs.
 */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  await unpackBrowser();
  const dataFolder = await mkdtemp(join(tmpdir(), 'placeweave-tests-'));
  const settings = { mongodbUri: null, dataFolder, freeMegabytes: 0 };
  const opened = await openDatabase(settings, createLog('silent'));
  if (!opened.ok) throw new Error(opened.fault.text);
  project.provide('mongodbUri', opened.value.uri);
  return async () => {
    await opened.value.close();
    await rm(dataFolder, { recursive: true, force: true });
  };
}
