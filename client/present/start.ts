import { readFragment } from '../problems/address.ts';
import { PwPresent } from './present-page.ts';

/** Presentation mode on the problems that its address names. */
export const startPresent = (): HTMLElement =>
  Object.assign(new PwPresent(), { given: readFragment(location.hash) });
