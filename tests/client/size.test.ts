import { describe, expect, it } from 'vitest';
import { STAGES } from '../../engine/index.ts';
import { builtChunks, compressedBytes, filesOf, pageAt } from '../support/page-weight.ts';

describe.each([...STAGES])("a child's page at the stage %s", (stage) => {
  it('needs at most 70 kB of scripts and styles, as they are sent over https', () => {
    const files = pageAt(stage);
    expect(files.size).toBeGreaterThan(6);
    expect(compressedBytes(files)).toBeLessThanOrEqual(70_000);
  });

  it("holds nothing of the teacher's table", () => {
    expect([...pageAt(stage)]).not.toContain(builtChunks()['teach/class.ts']?.file);
  });
});

it.each([
  ['work/hints.ts', 3_000],
  ['work/keys-list.ts', 3_000],
  ['work/result.ts', 3_000],
  ['mat/open-square.ts', 5_000],
])('what is fetched when it is asked for is small: %s', (name, most) => {
  const more = [...filesOf(name)].filter((file) => !pageAt('walk').has(file));
  expect(more.length).toBeGreaterThan(0);
  expect(compressedBytes(more)).toBeLessThanOrEqual(most);
});
