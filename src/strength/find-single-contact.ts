import { findContactRatio } from '../involute/contact-ratio.ts';
import { findDiameters } from '../involute/gear-diameters.ts';
import type { GearSpec } from '../involute/gear-spec.ts';

/** Where on a tooth the whole load stands at its highest, and how many pairs share it elsewhere. */
export interface SingleContact {
  /**
   * Radius in the virtual wheel of the normal section, mm, as `findFormFactor` takes it; of a rack a height over its
   * datum line. Undefined where the tip itself carries the whole load: a contact ratio of 1 or less.
   */
  readonly loadRadius: number | undefined;
  /** ε_α of the pair as it is */
  readonly contactRatio: number;
}

/**
 * The highest point of single contact of a wheel with its mate: (ε_αn − 1) base pitches down the line of action from
 * the end of the tooth, ε_αn = ε_α/cos² β_b (ISO 6336-3:2006, d_en; value from memory). Above a contact ratio of 2 the
 * load is shared all the way; the point one base pitch down stands for it, with the whole load: on the safe side.
 *
 * Throws Fail as `findContactRatio` does.
 */
export function findSingleContact(wheel: GearSpec, mate: GearSpec, centerDistance?: number): SingleContact {
  const options = centerDistance === undefined ? {} : { centerDistance };
  const { transverse } =
    wheel.kind === 'external'
      ? findContactRatio(wheel, mate, options)
      : findContactRatio(mate, wheel, options);
  const baseHelix = Math.asin(Math.sin(wheel.helixAngle) * Math.cos(wheel.pressureAngle));
  const shared = Math.min(1, transverse / Math.cos(baseHelix) ** 2 - 1);
  if (shared <= 0) return { loadRadius: undefined, contactRatio: transverse };
  const back = shared * Math.PI * wheel.module * Math.cos(wheel.pressureAngle);
  if (wheel.kind === 'rack') {
    const height = wheel.addendum * wheel.module - back * Math.sin(wheel.pressureAngle);
    return { loadRadius: height, contactRatio: transverse };
  }
  const { reference, tip } = findDiameters(wheel);
  const virtual = (wheel.module * wheel.teeth) / (Math.cos(baseHelix) ** 2 * Math.cos(wheel.helixAngle));
  const base = virtual * Math.cos(wheel.pressureAngle);
  const end = Math.sqrt(Math.max(0, (virtual + tip - reference) ** 2 - base ** 2)) / 2;
  const at = wheel.kind === 'internal' ? end + back : Math.max(0, end - back);
  return { loadRadius: Math.hypot(at, base / 2), contactRatio: transverse };
}
