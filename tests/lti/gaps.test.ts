import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

/**
 * Where the library or its usual use leaves something open (G: gaps of ltijs 5.9.9; R: the risks that
 * follow from them), and the test that fails when it opens again. File under tests/, then the test.
 */
const CLOSED_BY: Record<string, [gap: string, file: string, test: string]> = {
  G1: ['a crafted state ends the process', 'lti/fuzz', 'a state that is %s'],
  G2: [
    'a nonce is looked up, not spent',
    'lti/confirm',
    'the same post 50 times at once: one page that can sign in',
  ],
  G3: ['no state on the server', 'lti/refused', 'a state that was never issued → loginUnknown'],
  G4: ['iat, exp, aud, azp and deployment are hardly checked', 'lti/refused', '%s → %s'],
  G5: [
    'the key set is fetched at each launch',
    'lti/contained',
    'fifty-one of them read the key set once',
  ],
  G6: [
    'two messages only, nobody anonymous',
    'lti/launch',
    'an anonymous launch looks on as a guest, whatever its role says',
  ],
  G7: [
    'a session cookie at every request',
    'lti/contained',
    'is answered with a page, not a redirect: no token and no code is in an address or a cookie',
  ],
  G8: [
    'the second person in a browser ends the first one’s session',
    'lti/confirm',
    'two children one after the other in one browser: each has an own proof',
  ],
  G9: [
    'a token without end in the address',
    'lti/contained',
    'is answered with a page, not a redirect: no token and no code is in an address or a cookie',
  ],
  G10: [
    'error answers repeat the request',
    'lti/contained',
    'a refusal repeats nothing of the request',
  ],
  G11: ['every origin may read with credentials', 'lti/contained', 'no other origin may read one'],
  G12: [
    'what a launch said is gone after a day',
    'lti/launch',
    'carries what the standard gives, and no name',
  ],
  G13: [
    'the time of a score is overwritten',
    'delivery/sender',
    'is followed by the next one two seconds later, under a timestamp two seconds later',
  ],
  G14: [
    'service tokens until the last second, many requests at once',
    'lti/tokens',
    'and one request serves all who wait',
  ],
  G15: [
    'roster requests lose their query',
    'lti/contained',
    'lends us none of its services: they drop, overwrite or misread what matters',
  ],
  G16: [
    'line items without a media type',
    'delivery/grades',
    'of a resource link are asked for with the one media type that platforms take',
  ],
  G17: [
    'line items made twice',
    'lti/contained',
    'lends us none of its services: they drop, overwrite or misread what matters',
  ],
  G18: [
    'deep linking claims are misspelt',
    'lti/refused',
    'a deep linking request → a page that says it is not offered',
  ],
  G19: [
    'deep linking form is not escaped',
    'lti/refused',
    'a deep linking request → a page that says it is not offered',
  ],
  G20: ['claims are dropped', 'lti/launch', 'a mentor reviews the work of an own learner only'],
  G21: [
    'registration open to anyone',
    'lti/contained',
    'dynamic registration is not offered, and nobody is called for it',
  ],
  G22: [
    'platforms are active unless said otherwise',
    'lti/contained',
    'a registration without deployments lets nobody in',
  ],
  G23: [
    'registering again changes endpoints unseen',
    'lti/platforms',
    'makes one registration with one key pair of 4096 bits, however often it is asked',
  ],
  G24: [
    'changing a platform by id fails',
    'lti/contained',
    'lends us none of its services: they drop, overwrite or misread what matters',
  ],
  G25: [
    'objects in a login, an address with a query',
    'lti/login',
    'keeps the query of an address that has one already',
  ],
  G26: [
    'another setting makes another context',
    'lti/contained',
    'stays in the same place whatever else the platform says of it',
  ],
  G27: [
    'any bearer token is taken for its own',
    'lti/contained',
    'is not changed by a token of another kind beside it',
  ],
  G28: [
    'an interrupt ends the process at once',
    'lti/contained',
    'leaves no listener that would end the process',
  ],
  G29: [
    'one instance, one connection for all',
    'lti/contained',
    'works twice in one process, and never touches the connection that all share',
  ],
  G30: [
    'models on the connection that all share',
    'lti/contained',
    'works twice in one process, and never touches the connection that all share',
  ],
  G31: [
    'keys sealed without a seal',
    'lti/contained',
    'do not open with another secret, nor when they were changed',
  ],
  G32: [
    'no limits',
    'lti/contained',
    'that sends many refused requests is told so, fills no log, and shuts nobody out',
  ],
  G33: [
    'a mode without checks',
    'lti/second-check',
    'refuses a launch for whose state nobody vouches',
  ],
  R1: [
    'one request ends the process',
    'lti/fuzz',
    'any form, sent to any address, ends in a refusal or a login and nothing else',
  ],
  R2: [
    'replay under concurrency',
    'lti/confirm',
    'the same post 50 times at once: one page that can sign in',
  ],
  R3: [
    'a browser that loses the cookie',
    'lti/confirm',
    'by a value it kept, where the cookie was lost',
  ],
  R4: [
    'a score without a number wipes the grade',
    'delivery/sender',
    'is posted once, in the form that platforms take',
  ],
  R5: [
    'registration asks for every claim',
    'lti/contained',
    'dynamic registration is not offered, and nobody is called for it',
  ],
  R6: ['another version, other gaps', 'lti/contained', 'is the version whose gaps are known'],
};

test('every gap and risk has its test', () => {
  const gaps = Array.from({ length: 33 }, (_, n) => `G${n + 1}`);
  const risks = Array.from({ length: 6 }, (_, n) => `R${n + 1}`);
  expect(Object.keys(CLOSED_BY)).toEqual([...gaps, ...risks]);
});

test.each(Object.entries(CLOSED_BY))('%s: its test is there', (_id, [, file, name]) => {
  const source = readFileSync(new URL(`../${file}.test.ts`, import.meta.url), 'utf8');
  expect(source).toContain(`'${name}'`);
});
