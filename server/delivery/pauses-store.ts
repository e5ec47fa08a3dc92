import type { Connection } from 'mongoose';

interface Pause {
  /** Id of the registration. */
  _id: string;
  /** ms. */
  until: number;
}

export type Pauses = ReturnType<typeof pausesStore>;

/** Platforms to which nothing is sent for a while, for all server processes. */
export function pausesStore(connection: Connection) {
  const pauses = connection.collection<Pause>('deliverypauses');

  return {
    /** A longer pause that is already agreed on stays. */
    async begin(registration: string, until: number): Promise<void> {
      await pauses.updateOne({ _id: registration }, { $max: { until } }, { upsert: true });
    },

    async holds(registration: string, now: number): Promise<boolean> {
      return (await pauses.findOne({ _id: registration, until: { $gt: now } })) !== null;
    },
  };
}
