import { execFile } from 'node:child_process';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const run = promisify(execFile);
let folder: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'placeweave-generate-'));
});
afterAll(() => rm(folder, { recursive: true }));

async function generate(written: string): Promise<{ code: number; out: unknown; words: string }> {
  const file = join(folder, 'spec.json');
  await writeFile(file, written);
  const call = run(process.execPath, ['--import', 'tsx', 'engine/cli/generate.ts', file]);
  const ended = await call.catch(
    (error: { code: number; stdout: string; stderr: string }) => error,
  );
  return {
    code: 'code' in ended ? ended.code : 0,
    out: ended.stdout === '' ? null : JSON.parse(ended.stdout),
    words: ended.stderr,
  };
}

describe('generate on the command line', () => {
  it('prints the exact count and the problems drawn', async () => {
    const spec = {
      multiplicand: { digits: 1 },
      multiplier: { digits: 1 },
      facts: { allowed: [[6, 7]] },
    };
    const { code, out } = await generate(JSON.stringify({ ...spec, count: 2 }));
    const problems = (out as { problems: { multiplicand: string }[] }).problems;
    expect(code).toBe(0);
    expect(out).toMatchObject({ count: '2' });
    expect(problems.toSorted((a, b) => Number(a.multiplicand) - Number(b.multiplicand))).toEqual([
      { stage: 'bars1', multiplicand: '6', multiplier: '7', product: '42', exchanges: [1] },
      { stage: 'bars1', multiplicand: '7', multiplier: '6', product: '42', exchanges: [1] },
    ]);
  });

  it('prints a refusal with the conflicting clauses, and says so in words', async () => {
    const { code, out, words } = await generate(
      '{"multiplicand":{"digits":2},"multiplier":{"digits":2},"exchanges":{"from":3}}',
    );
    expect(code).toBe(1);
    expect(out).toMatchObject({ error: { code: 'impossible', at: 'multiplicand.digits' } });
    expect(words).toContain('exchanges');
  });

  it('says what is wrong with a file that is no JSON', async () => {
    const { code, out, words } = await generate('{"stage":');
    expect([code, out]).toEqual([1, null]);
    expect(words).toContain('spec.json');
  });
});
