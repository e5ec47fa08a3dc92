/**
 * `npm run -s platform -- add FILE.json` registers a platform, prints its id and what to enter there;
 * `… approve REGISTRATION DEPLOYMENT` lets one more deployment launch; `… suspend REGISTRATION` ends its launches and
 * sessions until `… resume REGISTRATION`; `… list`; `… keys`.
 */
import { type Config, readConfig } from '../config.ts';
import { type Database, visitDatabase } from '../database/open.ts';
import { createLog } from '../log.ts';
import { createRegistrar, type Registrar, valuesForPlatform } from '../lti/registrar.ts';
import { readPlatform } from '../platforms/file.ts';
import type { Registration } from '../platforms/registration.ts';
import { type Platforms, platformStore } from '../platforms/store.ts';
import { openSecret } from '../secret.ts';
import { readJson } from './json-file.ts';

const USAGE = `Usage: npm run -s platform -- add FILE.json
       npm run -s platform -- approve REGISTRATION DEPLOYMENT
       npm run -s platform -- suspend REGISTRATION
       npm run -s platform -- resume REGISTRATION
       npm run -s platform -- list
       npm run -s platform -- keys`;

interface Desk {
  config: Config;
  platforms: Platforms;
  registrar(): Promise<{ ok: true; value: Registrar } | Refused>;
}

type Refused = { ok: false; complaints: string[] };

type Reply = { ok: true; value: unknown } | Refused;
type Command = (desk: Desk, ...words: string[]) => Promise<Reply>;

const COMMANDS: Record<string, { words: number; run: Command }> = {
  add: { words: 1, run: add },
  approve: { words: 2, run: approve },
  suspend: { words: 1, run: setStatus('suspended') },
  resume: { words: 1, run: setStatus('active') },
  list: { words: 0, run: list },
  keys: { words: 0, run: keys },
};

async function add(desk: Desk, file: string): Promise<Reply> {
  const read = await readJson(file);
  if (!read.ok) return read;
  const written = readPlatform(read.value, desk.config);
  if (!written.ok) return written;
  const registrar = await desk.registrar();
  if (!registrar.ok) return registrar;
  const { issuer, clientId, deployments } = written.value;
  const [before] = await desk.platforms.byIssuer(issuer, clientId);
  const made = await registrar.value.register(written.value);
  const enter = valuesForPlatform(desk.config.url);
  if (before === undefined) return good({ registration: made.id, ...enter });
  const deploymentsDropped = before.deployments.filter((one) => !deployments.includes(one));
  return good({ registration: made.id, changed: true, deploymentsDropped, ...enter });
}

async function approve({ platforms }: Desk, id: string, deployment: string): Promise<Reply> {
  return (await platforms.approve(id, deployment)) ? good(await platforms.byId(id)) : unknown(id);
}

function setStatus(status: Registration['status']): Command {
  return async ({ platforms }, id = '') =>
    (await platforms.setStatus(id, status)) ? good(await platforms.byId(id)) : unknown(id);
}

async function list({ platforms }: Desk): Promise<Reply> {
  return good(await platforms.list());
}

async function keys(desk: Desk): Promise<Reply> {
  const registrar = await desk.registrar();
  return registrar.ok ? good(await registrar.value.keySet()) : registrar;
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
      const known = await openSecret(config, connection);
      if (!known.ok) return bad(known.complaint);
      const { secret } = known;
      return { ok: true, value: await createRegistrar({ connection, platforms, secret }) };
    },
  };
}

function good(value: unknown): Reply {
  return { ok: true, value };
}

function unknown(id: string): Refused {
  return bad(`There is no registration ${id}; see: npm run -s platform -- list`);
}

function bad(complaint: string): Refused {
  return { ok: false, complaints: [complaint] };
}

const reply = await main(process.argv.slice(2));
if (reply.ok) console.log(JSON.stringify(reply.value, null, 2));
else for (const complaint of reply.complaints) console.error(complaint);
process.exitCode = reply.ok ? 0 : 1;
