import { describe, expect, test } from 'vitest';
import { readConfig } from '../../server/config.ts';

const SECRET = 'x'.repeat(32);

describe('the settings', () => {
  test('have defaults for a first try', () => {
    expect(readConfig({})).toMatchObject({
      ok: true,
      config: {
        production: false,
        url: 'http://localhost:4600',
        port: 4600,
        mongodbUri: null,
        secret: null,
      },
    });
  });

  test('that are set to nothing are not set', () => {
    expect(readConfig({ PLACEWEAVE_PORT: '', PLACEWEAVE_SECRET: '' })).toEqual(readConfig({}));
  });

  test('keep the address without its last slash', () => {
    const read = readConfig({ PLACEWEAVE_URL: 'https://mat.example.org/' });
    expect(read).toMatchObject({ config: { url: 'https://mat.example.org' } });
  });

  test('need a secret and an https address in production', () => {
    const set = { NODE_ENV: 'production', PLACEWEAVE_SECRET: SECRET };
    expect(readConfig({ NODE_ENV: 'production' })).toEqual({
      ok: false,
      complaints: [
        'PLACEWEAVE_SECRET is required in production',
        'PLACEWEAVE_URL must be set to an https address in production',
      ],
    });
    expect(readConfig({ ...set, PLACEWEAVE_URL: 'http://mat.example.org' }).ok).toBe(false);
    expect(readConfig({ ...set, PLACEWEAVE_URL: 'https://mat.example.org' }).ok).toBe(true);
  });

  test.each([
    ['NODE_ENV', 'live', 'must be production, development or test'],
    ['PLACEWEAVE_URL', 'mat.example.org', 'must be an http or https address'],
    ['PLACEWEAVE_URL', 'https://mat.example.org/tool', 'must be an http or https address'],
    ['PLACEWEAVE_URL', 'ftp://mat.example.org', 'must be an http or https address'],
    ['PLACEWEAVE_PORT', 'http', 'must be a port number'],
    ['PLACEWEAVE_PORT', '65536', 'must be a port number'],
    ['PLACEWEAVE_MONGODB_URI', 'localhost:27017', 'must start with mongodb://'],
    ['PLACEWEAVE_FREE_MB', '1.5', 'must be a whole number'],
    ['PLACEWEAVE_SECRET', 'too short', 'must have at least 32 characters'],
    ['PLACEWEAVE_LOG', 'loud', 'must be silent, error, warn, info or debug'],
  ])('%s=%s is refused with what it must be', (name, value, text) => {
    const read = readConfig({ [name]: value });
    expect(read.ok || read.complaints).toEqual([expect.stringContaining(`${name} ${text}`)]);
  });

  test('that are bad are all named at once, and no value is repeated', () => {
    const read = readConfig({ PLACEWEAVE_PORT: 'x', PLACEWEAVE_SECRET: 'hush' });
    const complaints = read.ok ? [] : read.complaints;
    expect(complaints).toHaveLength(2);
    expect(complaints.join()).not.toContain('hush');
  });
});
