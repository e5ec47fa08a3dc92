import { readFragment } from '../problems/address.ts';
import { showBeads } from '../ui/beads.ts';
import { PwPresent } from './present-page.ts';

/** Presentation mode on the problems that its address names. */
export const startPresent = (): HTMLElement => {
  const given = readFragment(location.hash);
  showBeads(given.beads);
  return Object.assign(new PwPresent(), { given });
};
