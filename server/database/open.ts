import mongoose, { type Connection } from 'mongoose';
import type { Log } from '../log.ts';
import { runningOn, startEmbedded } from './embedded.ts';
import { type Found, notReplicaSet, unreachable } from './faults.ts';
import { watchRoom } from './room.ts';

export interface Database {
  readonly connection: Connection;
  readonly uri: string;
  /** False when the disk of the database that comes along is full: nothing may be written then. */
  hasRoom(): boolean;
  close(): Promise<void>;
}

interface Settings {
  readonly mongodbUri: string | null;
  readonly dataFolder: string;
  readonly freeMegabytes: number;
}

/**
 * The one way to a database: the replica set that is configured, else one that comes along on the data folder. Every
 * write is acknowledged by a majority and its journal, so what was acknowledged outlives a kill.
 */
export async function openDatabase(settings: Settings, log: Log): Promise<Found<Database>> {
  if (settings.mongodbUri !== null) return openConfigured(settings.mongodbUri);
  const embedded = await startEmbedded(settings, log);
  if (!embedded.ok) return embedded;
  const { uri, stop } = embedded.value;
  const connection = await connect(uri);
  const room = watchRoom(settings.dataFolder, settings.freeMegabytes);
  const close = async () => {
    room.close();
    await connection.close();
    await stop();
  };
  return { ok: true, value: { connection, uri, hasRoom: room.enough, close } };
}

/** For a command that may run beside the server: its database if it runs, else as above. */
export async function visitDatabase(settings: Settings, log: Log): Promise<Found<Database>> {
  const uri = settings.mongodbUri === null ? await runningOn(settings.dataFolder) : null;
  const visited = uri && (await connect(uri).catch(() => null));
  return visited ? { ok: true, value: opened(visited, uri) } : openDatabase(settings, log);
}

/** A database that somebody else runs. */
function opened(connection: Connection, uri: string): Database {
  return { connection, uri, hasRoom: () => true, close: () => connection.close() };
}

async function openConfigured(uri: string): Promise<Found<Database>> {
  const connection = await connect(uri).catch(() => null);
  if (connection === null) return unreachable();
  const hello = await connection.getClient().db('admin').command({ hello: 1 });
  if (hello.setName === undefined && hello.msg !== 'isdbgrid') {
    await connection.close();
    return notReplicaSet();
  }
  return { ok: true, value: opened(connection, uri) };
}

function connect(uri: string): Promise<Connection> {
  const named = new URL(uri).pathname.length > 1;
  const connection = mongoose.createConnection(uri, {
    ...(!named && { dbName: 'placeweave' }),
    writeConcern: { w: 'majority', journal: true },
    readConcern: { level: 'majority' },
    serverSelectionTimeoutMS: 5_000,
    maxPoolSize: 50,
    autoIndex: false,
    autoCreate: false,
    bufferCommands: false,
  });
  return connection.asPromise();
}
