import { readdir, readFile } from 'node:fs/promises';
import { describe, expect, test } from 'vitest';
import { BUILT_PAGES } from '../../server/pages.ts';
import { platformStore } from '../../server/platforms/store.ts';
import { databaseForFile } from '../support/database.ts';
import { appForFile, call } from '../support/server.ts';

const database = databaseForFile();
const app = appForFile(database);

const policyOf = (headers: Headers): Map<string, string> => {
  const parts = (headers.get('content-security-policy') ?? '').split(';');
  return new Map(parts.map((part) => part.trim().split(/ (.*)/) as [string, string]));
};

describe('every answer', () => {
  test.each(['/health/live', '/work', '/api/attempt', '/nothing-here'])(
    '%s runs only our own scripts',
    async (path) => {
      const { headers } = await app().get(null, path);
      const policy = policyOf(headers);
      expect(policy.get('default-src')).toBe("'none'");
      expect(policy.get('script-src')).toBe("'self'");
      expect(headers.get('x-content-type-options')).toBe('nosniff');
      expect(headers.get('referrer-policy')).toBe('no-referrer');
      expect(headers.get('x-powered-by')).toBeNull();
    },
  );

  test.each(['/work', '/class', '/api/attempt', '/health/ready'])(
    '%s is never cached',
    async (path) => {
      const { headers } = await app().get(null, path);
      expect(headers.get('cache-control')).toBe('no-store');
    },
  );

  test('of an unknown address is a JSON error', async () => {
    for (const path of ['/nothing-here', '/%E0%A4%A', '/assets/gone.js']) {
      const { status, body } = await app().get(null, path);
      expect(status).toBe(404);
      expect(body.error.code).toBe('notFound');
    }
  });

  test.each(['/assets/%00', '/assets/..%2f..%2findex.html', '/assets/%E0%A4%A'])(
    'of the strange address %s is no fault of ours',
    async (path) => {
      const { status, body } = await app().get(null, path);
      expect(status).toBe(404);
      expect(body.error.code).toBe('notFound');
    },
  );

  test.each([
    ['range', 'bytes=999999999-'],
    ['if-match', '"another"'],
    ['if-unmodified-since', 'Thu, 01 Jan 1970 00:00:00 GMT'],
  ])('to a page asked for with an impossible %s is no fault of ours', async (name, value) => {
    const { status } = await call(`${app().url}/work`, null, undefined, { [name]: value });
    expect(status).toBe(404);
  });
});

describe('a page', () => {
  test.each(['/work', '/class', '/print', '/present'])(
    '%s is the built page, without anything of a launch',
    async (path) => {
      const { status, body } = await app().get(null, path);
      expect(status).toBe(200);
      expect(body).toContain('<main id="page">');
      expect(body).not.toContain('id="boot"');
    },
  );

  test('may be framed by registered platforms only', async () => {
    const { headers } = await app().get(null, '/nothing-here');
    expect(policyOf(headers).get('frame-ancestors')).toBe("'none'");
    await platformStore(database().connection).save(
      { issuer: 'https://lms.example.org', clientId: 'abc' },
      {
        name: 'Harbour Lane School',
        authUrl: 'https://login.example.org/auth',
        tokenUrl: 'https://lms.example.org/token',
        jwksUrl: 'https://lms.example.org/keys',
      },
    );
    await expect
      .poll(async () => policyOf((await app().get(null, '/work')).headers).get('frame-ancestors'), {
        timeout: 20_000,
        interval: 500,
      })
      .toBe("'self' https://lms.example.org https://login.example.org");
  });
});

test('a built asset may be kept for a year', async () => {
  const [asset] = await readdir(`${BUILT_PAGES}assets`);
  const { status, headers } = await app().get(null, `/assets/${asset}`);
  expect(status).toBe(200);
  expect(headers.get('cache-control')).toBe('public, max-age=31536000, immutable');
});

describe('what is sent compressed', () => {
  test.each([
    ['br, gzip', 'br'],
    ['gzip, deflate', 'gzip'],
    ['identity', null],
  ])('every script, as the browser takes it: %s', async (accepted, sent) => {
    const built = await readdir(`${BUILT_PAGES}assets`);
    const scripts = built.filter((name) => name.endsWith('.js'));
    expect(scripts.length).toBeGreaterThan(10);
    for (const script of scripts) {
      const response = await fetch(`${app().url}/assets/${script}`, {
        headers: { 'accept-encoding': accepted },
      });
      const { status, headers } = response;
      expect([status, headers.get('content-encoding')]).toEqual([200, sent]);
      expect(headers.get('content-type')).toMatch(/^(text|application)\/javascript/);
      expect(headers.get('vary')).toContain('Accept-Encoding');
      expect(await response.text()).toBe(await readFile(`${BUILT_PAGES}assets/${script}`, 'utf8'));
    }
  });

  test('no answer of the API', async () => {
    const activity = await app().activity([
      { stage: 'bars', multiplicand: '934', multiplier: '314' },
    ]);
    const token = await app().token({ custom: { activity } });
    const attempt = await app().get(token, '/api/attempt');
    expect(attempt.status).toBe(200);
    expect(attempt.headers.get('content-encoding')).toBeNull();
  });
});

describe('health', () => {
  test('says that the process lives and that work can be kept', async () => {
    expect((await app().get(null, '/health/live')).body).toEqual({ live: true });
    expect((await app().get(null, '/health/ready')).body).toEqual({ ready: true });
  });
});
