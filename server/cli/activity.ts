import { randomUUID } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { readActivity } from '../activities/file.ts';
import { activityStore } from '../activities/store.ts';
import { readConfig } from '../config.ts';
import { visitDatabase } from '../database/open.ts';
import { createLog } from '../log.ts';

/** `npm run -s activity -- FILE.json`: keeps an activity and prints `{"activity": id}`. */
async function main(file: string | undefined): Promise<string[]> {
  if (file === undefined) return ['Usage: npm run -s activity -- FILE.json'];
  const settings = readConfig(process.env);
  if (!settings.ok) return settings.complaints;
  const written = readActivity(await jsonIn(file));
  if (!written.ok) return written.complaints;
  const database = await visitDatabase(settings.config, createLog('silent'));
  if (!database.ok) return [database.fault.text];
  const { connection, close } = database.value;
  const activities = activityStore(connection);
  await activities.prepare();
  const id = randomUUID();
  await activities.add({ ...written.value, activity: id, createdAt: new Date() });
  await close();
  console.log(JSON.stringify({ activity: id }));
  return [];
}

async function jsonIn(file: string): Promise<unknown> {
  try {
    return JSON.parse(await readFile(file, 'utf8'));
  } catch {
    return null;
  }
}

const complaints = await main(process.argv[2]);
for (const complaint of complaints) console.error(complaint);
process.exitCode = complaints.length === 0 ? 0 : 1;
