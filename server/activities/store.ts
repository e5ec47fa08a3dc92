import type { Connection } from 'mongoose';
import { type ActivityVersion, activityVersionSchema } from './schema.ts';

type Content = Omit<ActivityVersion, 'version'>;
export type ActivityStore = ReturnType<typeof activityStore>;

export function activityStore(connection: Connection) {
  const versions = connection.model<ActivityVersion>(
    'ActivityVersion',
    activityVersionSchema,
    'activityversions',
  );

  const newest = (activity: string, registration: string) =>
    versions
      .findOne({ activity, registration })
      .sort({ version: -1 })
      .select('-_id')
      .lean<ActivityVersion>()
      .exec();

  return {
    prepare: () => versions.createIndexes(),

    newest,

    find: (activity: string, version: number) =>
      versions.findOne({ activity, version }).select('-_id').lean<ActivityVersion>().exec(),

    /** Adds the next version; two at the same moment: the index lets one of them through. */
    async add(content: Content): Promise<ActivityVersion> {
      const last = await newest(content.activity, content.registration);
      const added = { ...content, version: (last?.version ?? 0) + 1 };
      await versions.create([added]);
      return added;
    },
  };
}
