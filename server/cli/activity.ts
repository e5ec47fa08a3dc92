import { randomUUID } from 'node:crypto';
import { type ActivityFile, readActivity } from '../activities/file.ts';
import { activityStore } from '../activities/store.ts';
import { readConfig } from '../config.ts';
import { type Database, visitDatabase } from '../database/open.ts';
import { createLog } from '../log.ts';
import { platformStore } from '../platforms/store.ts';
import { readJson } from './json-file.ts';

const USAGE = 'Usage: npm run -s activity -- FILE.json';

/** `npm run -s activity -- FILE.json`: keeps an activity and prints `{"activity": id}`. */
async function main([file, ...more]: string[]): Promise<string[]> {
  if (file === undefined || file.startsWith('-') || more.length > 0) return [USAGE];
  const settings = readConfig(process.env);
  if (!settings.ok) return settings.complaints;
  const read = await readJson(file);
  if (!read.ok) return read.complaints;
  const written = readActivity(read.value);
  if (!written.ok) return written.complaints;
  const database = await visitDatabase(settings.config, createLog('silent'));
  if (!database.ok) return [database.fault.text];
  const { connection, close } = database.value;
  try {
    return await keep(connection, written.value);
  } finally {
    await close();
  }
}

async function keep(connection: Database['connection'], file: ActivityFile): Promise<string[]> {
  if ((await platformStore(connection).byId(file.registration)) === null)
    return [`There is no registration ${file.registration}; see: npm run -s platform -- list`];
  const activities = activityStore(connection);
  await activities.prepare();
  const activity = randomUUID();
  await activities.add({ ...file, activity, createdAt: new Date() });
  console.log(JSON.stringify({ activity }));
  return [];
}

const complaints = await main(process.argv.slice(2));
for (const complaint of complaints) console.error(complaint);
process.exitCode = complaints.length === 0 ? 0 : 1;
