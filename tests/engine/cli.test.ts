import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { faultText } from '../../engine/cli/arguments.ts';
import { worked } from '../../engine/index.ts';
import { problemOf } from './play.ts';

function run(
  command: string,
  ...given: string[]
): { status: number | null; out: string; err: string } {
  const done = spawnSync('npx', ['tsx', `engine/cli/${command}.ts`, ...given], {
    encoding: 'utf8',
  });
  return { status: done.status, out: done.stdout, err: done.stderr };
}

const folder = mkdtempSync(join(tmpdir(), 'placeweave-'));

function fileOf(name: string, lines: readonly (object | string)[]): string {
  const file = join(folder, name);
  writeFileSync(
    file,
    lines.map((line) => (typeof line === 'string' ? line : JSON.stringify(line))).join('\n'),
  );
  return file;
}

describe('worked', () => {
  it('writes the problem, its partials, squares and presentation', () => {
    const { status, out } = run('worked', '934', '314', '--json');
    const told = JSON.parse(out);
    expect(status).toBe(0);
    expect(told).toMatchObject({
      multiplicand: '934',
      multiplier: '314',
      product: '293276',
      stage: 'bars',
      mat: { rows: 4, columns: 9, origin: 0 },
      partials: [
        { row: 0, digit: 4, value: '3736' },
        { row: 1, digit: 1, value: '9340' },
        { row: 2, digit: 3, value: '280200' },
      ],
    });
    expect(told.squares).toHaveLength(9);
    expect(told.squares[8]).toEqual({ row: 2, column: 2, place: 4, fact: 27, kind: 9, count: 3 });
    const exchanges = told.actions.filter((action: { do: string }) => action.do === 'exchange');
    expect(told.exchanges).toBe(exchanges.length);
  });

  it('takes decimals at the bars, and says what is wrong with bad input', () => {
    expect(
      JSON.parse(run('worked', '30.48', '0.3', '--stage', 'decimal', '--json').out),
    ).toMatchObject({
      product: '9.144',
      stage: 'bars',
      mat: { origin: -3 },
    });
    expect(run('worked', '934')).toMatchObject({ status: 2 });
    expect(run('worked', '93x', '4')).toMatchObject({
      status: 1,
      err: expect.stringContaining('multiplicand'),
    });
    const large = run('worked', '299792458', '31557600');
    expect([large.status, large.err]).toEqual([1, expect.stringContaining('rows 8, columns 17')]);
  });
});

describe('judge', () => {
  const problem = { stage: 'bars', multiplicand: '7', multiplier: '6' };

  it('judges a file of actions', () => {
    const actions = worked(problemOf(problem)).map(({ action }) => action);
    const { status, out } = run('judge', fileOf('right.jsonl', [problem, ...actions]), '--json');
    const told = JSON.parse(out);
    expect([status, told.complete, told.score.fraction]).toEqual([0, true, '1']);
    expect(told.score.awarded).toBe(`${told.steps.length}`);
    expect(told.steps[0]).toMatchObject({
      id: 'tile:bottom:0',
      skill: 'building',
      status: 'first',
    });
    expect(told.judgements[0]).toEqual({
      action: 0,
      step: 'tile:bottom:0',
      skill: 'building',
      verdict: 'right',
      given: 7,
      due: 7,
    });
    expect(told.position.paper.lines.product).toEqual({ 0: 2, 1: 4 });
  });

  it('names the line that it cannot read', () => {
    expect(run('judge', fileOf('bad.jsonl', [problem, { do: 'dance' }]))).toMatchObject({
      status: 1,
      err: expect.stringContaining('Line 2'),
    });
    expect(run('judge', fileOf('worse.jsonl', [problem, '{']))).toMatchObject({ status: 1 });
    expect(run('judge', join(folder, 'none.jsonl'))).toMatchObject({ status: 1 });
    expect(run('judge')).toMatchObject({ status: 2 });
  });
});

describe('generate', () => {
  it('says in words which clauses cannot hold together', () => {
    const wanted = {
      multiplicand: { digits: 2 },
      multiplier: { digits: 1 },
      product: { digits: 5 },
    };
    const { status, out, err } = run('generate', fileOf('impossible.json', [wanted]));
    expect(status).toBe(1);
    expect(JSON.parse(out)).toMatchObject({ error: { code: 'impossible' } });
    expect(err).toBe(
      'no problem satisfies these together: multiplicand.digits 2; multiplier.digits 1; product.digits 5\n',
    );
  });
});

describe('a refusal in words', () => {
  const sources = readdirSync('engine', { recursive: true, encoding: 'utf8' }).filter((name) =>
    name.endsWith('.ts'),
  );
  const codes = sources.flatMap((name) =>
    [...readFileSync(join('engine', name), 'utf8').matchAll(/\bfail\(\s*'(\w+)'/g)].map(
      ([, code]) => code!,
    ),
  );

  it.each([...new Set(codes)])('is there for %s', (code) => {
    expect(faultText({ code, at: 'here' })).not.toContain(code);
  });

  it('says up to which size problems are counted', () => {
    const limit = { multiplicand: 6, multiplier: 3 };
    const fault = { code: 'tooLarge', at: 'multiplicand.digits', limit, because: ['exchanges'] };
    expect(faultText(fault)).toBe(
      'multiplicand.digits: with exchanges problems are counted up to 6 × 3 digits',
    );
  });
});
