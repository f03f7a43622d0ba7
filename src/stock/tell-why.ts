import { findBasePitch } from '../involute/base-pitch.ts';
import { nameSize } from './name-part.ts';
import type { Need } from './need.ts';
import type { WheelProof } from './prove-wheel.ts';
import type { Draft } from './screen-parts.ts';

/** Why a part is what it is said to be, in one sentence: its teeth beside the wanted ones, and what rolling found. */
export function tellWhy(
  { kind, spec, size, isOtherPitch, isPossible, reworks }: Draft,
  need: Need,
  proof: WheelProof | undefined,
): string {
  const same = `the same ${spec.teeth} teeth of ${nameSize(size)}`;
  const rolled = proof ? `; rolled, it ${proof.meshes.map(({ words }) => words).join('; it ')}` : '';
  const notRolled =
    need.mates.length === 0
      ? '; not rolled, since no mate is known well enough'
      : '; not rolled, since others of its kind lead';
  const shown = proof ? rolled : notRolled;
  switch (kind) {
    case 'exact':
    case 'rework': {
      const but =
        proof && proof.verdict !== 'turns'
          ? '. It is the same wheel, so check the distance and the mate before you doubt it'
          : '';
      return `${same}${shown}${but}`;
    }
    case 'other-teeth': {
      const counts =
        spec.teeth === need.spec.teeth
          ? 'the same count'
          : `${spec.teeth} teeth in place of ${need.spec.teeth}`;
      const what = isOtherPitch
        ? `another size (${nameSize(size)}), ${counts}`
        : spec.profileShift !== need.spec.profileShift
          ? `${counts}, shift ${spec.profileShift} in place of ${Number(need.spec.profileShift.toFixed(2))}`
          : counts;
      return `${what}${shown}`;
    }
    case 'look-alike': {
      if (!isPossible) {
        const stop = reworks.find((one) => !one.isPossible);
        return `its teeth would do, but it can't be made to go on: ${stop?.limit ?? 'see the rework'}`;
      }
      const off = (findBasePitch(spec) / findBasePitch(need.spec) - 1) * 100;
      const what = isOtherPitch
        ? `looks like it, but its teeth are ${Math.abs(off).toFixed(1)} % ${off > 0 ? 'further apart' : 'closer together'} (${nameSize(size)}, ${spec.teeth} teeth)`
        : `looks like it, but has ${spec.teeth} teeth${spec.teeth === need.spec.teeth ? ' of another thickness' : ''}`;
      return `${what}${shown}`;
    }
  }
}
