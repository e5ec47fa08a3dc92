import { join } from 'node:path';
import type { Config } from './config.ts';
import { keptSecret } from './database/folder.ts';
import type { Database } from './database/open.ts';
import { derive } from './lti/seal.ts';

export type SecretResult = { ok: true; secret: string } | { ok: false; complaint: string };

const OTHER_SECRET =
  'PLACEWEAVE_SECRET is not the secret that this database was first used with: keys towards the platforms would not open, and children would not be known again. Remedy: set the former one, or the former data folder where none was set.';

/** The secret of the settings or of the data folder, if it is the one that this database has known from the beginning. */
export async function openSecret(
  config: Pick<Config, 'secret' | 'dataFolder'>,
  connection: Database['connection'],
): Promise<SecretResult> {
  const secret = config.secret ?? (await keptSecret(join(config.dataFolder, 'secret')));
  const marks = connection.collection<{ _id: string; mark: string }>('secrets');
  const mark = derive(secret, 'mark');
  await marks.updateOne({ _id: 'mark' }, { $setOnInsert: { mark } }, { upsert: true });
  const known = await marks.findOne({ _id: 'mark' });
  return known?.mark === mark ? { ok: true, secret } : { ok: false, complaint: OTHER_SECRET };
}
