import { open, readFile, rename } from 'node:fs/promises';
import type { JWK } from 'jose';

/** One child's mark in one column. `final` is what people see; `raw` what the tool last sent. */
export interface Grade {
  raw: number | null;
  final: number | null;
  comment: string | null;
  /** Seconds since 1970; what a score's timestamp is compared with. */
  modified: number | null;
  overridden: boolean;
  locked: boolean;
}

export interface LineItem {
  id: string;
  label: string;
  scoreMaximum: number;
  resourceId?: string;
  tag?: string;
  resourceLinkId?: string;
}

/** A score that was taken (answered 200), as it came. */
export interface AcceptedScore {
  /** When it was taken, by the school's clock. */
  at: string;
  lineItem: string;
  userId: string;
  scoreGiven: number | null;
  scoreMaximum: number | null;
  comment: string | null;
  timestamp: string;
  gradingProgress: string;
}

export interface AccessToken {
  scopes: string[];
  /** Milliseconds since 1970. */
  expires: number;
}

export interface SchoolState {
  signingKey: JWK;
  lineItems: LineItem[];
  nextLineItem: number;
  /** By line item, then by person. */
  grades: Record<string, Record<string, Grade>>;
  accepted: AcceptedScore[];
  tokens: Record<string, AccessToken>;
}

export interface StateFile {
  state: SchoolState;
  /** Resolves when what `state` holds now is on the disk. */
  save(): Promise<void>;
}

/** Either the old file or the new one is there, whole, whenever the process is killed. */
const writeWhole = async (file: string, text: string): Promise<void> => {
  const half = `${file}.new`;
  const handle = await open(half, 'w', 0o600);
  try {
    await handle.writeFile(text);
    await handle.sync();
  } finally {
    await handle.close();
  }
  await rename(half, file);
};

const read = async (file: string): Promise<SchoolState | null> => {
  try {
    return JSON.parse(await readFile(file, 'utf8')) as SchoolState;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
    throw error;
  }
};

/** Opens the file, or begins it with `fresh`. Saves asked for while one is being written share the next one. */
export const openState = async (
  file: string,
  fresh: () => Promise<SchoolState>,
): Promise<StateFile> => {
  const state = (await read(file)) ?? (await fresh());
  let writing: Promise<void> = Promise.resolve();
  let next: Promise<void> | null = null;
  const begin = (): Promise<void> => {
    next = null;
    writing = writeWhole(file, JSON.stringify(state));
    return writing;
  };
  const save = (): Promise<void> => {
    next ??= writing.then(begin, begin);
    return next;
  };
  await save();
  return { state, save };
};
