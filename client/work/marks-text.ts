import { numeral } from '../words/words.ts';

/** An exact fraction ("118/5") as a reader writes it, with at most two decimals, rounded half up. */
export const marksText = (fraction: string): string => {
  const [above = '0', below = '1'] = fraction.split('/');
  const hundredths = (BigInt(above) * 200n + BigInt(below)) / (2n * BigInt(below));
  const text = `${hundredths / 100n}.${String(hundredths % 100n).padStart(2, '0')}`;
  return numeral(text.replace(/\.?0+$/, '') || '0');
};
