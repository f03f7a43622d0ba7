/** One file format that a part can be written in; the command's choices and the README's table come from here. */
export interface PartFormat {
  readonly key: 'stl' | '3mf' | 'step' | 'dxf' | 'svg';
  readonly extension: string;
  /** As registered with IANA */
  readonly mediaType: string;
  readonly what: string;
  /** One plain sentence: who takes such a file, and what to tell them */
  readonly forWhom: string;
}

/** Rows alone: what writes them (`encode-part.ts`) is needed only where a part is made. */
export const partFormats: readonly PartFormat[] = [
  {
    key: 'stl',
    extension: 'stl',
    mediaType: 'model/stl',
    what: 'triangles, numbers in mm, read by everything',
    forWhom:
      'For any slicer or printing service; the file names no unit, so say that it is in mm where you are asked.',
  },
  {
    key: '3mf',
    extension: '3mf',
    mediaType: 'model/3mf',
    what: 'triangles with unit, name and the spec inside',
    forWhom: 'For slicers and printing services that read it; the unit comes with the file.',
  },
  {
    key: 'step',
    extension: 'step',
    mediaType: 'model/step',
    what: 'exact surfaces in mm: circles as circles, flanks as splines',
    forWhom: 'For machine shops and drawing programs; every size in it can be measured there.',
  },
  {
    key: 'dxf',
    extension: 'dxf',
    mediaType: 'image/vnd.dxf',
    what: 'the section 1:1 in mm, layers OUTLINE, BORE, PITCH-CIRCLE; arcs',
    forWhom:
      'For laser cutters and drawing programs: cut the layers OUTLINE, BORE and HOLES alone, say that it is in mm.',
  },
  {
    key: 'svg',
    extension: 'svg',
    mediaType: 'image/svg+xml',
    what: 'the same section 1:1 in mm, in groups; arcs',
    forWhom: 'For laser cutters and pictures: cut the groups outline, bore and holes alone, at 100 %.',
  },
];
