import './ui/tokens.css';
import './ui/base.css';
import type { Reopen } from './api/launch.ts';
import { renewWhileOpen } from './api/session.ts';
import { setToken } from './api/session-token.ts';
import { type SignIn, type SignInProblem, signIn } from './launch/confirm.ts';
import { mayForget, ownPlace } from './launch/forgetful.ts';
import { keepSession, type Session } from './launch/kept-session.ts';
import { openInTab } from './launch/open-tab.ts';
import { MESSAGE_WORDS } from './message-words.ts';
import { PwMessage } from './ui/message.ts';
import { words } from './words/words.ts';

const page = document.querySelector('#page') ?? document.body;

interface Message {
  readonly text: string;
  readonly code?: string;
  readonly action?: string;
  readonly act?: () => void;
}

const showMessage = ({ text, code = '', action = '', act }: Message): void => {
  const message = Object.assign(new PwMessage(), { text, code, action });
  if (act !== undefined) message.addEventListener('act', act);
  page.replaceChildren(message);
};

const textOf = (code: string): string => words(MESSAGE_WORDS[code] ?? 'messageOther');

const showProblem = ({ code, reopen }: SignInProblem): void => {
  if (reopen !== null)
    showMessage({ text: textOf(code), action: words('openInTab'), act: () => openInTab(reopen) });
  else if (code === 'unreachable')
    showMessage({ text: textOf(code), action: words('tryAgain'), act: () => void start() });
  else showMessage({ text: textOf(code), code });
};

/** `leave`: the way back, for those who came from the class; `reopen`: the way to a tab. */
const showWork = async (leave: (() => void) | null, reopen: Reopen | null): Promise<void> => {
  const { startWorkPage } = await import('./work/start.ts');
  const tab = reopen === null ? null : () => openInTab(reopen);
  const notice = (await mayForget(ownPlace())) ? { tab } : null;
  const started = await startWorkPage({ leave, notice });
  if ('code' in started)
    showMessage({
      text: textOf(started.code),
      code: started.code,
      action: words('tryAgain'),
      act: () => location.reload(),
    });
  else page.replaceChildren(started.element);
};

const showClass = async (): Promise<void> => {
  const { PwClass } = await import('./teach/class.ts');
  const element = new PwClass();
  element.addEventListener('trial', () => void showWork(() => void showClass(), null));
  page.replaceChildren(element);
};

const hold = (session: Session): void => {
  setToken(session.token);
  renewWhileOpen(({ token, expiresIn }) =>
    keepSession({ ...session, token, expiresIn, since: Date.now() }),
  );
};

const show = async (signed: SignIn): Promise<void> => {
  if ('problem' in signed) return showProblem(signed.problem);
  const { view, message, session, reopen } = signed;
  if (view === 'message')
    return showMessage({ text: textOf(message?.code ?? ''), code: message?.code ?? '' });
  hold(session);
  await (view === 'class' ? showClass() : showWork(null, reopen));
};

/** After a failure it starts again here, never by a reload: that would post the platform's spent form once more. */
const start = async (): Promise<void> => {
  showMessage({ text: words('loading') });
  await show(await signIn());
};

/** Pages that show nothing of anybody and need no session. */
const OPEN_PAGES: Readonly<Record<string, () => Promise<HTMLElement>>> = {
  '/present': async () => (await import('./present/start.ts')).startPresent(),
  '/print': async () => (await import('./print/start.ts')).startPrint(),
};

const openPage = OPEN_PAGES[location.pathname];
if (openPage === undefined) await start();
else page.replaceChildren(await openPage());
