import type { WordId } from './words/words.ts';

/** What is said for the codes with which a page can end before it begins. */
export const MESSAGE_WORDS: Readonly<Record<string, WordId>> = {
  notOpened: 'messageNotOpened',
  noSession: 'messageNotOpened',
  noProof: 'messageNoProof',
  expired: 'messageExpired',
  unreached: 'messageUnreachable',
  unreachable: 'messageUnreachable',
  guest: 'messageGuest',
  mentor: 'messageMentor',
  noActivity: 'messageNoActivity',
  unknownActivity: 'messageUnknownActivity',
};
