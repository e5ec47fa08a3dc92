import type { Simulated } from '../index.ts';

type Interval = readonly [number, number];

function percent(share: number | null, [from, to]: Interval): string {
  if (share === null) return 'nobody';
  const [low, high] = [from, to].map((each) => (100 * each).toFixed(1));
  return `${(100 * share).toFixed(1)} % [${low}, ${high}]`;
}

function size(mean: number | null, interval: Interval | null): string {
  if (mean === null) return 'none';
  const [from, to] = (interval ?? []).map((each) => each.toFixed(2));
  return from === undefined ? mean.toFixed(2) : `${mean.toFixed(2)} [${from}, ${to}]`;
}

/** What is measured, what is aimed at, and how it came out. */
const ROWS: readonly (readonly [string, string, (run: Simulated) => string])[] = [
  ['one pattern, reported', '≥ 95 %', ({ single }) => percent(single.recall, single.interval)],
  [
    'of the reports, right',
    '≥ 98 %',
    ({ single }) => percent(single.precision, single.precisionInterval),
  ],
  ['patterns in a report', '≤ 1.3', (run) => size(run.groupSize, run.groupSizeInterval)],
  ['two patterns, both reported', '≥ 85 %', ({ pairs }) => percent(pairs.recall, pairs.interval)],
  [
    'slips only, falsely named',
    '≤ 1 %',
    ({ slipsOnly }) => percent(slipsOnly.falseAlarms, slipsOnly.interval),
  ],
  [
    'outside the catalogue, falsely named',
    '≤ 2 %',
    ({ outside }) => percent(outside.falseNames, outside.interval),
  ],
  [
    'outside the catalogue, seen as regular',
    '',
    ({ outside }) => percent(outside.unnamed, outside.unnamedInterval),
  ],
  [
    'of the catalogue, eligible',
    '≥ 95 %',
    ({ eligible, notEligible }) =>
      `${(100 * eligible).toFixed(1)} %${notEligible.map((id) => `\n    not: ${id}`).join('')}`,
  ],
];

/** The figures of each run with their 95 % intervals, and the patterns that were missed most. */
export function inWords(runs: readonly Simulated[]): string {
  return runs.map(runInWords).join('\n\n');
}

function runInWords(run: Simulated): string {
  const problems = run.problems.map(([one, other]) => `${one} × ${other}`).join(', ');
  const rows = ROWS.map(
    ([name, aim, figure]) => `  ${name.padEnd(38)} ${aim.padEnd(7)} ${figure(run)}`,
  );
  const alike = run.inseparable.map((pair) => `    ${pair.join(' = ')}`);
  const missed = Object.entries(run.perPattern)
    .filter(([, { recall }]) => recall !== null && recall < 0.9)
    .map(([id, { recall, interval, n }]) => `    ${id}: ${percent(recall, interval)} of ${n}`);
  return [
    `${run.stage}, ${run.set} problems: ${problems}`,
    ...rows,
    ...(alike.length === 0 ? [] : ['  nothing parts:', ...alike]),
    ...(missed.length === 0 ? [] : ['  reported for less than 90 %:', ...missed]),
  ].join('\n');
}
