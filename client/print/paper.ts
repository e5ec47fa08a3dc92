/** All lengths of this folder are millimetres. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

export interface Box extends Size {
  readonly x: number;
  readonly y: number;
}

export const PAPERS = {
  /** ISO 216. */
  a4: { width: 210, height: 297 },
  /** ANSI/ASME Y14.1, size A. */
  letter: { width: 215.9, height: 279.4 },
} as const satisfies Record<string, Size>;

export type PaperName = keyof typeof PAPERS;

/** Where letter paper is the usual one: Unicode CLDR, supplemental data, `paperSize`. */
const LETTER = ['BZ', 'CA', 'CL', 'CO', 'CR', 'GT', 'MX', 'NI', 'PA', 'PH', 'PR', 'SV', 'US', 'VE'];

export const usualPaper = (locales: readonly string[]): PaperName => {
  const region = locales.map((tag) => new Intl.Locale(tag).region).find((found) => found);
  return region !== undefined && LETTER.includes(region) ? 'letter' : 'a4';
};

/** No printer in use leaves more than this unprinted. */
export const MARGIN = 10;
/** What the sheet is, above; its scale and its caution, below. */
const HEAD = 13;
const FOOT = 17;

export const sizeOf = (paper: PaperName, landscape: boolean): Size => {
  const { width, height } = PAPERS[paper];
  return landscape ? { width: height, height: width } : { width, height };
};

/** The part of a sheet that is free for its content. */
export const areaOf = (paper: PaperName, landscape = false): Box => {
  const { width, height } = sizeOf(paper, landscape);
  return {
    x: MARGIN,
    y: MARGIN + HEAD,
    width: width - 2 * MARGIN,
    height: height - 2 * MARGIN - HEAD - FOOT,
  };
};
