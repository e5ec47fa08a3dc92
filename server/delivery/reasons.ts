/** Why a mark is not in the gradebook yet: a code for the screen, a line for whoever mends it. */
import type { CallReason } from '../lti/grades-answers.ts';

export const REASONS = {
  badAddress: 'the line item has no usable address',
  notHttps: 'the address of the line item is not https',
  refusedAddress: 'the address of the line item lies in a private network',
  nameNotFound: 'the host name of the platform has no address',
  timeout: 'the platform does not answer in time',
  tls: "the platform's certificate was not accepted; often an intermediate certificate is missing",
  unreachable: 'no connection to the platform',
  broken: 'the connection broke off before the platform had answered',
  tooLarge: 'the answer of the platform is too large',
  redirectRefused: 'the platform points to another address',
  stopped: 'the server was stopped during the call',
  busy: 'the platform asks us to slow down',
  unavailable: 'the platform is out of service',
  failing: 'the platform fails each time: the mark or its column may be locked',
  strangeAnswer:
    'the answer is not one of a gradebook; something stands between us and the platform',
  tokenRefused:
    'the platform does not accept this tool: its key set, client id or token address may differ',
  tokenUnavailable: 'the platform gives no access token at the moment',
  keySealed:
    'our own key does not open: PLACEWEAVE_SECRET is not the one with which the platform was added',
  platformSuspended: 'this platform is suspended here',
  platformUnknown: 'this platform is no longer registered here',
  scopeMissing: 'the platform does not let this tool send marks; switch its grade service on',
  unauthorised: 'the platform does not take our access token',
  forbidden: 'the platform does not let this tool send marks in this course',
  notGradable:
    'the platform takes no marks for this person, who may not be a student of the course',
  refused: 'the platform refuses the call',
  lineItemGone: 'the column is no longer in the gradebook',
  platformHasNewer: 'the gradebook says that it holds a later mark than ours',
  changedOnPlatform: 'the mark was changed in the gradebook; release it to send ours all the same',
  removedOnPlatform: 'the mark was removed in the gradebook; release it to send ours all the same',
} as const satisfies Record<CallReason | OwnReason, string>;

type OwnReason = 'lineItemGone' | 'platformHasNewer' | 'changedOnPlatform' | 'removedOnPlatform';

export type Reason = keyof typeof REASONS;
