/**
 * Makes the tool know the school, as an administrator would: `connect.ts PLAN.json` registers the platform, adds the
 * demo activities where there are none yet, and prints what the plan lacked. A process of its own, because it needs
 * the database to itself and is needed once.
 */
import { randomUUID } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { readActivity } from '../../server/activities/file.ts';
import { activityStore } from '../../server/activities/store.ts';
import { type Config, readConfig } from '../../server/config.ts';
import { type Database, openDatabase } from '../../server/database/open.ts';
import { createLog } from '../../server/log.ts';
import { createRegistrar, valuesForPlatform } from '../../server/lti/registrar.ts';
import { readPlatform } from '../../server/platforms/file.ts';
import { platformStore } from '../../server/platforms/store.ts';
import { openSecret } from '../../server/secret.ts';
import { DEMO_ACTIVITIES } from './demo.ts';
import type { Connected, Plan } from './plan.ts';

type Read<T> = { ok: true; value: T } | { ok: false; complaints: readonly string[] };

/** The demo is ours: what is wrong with it is no user's doing. */
const sound = <T>(read: Read<T>): T => {
  if (!read.ok) throw new Error(read.complaints.join('\n'));
  return read.value;
};

const register = async ({ connection }: Database, config: Config, plan: Plan): Promise<string> => {
  const known = await openSecret(config, connection);
  if (!known.ok) throw new Error(known.complaint);
  const { secret } = known;
  const platforms = platformStore(connection);
  const registrar = await createRegistrar({ connection, platforms, secret });
  const platform = readPlatform(
    {
      name: 'Harbour Lane School (try-out)',
      issuer: plan.issuer,
      clientId: plan.clientId,
      authUrl: `${plan.school}/authorize`,
      tokenUrl: `${plan.school}/token`,
      jwksUrl: `${plan.school}/keys`,
      deployments: [plan.deploymentId],
    },
    config,
  );
  return (await registrar.register(sound(platform))).id;
};

const addActivities = async ({ connection }: Database, registration: string): Promise<string[]> => {
  const store = activityStore(connection);
  await store.prepare();
  const ids: string[] = [];
  for (const { title, problems, points, policy } of DEMO_ACTIVITIES) {
    const marked = points === null ? {} : { points: String(points) };
    const content = sound(readActivity({ registration, title, problems, policy, ...marked }));
    const activity = randomUUID();
    await store.add({ ...content, activity, createdAt: new Date() });
    ids.push(activity);
  }
  return ids;
};

const connect = async (plan: Plan): Promise<Connected> => {
  const settings = readConfig(process.env);
  if (!settings.ok) throw new Error(settings.complaints.join('\n'));
  const opened = await openDatabase(settings.config, createLog('silent'));
  if (!opened.ok) throw new Error(opened.fault.text);
  try {
    const registration = await register(opened.value, settings.config, plan);
    const known = plan.activities.length > 0;
    const activities = known ? plan.activities : await addActivities(opened.value, registration);
    return { activities, values: valuesForPlatform(plan.tool) };
  } finally {
    await opened.value.close();
  }
};

try {
  const plan = JSON.parse(await readFile(process.argv[2] ?? '', 'utf8')) as Plan;
  console.log(JSON.stringify(await connect(plan)));
} catch (error) {
  console.error((error as Error).message);
  process.exitCode = 1;
}
