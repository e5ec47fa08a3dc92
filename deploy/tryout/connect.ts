import { execFile } from 'node:child_process';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { readConfig } from '../../server/config.ts';
import { openDatabase } from '../../server/database/open.ts';
import { createLog } from '../../server/log.ts';
import { ROOT } from './child-process.ts';
import { DEMO_ACTIVITIES } from './demo.ts';
import type { Plan, ToolValues } from './plan.ts';

type Command = (args: string[]) => Promise<Record<string, string>>;

/** Runs a command of the tool and reads the JSON that it prints. */
const commandOn =
  (env: Record<string, string>): Command =>
  async ([file = '', ...args]) => {
    const run = promisify(execFile);
    const path = join(ROOT, 'server/cli', file);
    const { stdout } = await run(process.execPath, ['--import', 'tsx', path, ...args], {
      cwd: ROOT,
      env: { ...process.env, ...env },
    });
    return JSON.parse(stdout) as Record<string, string>;
  };

const handIn = async (plan: Plan, name: string, content: object): Promise<string> => {
  const file = join(plan.folder, name);
  await writeFile(file, JSON.stringify(content, null, 2));
  return file;
};

type Added = ToolValues & { registration: string };

const addPlatform = async (plan: Plan, command: Command) => {
  const { issuer, clientId, deploymentId, school } = plan;
  const file = await handIn(plan, 'platform.json', {
    name: 'Harbour Lane School (try-out)',
    issuer,
    clientId,
    authUrl: `${school}/authorize`,
    tokenUrl: `${school}/token`,
    jwksUrl: `${school}/keys`,
    deployments: [deploymentId],
  });
  return (await command(['platform.ts', 'add', file])) as unknown as Added;
};

const addActivities = (plan: Plan, registration: string, command: Command): Promise<string[]> =>
  Promise.all(
    DEMO_ACTIVITIES.map(async ({ title, problems, points }, index) => {
      const file = await handIn(plan, `activity-${index + 1}.json`, {
        registration,
        title,
        problems,
        ...(points === null ? {} : { points: String(points) }),
      });
      const { activity = '' } = await command(['activity.ts', file]);
      return activity;
    }),
  );

const withDatabase = async <T>(env: Record<string, string>, work: (uri: string) => Promise<T>) => {
  const settings = readConfig({ ...process.env, ...env });
  if (!settings.ok) throw new Error(settings.complaints.join('\n'));
  const database = await openDatabase(settings.config, createLog('silent'));
  if (!database.ok) throw new Error(database.fault.text);
  try {
    return await work(database.value.uri);
  } finally {
    await database.value.close();
  }
};

/**
 * Makes the tool know the school, once, with the tool's own commands, as an administrator would; again when an address
 * has moved to another port. Needs the database to itself, so it comes before the tool is started.
 */
export const connect = async (plan: Plan, env: Record<string, string>): Promise<Plan> => {
  const { tool, school, connectedAt } = plan;
  if (connectedAt?.tool === tool && connectedAt.school === school) return plan;
  return withDatabase(env, async (uri) => {
    const command = commandOn({ ...env, PLACEWEAVE_MONGODB_URI: uri });
    const { registration, ...values } = await addPlatform(plan, command);
    const known = plan.activities.length > 0;
    const activities = known ? plan.activities : await addActivities(plan, registration, command);
    return { ...plan, activities, values, connectedAt: { tool, school } };
  });
};
