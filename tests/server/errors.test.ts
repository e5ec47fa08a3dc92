import { describe, expect, test } from 'vitest';
import { ERRORS, type ErrorCode, refuse, wireError } from '../../server/errors.ts';

const codes = Object.keys(ERRORS) as ErrorCode[];
const server = codes.filter((code) => ERRORS[code].status >= 500);

describe('an error on the wire', () => {
  test.each(codes)('%s has a text in whole sentences', (code) => {
    expect(wireError({ code }).body.error.text).toMatch(/^[A-Z].*\.$/);
  });

  test.each(server)('%s shows nothing of its cause', (code) => {
    const { body } = wireError({ code, at: 'somewhere inside' });
    expect(JSON.stringify(body)).not.toContain(ERRORS[code].detail);
    expect(body.error).not.toHaveProperty('at');
  });

  test('carries the values of its refusal beside the error', () => {
    const { refusal } = refuse('moved', 'base', { length: 3 });
    expect(wireError(refusal)).toMatchObject({
      status: 409,
      body: { error: { code: 'moved', at: 'base' }, length: 3 },
    });
  });
});
