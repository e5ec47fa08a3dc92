/** Why there is no database, each with what to do about it. The text is for the person who started the server. */
export interface DatabaseFault {
  readonly code:
    | 'noMongod'
    | 'folderInUse'
    | 'folderNotWritable'
    | 'diskFull'
    | 'otherVersion'
    | 'notReplicaSet'
    | 'unreachable'
    | 'mongodFailed';
  readonly text: string;
}

export type Found<T> = { ok: true; value: T } | { ok: false; fault: DatabaseFault };

const fault = (code: DatabaseFault['code'], text: string) => ({
  ok: false as const,
  fault: { code, text },
});

export const noMongod = (tried: readonly string[]) =>
  fault(
    'noMongod',
    `No MongoDB server program (mongod) could be had. Tried: ${tried.join('; ')}. ` +
      'Remedy: install MongoDB 6 or newer so that `mongod` is on the PATH, or run a MongoDB replica set and set ' +
      'PLACEWEAVE_MONGODB_URI to its address.',
  );

export const folderInUse = (folder: string, pid: number | null) =>
  fault(
    'folderInUse',
    `The data folder ${folder} is in use by another Placeweave${pid === null ? '' : ` (process ${pid})`}. ` +
      'Remedy: stop that one first, or set PLACEWEAVE_DATA to another folder.',
  );

export const folderNotWritable = (folder: string) =>
  fault(
    'folderNotWritable',
    `The data folder ${folder} cannot be written. ` +
      'Remedy: give this user the right to write there, or set PLACEWEAVE_DATA to another folder.',
  );

export const diskFull = (folder: string, free: number, needed: number) =>
  fault(
    'diskFull',
    `The disk that holds ${folder} is full: ${free} MB are free, ${needed} MB are needed. ` +
      'Remedy: free some space, or set PLACEWEAVE_DATA to a folder on another disk.',
  );

export const otherVersion = (folder: string, binary: string) =>
  fault(
    'otherVersion',
    `The data in ${folder} were written by another version of MongoDB, which ${binary} cannot open. ` +
      'Remedy: put the mongod that wrote them on the PATH, or upgrade one major version at a time.',
  );

export const notReplicaSet = () =>
  fault(
    'notReplicaSet',
    'The MongoDB server at PLACEWEAVE_MONGODB_URI is not a replica set, so it has no transactions. ' +
      'Remedy: start it with --replSet and call rs.initiate() once; one member is enough.',
  );

export const unreachable = () =>
  fault(
    'unreachable',
    'The MongoDB server at PLACEWEAVE_MONGODB_URI does not answer or does not accept the credentials. ' +
      'Remedy: check the address, the credentials, and that the server is running.',
  );

export const mongodFailed = (logFile: string, reason: string) =>
  fault('mongodFailed', `The database did not start (${reason}). Remedy: see ${logFile}.`);
