import { many } from './many.ts';
import type { Values } from './values.ts';

/** Every word of the teacher's pages in English, beside those of `en.ts`; a child's page never loads them. */
export const classEn = {
  childLabel: 'Child {number}',
  classEmpty: 'No child has opened this yet.',
  classCaution:
    'These are figures of this one activity. Read them beside what you see; decisions about a child belong to you and qualified colleagues.',
  classTry: 'Try the work as a child',
  classPresent: 'Present',
  classPrint: 'Print',
  classReload: 'Look again',
  classChild: 'Child',
  classState: 'Work',
  classProblems: 'Problems',
  classScore: 'Score',
  classDelivery: 'Gradebook',
  classOf: '{done} of {all}',
  classNames: 'No names are kept: children are numbered in the order in which they began.',
  stateNotStarted: 'not begun',
  stateWorking: 'working',
  stateFinished: 'finished, not yet released',
  stateReleased: 'finished',
  classRelease: 'Show the results and send the marks',
  classReleased: ({ released }: Values) =>
    `${released} ${many(released, 'result', 'results')} shown.`,
  deliveryNone: 'nothing to send',
  deliveryWaiting: 'on its way',
  deliverySending: 'on its way',
  deliverySent: 'in the gradebook',
  deliveryHeld: 'held back',
  deliveryStuck: 'not sent',
  reasonWith: '{state}: {reason}',
  'reason.trial': 'a trial is not marked',
  'reason.noLineItem': 'this place of the course has no column in the gradebook',
  'reason.noScope':
    'the platform does not let Placeweave send marks; ask its administrator to switch the grade service on',
  'reason.notFinished': 'the work is not finished',
  'reason.notReleased': 'you have not released it yet',
  'reason.changedOnPlatform': 'the mark was changed in the gradebook; it is not overwritten',
  'reason.removedOnPlatform': 'the mark was removed in the gradebook; it is not written again',
  'reason.platformHasNewer': 'the gradebook holds a later mark',
  'reason.lineItemGone': 'the column is no longer in the gradebook',
  'reason.notGradable':
    'the platform takes no marks for this person, who may not be a student of the course',
  'reason.forbidden': 'the platform does not let Placeweave send marks in this course',
  'reason.scopeMissing': 'the platform does not let Placeweave send marks; ask its administrator',
  'reason.away': 'the platform does not answer at the moment; it is tried again',
  'reason.other': 'the platform did not take it; ask your administrator (code {code})',
  triedAt: 'last tried {when}',
} as const;
