import { toCardinal } from 'n2words/en-US';
import { toCardinal as toCardinalInSpanish } from 'n2words/es-ES';
import { fill, pickLanguage } from './words.ts';

/** How each language writes numbers; `point` joins the whole to its decimals, which are said digit by digit. */
const SPOKEN = {
  en: { cardinal: (text: string) => toCardinal(text), point: '{whole} point {digits}' },
  es: { cardinal: (text: string) => toCardinalInSpanish(text), point: '{whole} coma {digits}' },
};

/** A written number ("934", "2.50") in the reader's words. */
export const numberInWords = (text: string): string => {
  const { cardinal, point } = pickLanguage(SPOKEN);
  const [whole = '0', decimals] = text.split('.');
  if (decimals === undefined) return cardinal(whole);
  const digits = [...decimals].map(cardinal).join(' ');
  return fill(point, { whole: cardinal(whole), digits });
};
