import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fractionText, type Problem, parseProblem, toPoints } from '../../engine/index.ts';
import { fraction, parseFraction } from '../../engine/numerals/fraction.ts';
import { amountOf, amountText, parseNumeral } from '../../engine/numerals/numeral.ts';

function numeral(text: unknown) {
  const parsed = parseNumeral(text, 'multiplicand');
  return parsed.ok ? parsed.value : parsed.fault;
}

describe('a numeral', () => {
  it('has its lowest digit first, at its place', () => {
    expect(numeral('934')).toEqual({ text: '934', digits: [4, 3, 9], lowest: 0 });
    expect(numeral('12.50')).toEqual({ text: '12.50', digits: [0, 5, 2, 1], lowest: -2 });
  });

  it('lays every digit from the first that is not zero to the last one written', () => {
    expect(numeral('0.00008')).toEqual({ text: '0.00008', digits: [8], lowest: -5 });
    expect(numeral('007')).toEqual({ text: '7', digits: [7], lowest: 0 });
    expect(numeral('0.00')).toEqual({ text: '0.00', digits: [0], lowest: -2 });
  });

  it('refuses what is no number in digits, naming the argument', () => {
    for (const text of ['', '.', '1.', '.5', '-1', '1e3', '1,5', ' 1', '١٢', 'x', '1.2.3']) {
      expect(numeral(text)).toMatchObject({ code: 'notANumber', at: 'multiplicand' });
    }
    expect(numeral(12)).toMatchObject({ code: 'notText' });
    expect(numeral('9'.repeat(41))).toMatchObject({ code: 'tooLong' });
  });

  it('is written as it is parsed', () => {
    const digits = fc.stringMatching(/^[1-9][0-9]{0,8}(\.[0-9]{1,8})?$/);
    fc.assert(fc.property(digits, (text) => (numeral(text) as { text: string }).text === text));
  });

  it('is told below nothing too, where more was taken than there was', () => {
    expect(amountText(-1958n, -1)).toBe('-195.8');
    expect(amountText(-300n, 0)).toBe('-300');
  });

  it('keeps its amount exactly', () => {
    fc.assert(
      fc.property(fc.bigInt({ min: 0n, max: 10n ** 30n }), (amount) => {
        const parsed = parseNumeral(amount.toString(), 'multiplicand');
        return (
          parsed.ok && amountOf(parsed.value) === amount && amountText(amount, 0) === `${amount}`
        );
      }),
    );
  });
});

describe('a fraction', () => {
  it('is reduced and written "118/5"', () => {
    expect(fractionText(fraction(236n, 10n))).toBe('118/5');
    expect(fractionText(fraction(10n, 5n))).toBe('2');
    expect(fractionText(parseFraction('0.6')!)).toBe('3/5');
    expect(parseFraction('3/0')).toBeNull();
  });

  it('becomes points, rounded half up to two decimals, once', () => {
    expect(toPoints(fraction(1n, 3n), '10')).toEqual({ ok: true, value: '3.33' });
    expect(toPoints(fraction(2n, 3n), 10)).toEqual({ ok: true, value: '6.67' });
    expect(toPoints(fraction(1n, 8n), '1')).toEqual({ ok: true, value: '0.13' });
    expect(toPoints(fraction(1n, 1n), '12.5')).toEqual({ ok: true, value: '12.50' });
  });
});

describe('a problem', () => {
  const size = (a: string, b: string, mat?: object): unknown => {
    const parsed = parseProblem({
      stage: 'bars',
      multiplicand: a,
      multiplier: b,
      ...(mat && { mat }),
    });
    return parsed.ok ? (parsed.value as Problem).mat : parsed.fault;
  };

  it('takes a 4 × 9 mat where it fits, else the smallest that does', () => {
    expect(size('934', '314')).toEqual({ rows: 4, columns: 9, origin: 0 });
    expect(size('57834', '123456')).toEqual({ rows: 6, columns: 11, origin: 0 });
    expect(size('30.48', '0.3')).toEqual({ rows: 4, columns: 9, origin: -3 });
  });

  it('that does not fit is refused with the size that it needs', () => {
    expect(size('299792458', '31557600')).toMatchObject({
      code: 'doesNotFit',
      rows: 8,
      columns: 17,
    });
    expect(size('934', '314', { rows: 3, columns: 5 })).toMatchObject({
      code: 'doesNotFit',
      rows: 3,
      columns: 6,
    });
    expect(size('934', '314', { rows: 7, columns: 9 })).toMatchObject({ at: 'mat.rows' });
  });
});
