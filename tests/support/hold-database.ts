import { openDatabase } from '../../server/database/open.ts';
import { createLog } from '../../server/log.ts';

/** A process that opens the database on a folder, writes one record, says so, and stays until it is ended. */
const [dataFolder = ''] = process.argv.slice(2);
const settings = { mongodbUri: null, dataFolder, freeMegabytes: 0 };
const opened = await openDatabase(settings, createLog('silent'));
if (!opened.ok) {
  console.log(JSON.stringify(opened.fault));
  process.exit(1);
}
const { connection, close } = opened.value;
await connection.collection('marks').insertOne({ pid: process.pid });
process.on('SIGTERM', () => close().then(() => process.exit(0)));
console.log(JSON.stringify({ open: true }));
