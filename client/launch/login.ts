/**
 * The page between a platform's "open this activity" and its sign-in, shown only where a cookie may
 * not come back: it leaves the proof of this browser where the page after the sign-in can find it.
 */

import { readBlock } from './block.ts';
import { keepProof } from './browser-storage.ts';
import { type PlatformStorage, putProof } from './platform-storage.ts';

interface LoginBlock {
  key: string;
  proof: string;
  storage: PlatformStorage | null;
  /** The platform's authentication address with all parameters. */
  next: string;
}

const login = readBlock<LoginBlock>('login');
if (login !== null) {
  keepProof(login.key, login.proof, Date.now());
  if (login.storage !== null) await putProof(login.storage, login.key, login.proof);
  location.replace(login.next);
}
