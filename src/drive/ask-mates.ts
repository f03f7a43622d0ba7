import { type NextReading, rankNextReadings } from '../readings/next-readings.ts';
import { listPossibleReadings } from '../readings/possible-readings.ts';
import { type SettledPart, settleParts } from '../readings/settle-parts.ts';
import type { WeighedWheel } from '../readings/weigh-wheel.ts';
import type { DriveMessages } from './drive-messages.ts';
import { joinParts } from './join-parts.ts';
import { weighRoot } from './weigh-root.ts';

/** A reading on another wheel has to tell at least this to be worth the walk. */
const worthTheWalk = 0.02;
const mostMates = 4;
const mostAsked = 3;

/** Readings on other wheels of the drive that would say something of this one's label. */
export function askMates(
  messages: DriveMessages,
  id: string,
  isLost: (id: string) => boolean,
): NextReading[] {
  const near = messages
    .treeOf(id)
    .wheels.filter((one) => one !== id)
    .slice(0, mostMates);
  const others = near.flatMap((mate): NextReading[] => {
    const own = messages.ownOf(mate);
    if (isLost(mate) || own.of === 'spec') return [];
    if (own.of === 'fragment' || (own.of === 'bare' && !own.isCounted)) {
      const why = `the teeth of ${mate} are whole enough to count, and they run against these`;
      return [{ of: 'teeth', wheel: mate, gainBits: 0, why }];
    }
    const root = weighRoot(messages, mate);
    if (!root) return [];
    const { space, lengths, weigher } = root.weighed;
    const parts = joinParts(root.weighed, root.states, messages.hearAll(mate, root.states).states);
    const settled = settleParts(space, lengths, weigher, parts, weigher.patterns[0]);
    const [lead] = [...settled].sort((a, b) => b.probability - a.probability);
    if (!lead) return [];
    const { addendum, dedendum, rootRadius } = lead.tooth.rack.rack;
    const spec = {
      ...lead.tooth.tooth,
      kind: space.wheel.kind,
      module: lead.pitch.module,
      addendum,
      dedendum,
      rootRadius,
      thinning: 0,
      tipDiameter: null,
    };
    return rankMateReadings(root.weighed, settled, spec, (why) => `measure ${mate} instead: ${why}`);
  });
  return others
    .filter((one) => one.gainBits >= worthTheWalk || one.of === 'teeth')
    .sort((a, b) => b.gainBits - a.gainBits)
    .slice(0, mostAsked);
}

/**
 * The readings that can be taken on a mate, by what each is expected to say of the label that both share.
 *
 * @param settled the mate's own parts with all that the drive says of them
 */
function rankMateReadings(
  { wheel, space }: WeighedWheel,
  settled: readonly SettledPart[],
  lead: Parameters<typeof listPossibleReadings>[1],
  why: (reading: string) => string,
): NextReading[] {
  const numbers = new Map<string, number>();
  const byLabel = settled.map((part) => {
    const key = `${part.pitch.system} ${part.pitch.system === 'free' ? '' : part.pitch.size} ${part.tooth.rack.pressureAngleDeg}`;
    const candidate = numbers.get(key) ?? numbers.size;
    numbers.set(key, candidate);
    return { ...part, candidate };
  });
  if (numbers.size < 2) return [];
  return rankNextReadings(space, byLabel, listPossibleReadings(wheel, lead)).map((next) => ({
    ...next,
    wheel: wheel.id,
    why: why(next.why),
  }));
}
