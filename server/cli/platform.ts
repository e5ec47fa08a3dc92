/**
 * `npm run -s platform -- add FILE.json` registers a platform, prints its id and what to enter there;
 * `… approve REGISTRATION DEPLOYMENT` lets one more deployment launch; `… list`; `… keys`.
 */
import { join } from 'node:path';
import { type Config, readConfig } from '../config.ts';
import { keptSecret } from '../database/folder.ts';
import { type Database, visitDatabase } from '../database/open.ts';
import { createLog } from '../log.ts';
import { createRegistrar, type Registrar, valuesForPlatform } from '../lti/registrar.ts';
import { readPlatform } from '../platforms/file.ts';
import { type Platforms, platformStore } from '../platforms/store.ts';
import { readJson } from './json-file.ts';

const USAGE = `Usage: npm run -s platform -- add FILE.json
       npm run -s platform -- approve REGISTRATION DEPLOYMENT
       npm run -s platform -- list
       npm run -s platform -- keys`;

interface Desk {
  config: Config;
  platforms: Platforms;
  registrar(): Promise<Registrar>;
}

type Reply = { ok: true; value: unknown } | { ok: false; complaints: string[] };
type Command = (desk: Desk, ...words: string[]) => Promise<Reply>;

const COMMANDS: Record<string, { words: number; run: Command }> = {
  add: { words: 1, run: add },
  approve: { words: 2, run: approve },
  list: { words: 0, run: list },
  keys: { words: 0, run: keys },
};

async function add(desk: Desk, file: string): Promise<Reply> {
  const read = await readJson(file);
  if (!read.ok) return read;
  const written = readPlatform(read.value);
  if (!written.ok) return written;
  const made = await (await desk.registrar()).register(written.value);
  return good({ registration: made.id, ...valuesForPlatform(desk.config.url) });
}

async function approve({ platforms }: Desk, id: string, deployment: string): Promise<Reply> {
  const known = await platforms.approve(id, deployment);
  if (!known) return bad(`There is no registration ${id}; see: npm run -s platform -- list`);
  return good(await platforms.byId(id));
}

async function list({ platforms }: Desk): Promise<Reply> {
  return good(await platforms.list());
}

async function keys(desk: Desk): Promise<Reply> {
  return good(await (await desk.registrar()).keySet());
}

async function main([name = '', ...words]: string[]): Promise<Reply> {
  const command = Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
  if (command === undefined || words.length !== command.words) return bad(USAGE);
  const settings = readConfig(process.env);
  if (!settings.ok) return settings;
  const opened = await visitDatabase(settings.config, createLog('silent'));
  if (!opened.ok) return bad(opened.fault.text);
  try {
    return await command.run(desk(settings.config, opened.value), ...words);
  } finally {
    await opened.value.close();
  }
}

function desk(config: Config, { connection }: Database): Desk {
  const platforms = platformStore(connection);
  return {
    config,
    platforms,
    async registrar() {
      const secret = config.secret ?? (await keptSecret(join(config.dataFolder, 'secret')));
      return createRegistrar({ connection, platforms, secret });
    },
  };
}

function good(value: unknown): Reply {
  return { ok: true, value };
}

function bad(complaint: string): Reply {
  return { ok: false, complaints: [complaint] };
}

const reply = await main(process.argv.slice(2));
if (reply.ok) console.log(JSON.stringify(reply.value, null, 2));
else for (const complaint of reply.complaints) console.error(complaint);
process.exitCode = reply.ok ? 0 : 1;
