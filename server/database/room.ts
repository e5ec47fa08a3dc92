import { statfs } from 'node:fs/promises';

/** Free space for this user on the disk that holds a folder, in whole megabytes of 2^20 bytes. */
export async function freeMegabytes(folder: string): Promise<number> {
  const { bavail, bsize } = await statfs(folder);
  return Math.floor((bavail * bsize) / 2 ** 20);
}

const LOOK_EVERY_MS = 1_000;

export interface Room {
  /** False once less is free than must stay free; MongoDB itself would end when nothing is left. */
  enough(): boolean;
  close(): void;
}

/** Looks at the disk once a second, so that a request never waits for it. */
export function watchRoom(folder: string, needed: number): Room {
  let enough = true;
  const look = async () => {
    enough = (await freeMegabytes(folder).catch(() => needed)) >= needed;
  };
  const timer = setInterval(look, LOOK_EVERY_MS);
  timer.unref();
  return { enough: () => enough, close: () => clearInterval(timer) };
}
