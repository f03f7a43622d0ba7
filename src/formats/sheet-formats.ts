/** A format of the making sheet: for people, where part formats are for machines. */
export interface SheetFormat {
  readonly key: 'pdf';
  readonly extension: string;
  /** As registered with IANA */
  readonly mediaType: string;
  readonly what: string;
  /** One plain sentence: who takes such a file, and what to tell them */
  readonly forWhom: string;
}

export const sheetFormats: readonly [SheetFormat] = [
  {
    key: 'pdf',
    extension: 'pdf',
    mediaType: 'application/pdf',
    what: 'the making sheet: drawing, gear data, checks, outline 1:1, order',
    forWhom: 'For people: print it at 100 % and check its bar of 50 mm, or send it with the order.',
  },
];
