import { fileURLToPath } from 'node:url';
import { getDocument, OPS, type PDFDocumentProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** A page as an independent reader finds it; mm from the lower left corner, y up. */
export interface ReadPage {
  readonly width: number;
  readonly height: number;
  readonly texts: readonly {
    readonly text: string;
    readonly x: number;
    readonly y: number;
    readonly width: number;
  }[];
  /** Straight lines with their widths, in the order drawn */
  readonly lines: readonly { readonly points: readonly number[]; readonly lineWidth: number }[];
}

const mmPerPoint = 25.4 / 72;

export async function openPdf(bytes: Uint8Array): Promise<PDFDocumentProxy> {
  return getDocument({
    data: bytes.slice(),
    verbosity: 0,
    standardFontDataUrl: fileURLToPath(
      new URL('../../node_modules/pdfjs-dist/standard_fonts/', import.meta.url),
    ),
  }).promise;
}

export async function readPdf(document: PDFDocumentProxy): Promise<ReadPage[]> {
  const pages: ReadPage[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    const [left, low, right, high] = page.view;
    const content = await page.getTextContent();
    const texts = content.items.flatMap((item) =>
      'str' in item && item.str.trim() !== ''
        ? [
            {
              text: item.str,
              x: item.transform[4] * mmPerPoint,
              y: item.transform[5] * mmPerPoint,
              width: item.width * mmPerPoint,
            },
          ]
        : [],
    );
    const scale = page.userUnit * mmPerPoint;
    pages.push({
      width: (right - left) * scale,
      height: (high - low) * scale,
      texts,
      lines: readLines(await page.getOperatorList(), mmPerPoint),
    });
  }
  return pages;
}

/** Paths of lines alone, through the matrix that is set where they are drawn. */
function readLines(
  { fnArray, argsArray }: { readonly fnArray: readonly number[]; readonly argsArray: readonly unknown[] },
  scale: number,
): ReadPage['lines'] {
  const lines: { points: number[]; lineWidth: number }[] = [];
  const stack: number[][] = [];
  let matrix = [1, 0, 0, 1, 0, 0];
  let lineWidth = 1;
  fnArray.forEach((operator, k) => {
    const args = argsArray[k] as readonly unknown[];
    if (operator === OPS.save) stack.push([...matrix]);
    else if (operator === OPS.restore) matrix = stack.pop() ?? matrix;
    else if (operator === OPS.transform) matrix = multiply(matrix, args as readonly number[]);
    else if (operator === OPS.setLineWidth) lineWidth = Number(args[0]);
    else if (operator === OPS.constructPath) {
      const [, [data]] = args as [number, readonly [ArrayLike<number> | null]];
      if (!data) return;
      const points: number[] = [];
      for (let at = 0; at < data.length; ) {
        // 0 move, 1 line, 2 cubic curve, 4 close: as the reader lists path data.
        const kind = data[at];
        if (kind > 1) return;
        const [x, y] = [data[at + 1], data[at + 2]];
        points.push(
          (matrix[0] * x + matrix[2] * y + matrix[4]) * scale,
          (matrix[1] * x + matrix[3] * y + matrix[5]) * scale,
        );
        at += 3;
      }
      lines.push({ points, lineWidth: lineWidth * Math.abs(matrix[0]) * scale });
    }
  });
  return lines;
}

function multiply(m: readonly number[], n: readonly number[]): number[] {
  return [
    m[0] * n[0] + m[2] * n[1],
    m[1] * n[0] + m[3] * n[1],
    m[0] * n[2] + m[2] * n[3],
    m[1] * n[2] + m[3] * n[3],
    m[0] * n[4] + m[2] * n[5] + m[4],
    m[1] * n[4] + m[3] * n[5] + m[5],
  ];
}

/** A page as gray pixels, row by row from the top. */
export async function renderPage(
  document: PDFDocumentProxy,
  number: number,
  pixelsPerMm: number,
): Promise<{ readonly width: number; readonly height: number; readonly gray: Uint8Array }> {
  const page = await document.getPage(number);
  const viewport = page.getViewport({ scale: pixelsPerMm * mmPerPoint });
  const [width, height] = [Math.ceil(viewport.width), Math.ceil(viewport.height)];
  const factory = document.canvasFactory as {
    create: (
      width: number,
      height: number,
    ) => { canvas: HTMLCanvasElement; context: CanvasRenderingContext2D };
  };
  const { canvas, context } = factory.create(width, height);
  context.fillStyle = '#fff';
  context.fillRect(0, 0, width, height);
  await page.render({ canvas, canvasContext: context, viewport }).promise;
  const { data } = context.getImageData(0, 0, width, height);
  return { width, height, gray: Uint8Array.from({ length: width * height }, (_, k) => data[4 * k]) };
}
