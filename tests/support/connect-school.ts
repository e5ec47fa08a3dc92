import { randomUUID } from 'node:crypto';
import type { WrittenProblem } from '../../engine/index.ts';
import { activityStore } from '../../server/activities/store.ts';
import type { Database } from '../../server/database/open.ts';
import { createRegistrar } from '../../server/lti/registrar.ts';
import { platformStore } from '../../server/platforms/store.ts';

/** Makes the tool know a try-out school that will open at this origin, and an activity; gives the activity's id. */
export const connectSchool = async (
  { connection }: Pick<Database, 'connection'>,
  secret: string,
  origin: string,
  problems: readonly WrittenProblem[],
): Promise<string> => {
  const platforms = platformStore(connection);
  const registrar = await createRegistrar({ connection, platforms, secret });
  const { id } = await registrar.register({
    name: 'Harbour Lane School',
    issuer: origin,
    clientId: 'tool-client',
    authUrl: `${origin}/authorize`,
    tokenUrl: `${origin}/token`,
    authServer: null,
    jwksUrl: `${origin}/keys`,
    deployments: ['1'],
    frameOrigins: [],
  });
  const activities = activityStore(connection);
  await activities.prepare();
  const activity = randomUUID();
  const content = { registration: id, title: 'Two products', points: '10', problems };
  await activities.add({ ...content, activity, release: 'onFinish', createdAt: new Date() });
  return activity;
};
