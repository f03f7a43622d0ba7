import { PDFDocument, type PDFFont, StandardFonts } from '@cantoo/pdf-lib';
import type { MeasureText } from '../making/sheet-page.ts';

/** An empty sheet with its typeface, and how wide that typeface sets a text. */
export interface SheetDocument {
  readonly document: PDFDocument;
  readonly fonts: { readonly plain: PDFFont; readonly bold: PDFFont };
  /** Letters that the typeface has */
  readonly known: ReadonlySet<number>;
  readonly measure: MeasureText;
}

/** A new document in Helvetica, without a date. A preview is laid with the same measure, so that both break alike. */
export async function startSheetDocument(): Promise<SheetDocument> {
  const document = await PDFDocument.create({ updateMetadata: false });
  const fonts = {
    plain: document.embedStandardFont(StandardFonts.Helvetica),
    bold: document.embedStandardFont(StandardFonts.HelveticaBold),
  };
  const known = new Set(fonts.plain.getCharacterSet());
  return {
    document,
    fonts,
    known,
    measure: (text, size, isBold) =>
      (isBold ? fonts.bold : fonts.plain).widthOfTextAtSize(keepKnown(text, known), size),
  };
}

/** Letters that the typeface lacks: without their accents where that helps, else `?`. */
export function keepKnown(text: string, known: ReadonlySet<number>): string {
  let kept = '';
  for (const letter of text.normalize('NFC')) {
    if (known.has(letter.codePointAt(0) ?? 0)) kept += letter;
    else {
      const plain = letter.normalize('NFKD').replace(/\p{M}/gu, '');
      kept += [...plain].every((one) => known.has(one.codePointAt(0) ?? 0)) && plain !== '' ? plain : '?';
    }
  }
  return kept;
}
