/** What a reading is called: plain words first, the trade's word beside them where there is one. */
export function nameReading(reading: {
  readonly of: string;
  readonly teeth?: number | undefined;
  readonly pinMm?: number | undefined;
  readonly mate?: string | undefined;
  readonly pitches?: number | undefined;
}): string {
  switch (reading.of) {
    case 'teeth':
      return 'the tooth count';
    case 'outside':
      return 'across the tips';
    case 'root':
      return 'bottom of the teeth (root)';
    case 'tooth-depth':
      return 'tooth depth';
    case 'span':
      return reading.teeth === undefined ? 'across teeth (span)' : `across ${reading.teeth} teeth (span)`;
    case 'over-pins':
      return reading.pinMm === undefined ? 'over two pins' : `over two pins of ${reading.pinMm} mm`;
    case 'center-distance':
      return reading.mate === undefined
        ? 'distance of the posts'
        : `distance of the posts to ${reading.mate}`;
    case 'rack-pitch':
      return reading.pitches === undefined ? 'along the bar' : `along ${reading.pitches} pitches of the bar`;
    case 'helix-angle':
      return 'slant of the teeth (helix angle)';
    case 'hand-roll':
      return 'rolled by hand against the mate';
    case 'crumbs':
      return 'crumbs of it in the grease';
    case 'post':
      return 'its post (diameter, free height, clip)';
    case 'neighbors':
      return 'which neighbors it touched';
    case 'rows':
      return 'one row of teeth or two';
    case 'speed-wanted':
      return 'the speed that was wanted';
    case 'zero':
      return "the caliper's zero";
    default:
      return reading.of.replaceAll('-', ' ');
  }
}
