/** One measured quantity beside its budget. With a floor, the budget is on the ratio; without, on the quantity itself. */
export interface Figure {
  readonly what: string;
  readonly unit: string;
  readonly measured: number;
  /** The same of the bare thing that it is held against, in the same run. */
  readonly floor: number | null;
  readonly ratio: number | null;
  readonly budget: number;
  readonly holds: boolean;
}

/** What a bench gives: its first figure in short, null where one does not apply, and all of them. */
export interface Measured {
  readonly ratio: number | null;
  readonly perSecond: number | null;
  readonly floorPerSecond: number | null;
  readonly p50Ms: number | null;
  readonly p99Ms: number | null;
  readonly runs: number;
  readonly figures: readonly Figure[];
}

export type Bench = () => Promise<Measured>;

/** Seconds of the processor that the work took: what others do on the machine meanwhile does not count. */
export function secondsOf(work: () => unknown): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
}

export function median(values: readonly number[]): number {
  return values.toSorted((one, other) => one - other)[Math.floor(values.length / 2)]!;
}
