import { getDocument, OPS, Util } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** What a path covers, in mm from the page's upper left corner. */
export interface Drawn {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

export interface PdfPage {
  readonly width: number;
  readonly height: number;
  /** Every stroke and fill, as far as the path itself reaches: without the width of its line. */
  readonly drawn: readonly Drawn[];
  readonly text: string;
  /** Where each piece of text begins. */
  readonly words: readonly { readonly text: string; readonly x: number; readonly y: number }[];
}

type Matrix = number[];
/** PDF measures in points. */
const MM = 25.4 / 72;

const corners = ([a = 0, b = 0, c = 0, d = 0]: ArrayLike<number> & Iterable<number>) => [
  [a, b],
  [c, b],
  [a, d],
  [c, d],
];

const covered = (box: Float32Array, matrix: Matrix, height: number): Drawn => {
  const points = corners(box).map((point) => {
    Util.applyTransform(point, matrix);
    return point as [number, number];
  });
  const across = points.map(([x]) => x * MM);
  const up = points.map(([, y]) => (height - y) * MM);
  const [left, top] = [Math.min(...across), Math.min(...up)];
  return { left, top, width: Math.max(...across) - left, height: Math.max(...up) - top };
};

const PAINTS = [
  OPS.stroke,
  OPS.fill,
  OPS.eoFill,
  OPS.fillStroke,
  OPS.eoFillStroke,
  OPS.closeStroke,
];

/** Follows the page's own drawing operators; `height` in points. */
const drawnBy = (
  { fnArray, argsArray }: { fnArray: number[]; argsArray: unknown[][] },
  height: number,
): Drawn[] => {
  const drawn: Drawn[] = [];
  const kept: Matrix[] = [];
  let matrix: Matrix = [1, 0, 0, 1, 0, 0];
  for (const [i, operator] of fnArray.entries()) {
    const args = argsArray[i] ?? [];
    if (operator === OPS.save) kept.push(matrix);
    else if (operator === OPS.restore) matrix = kept.pop() ?? matrix;
    else if (operator === OPS.transform) matrix = Util.transform(matrix, args as Matrix);
    else if (operator === OPS.paintFormXObjectBegin) {
      kept.push(matrix);
      if (args[0]) matrix = Util.transform(matrix, args[0] as Matrix);
    } else if (operator === OPS.paintFormXObjectEnd) matrix = kept.pop() ?? matrix;
    else if (operator === OPS.constructPath && PAINTS.includes(args[0] as number))
      drawn.push(covered(args[2] as Float32Array, matrix, height));
  }
  return drawn;
};

/** The pages of a PDF as they were drawn. */
export const readPdf = async (bytes: Uint8Array): Promise<PdfPage[]> => {
  const pdf = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
  const pages: PdfPage[] = [];
  for (let number = 1; number <= pdf.numPages; number += 1) {
    const page = await pdf.getPage(number);
    const [, , width = 0, height = 0] = page.view;
    const { items } = await page.getTextContent();
    const words = items.flatMap((item) =>
      'str' in item && item.str.trim() !== ''
        ? [{ text: item.str, x: item.transform[4] * MM, y: (height - item.transform[5]) * MM }]
        : [],
    );
    pages.push({
      width: width * MM,
      height: height * MM,
      drawn: drawnBy(await page.getOperatorList(), height),
      text: words.map(({ text }) => text).join(' '),
      words,
    });
  }
  await pdf.destroy();
  return pages;
};
