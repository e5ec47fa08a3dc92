/**
 * From the page a launch ended on to a session: the browser shows that it is the one that started
 * the launch, and gets its token by an answer, never by an address.
 */
import { confirmLaunch, type Entry, type Reopen } from '../api/launch.ts';
import { readBlock } from './block.ts';
import { dropProof, recallProof } from './browser-storage.ts';
import { dropSession, keepSession, keptSession, type Session, type View } from './kept-session.ts';
import { getProof, type PlatformStorage } from './platform-storage.ts';

interface BootBlock {
  code: string;
  proofKey: string;
  storage: PlatformStorage | null;
}

/**
 * - `notOpened` neither a launch nor a session in this tab
 * - `noProof` this browser kept no proof; `reopen` (if the platform allows it) opens a tab instead
 * - `expired` the launch was left too long or used before
 * - `unreachable` the server did not answer
 * - others: the server's own code, for example a refusal by the activity
 */
export interface SignInProblem {
  code: string;
  reopen: Reopen | null;
}

/** With the view `message` nobody is signed in: `message` says why. */
export type SignIn =
  | { session: Session; view: View; message?: Entry['message']; reopen: Reopen | null }
  | { problem: SignInProblem };

/** Signs in from the launch on this page or, after a reload, from what this tab kept. */
export async function signIn(): Promise<SignIn> {
  const boot = readBlock<BootBlock>('boot');
  if (boot === null) return resume();
  dropSession();
  const answer = await confirmLaunch(boot.code, await proofOf(boot));
  dropProof(boot.proofKey);
  return answer.ok ? enter(answer) : { problem: { code: answer.code, reopen: answer.reopen } };
}

function resume(): SignIn {
  const session = keptSession(Date.now());
  return session === null
    ? { problem: { code: 'notOpened', reopen: null } }
    : { session, view: session.view, reopen: null };
}

/** A cookie needs no words from us: the browser sends it along. */
async function proofOf(boot: BootBlock): Promise<string | null> {
  const own = recallProof(boot.proofKey);
  if (own !== null || boot.storage === null) return own;
  return getProof(boot.storage, boot.proofKey);
}

/** The address must not lead back to the platform's post, nor show anything of it. */
function enter({ token, expiresIn, view, message, reopen }: Entry): SignIn {
  const session = { token, expiresIn, since: Date.now(), view };
  if (view !== 'message') keepSession(session);
  history.replaceState(null, '', view === 'class' ? '/class' : '/work');
  return { session, view, reopen, ...(message && { message }) };
}
