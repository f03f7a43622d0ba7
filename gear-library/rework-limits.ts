/**
 * How far a bought or found gear can be altered by hand, and when a fit is a fit. Judgments of ours with their
 * reasons, since nobody has published such limits for gears of this size.
 */
const judgment = 'common practice, no published source';

export const reworkLimits = {
  /** A bore this far from the shaft goes on it as it is, mm */
  fit: {
    mm: 0.03,
    reason: 'an ordinary caliper is no surer than this inside a small hole',
    source: judgment,
  },
  /** A bore this much wider than the shaft can be bonded as it is, mm on the diameter */
  bondGap: {
    mm: 0.1,
    reason: 'more than that, and the gear sets out of true: half of it is runout',
    source: judgment,
  },
  /** Least wall between the shaft and the bottom of the teeth, mm and modules: the greater counts */
  leastWall: {
    mm: 0.5,
    modules: 0.6,
    reason: 'less splits when it is reamed, or soon after',
    source: judgment,
  },
  /** Under this many tooth depths of wall a press fit is asking for a split */
  safeWall: {
    toothDepths: 1.2,
    reason:
      'a rim of 1.2 tooth depths bears its teeth as a solid wheel would; below it, bond and do not press',
    source:
      'rim thickness factor 1 from 1.2 tooth depths on, as gear rating practice has it (value from memory)',
  },
  /** Wall of the thinnest tube that is sold as a bush, mm */
  bushWall: {
    mm: 0.225,
    reason: 'nesting brass tubes have walls of about this',
    source: judgment,
  },
  /** How much of the width the original had is enough, parts of it */
  leastWidth: {
    part: 0.6,
    reason: 'load on a tooth grows as its width shrinks; far below the original it strips where that did not',
    source: judgment,
  },
  /** Wider than what it replaces by more than this: shorten it, unless there is room, mm */
  widthRoom: {
    mm: 0.3,
    reason: 'end play of small trains',
    source: judgment,
  },
  /** Give or take of a sold gear's outside and of its span, mm, as the caliper finds it */
  outsideOnArrival: {
    mm: 0.1,
    reason:
      'tips of moulded and cut stock gears come out small by up to this; the size is settled by the span',
    source: judgment,
  },
  spanOnArrival: {
    mm: 0.06,
    reason: 'stock teeth are thinned by a few hundredths for backlash, and the caliper has its own',
    source: judgment,
  },
} as const;

/** What a gear looks like: what the eye and a quick caliper would take for the same. */
export const lookAlike = {
  /** Same count, size off by no more than this, parts */
  pitch: {
    part: 0.08,
    reason: 'half a millimeter on a gear of ten: nobody sees it without the old one beside it',
    source: judgment,
  },
  /** Another count, outside off by no more than this, mm */
  outside: {
    mm: 0.3,
    teeth: 2,
    reason: 'one or two teeth more on the same size of disc are not seen, only counted',
    source: judgment,
  },
} as const;

/** When a pair of other teeth is worth rolling, and when a made pair is drawn. */
export const pairLimits = {
  /** Base pitches this near may run together at slow speed: rolled to find out, parts */
  nearPitch: {
    part: 0.012,
    reason: '64 pitch and 0.4, 32 pitch and 0.8 differ by 0.8 %; at 48 pitch and 0.5, 5.8 %, teeth bind',
    source: judgment,
  },
  /** Circumferential backlash, modules: below, it binds with the first speck; above, it knocks */
  backlash: {
    least: 0.02,
    greatest: 0.35,
    aimed: 0.06,
    reason:
      'least as in the rolling proof; greatest is about a quarter of the tooth; aimed at as printers stray',
    source: judgment,
  },
  contactRatio: {
    least: 1.1,
    reason: 'a tenth over 1 for what making takes off',
    source: judgment,
  },
  /** Tip land, modules */
  tipLand: {
    least: 0.2,
    reason: 'narrower tips break off or do not print',
    source: 'tip thickness of at least 0.2 m, as gear handbooks advise (value from memory)',
  },
  /** Tip clearance, modules */
  tipClearance: {
    least: 0.1,
    reason: 'less than half of the usual quarter fouls the root when anything runs out',
    source: judgment,
  },
} as const;
