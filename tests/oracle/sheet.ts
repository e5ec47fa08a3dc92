import type { Told } from './beads.ts';
import type { Chance } from './chance.ts';

/** Squared paper of a pupil: digits by line and place, nothing more. Shares nothing with the engine. */
export class Sheet {
  private readonly lines = new Map<string, Map<number, number>>();

  take(told: Told): void {
    const line = told['line'] as string | undefined;
    if (line === undefined) return;
    const place = told['place'] as number;
    if (told.do === 'write') this.on(line).set(place, told['digit'] as number);
    if (told.do === 'rub') this.on(line).delete(place);
  }

  private on(line: string): Map<number, number> {
    if (!this.lines.has(line)) this.lines.set(line, new Map());
    return this.lines.get(line)!;
  }

  at(line: string, place: number): number | undefined {
    return this.lines.get(line)?.get(place);
  }

  /** All that is written on lines whose name begins so. */
  written(prefix: string): { line: string; place: number; digit: number }[] {
    return [...this.lines].flatMap(([line, digits]) =>
      line.startsWith(prefix) ? [...digits].map(([place, digit]) => ({ line, place, digit })) : [],
    );
  }
}

export function otherDigit(right: number, most: number, chance: Chance): number {
  const all = Array.from({ length: most + 1 }, (_, digit) => digit);
  return chance.pick(all.filter((digit) => digit !== right));
}
