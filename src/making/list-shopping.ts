import { findDiameters } from '../involute/gear-diameters.ts';
import { findBoreRadius } from '../solid/wheel-form.ts';
import type { HandOverTask } from './plan-hand-over.ts';
import { shortName } from './short-name.ts';

export interface ShoppingItem {
  readonly kind: 'stock' | 'bush' | 'tool' | 'glue' | 'grease' | 'spare';
  readonly what: string;
  readonly size: string | null;
  readonly why: string;
  /** False: named to be kept away from it */
  readonly isGood: boolean;
}

/** What to have at hand for making and fitting a part: and what to keep away from it. */
export function listShopping(task: HandOverTask): ShoppingItem[] {
  const { maker, material } = task;
  const good = (
    kind: ShoppingItem['kind'],
    what: string,
    why: string,
    size: string | null = null,
  ): ShoppingItem => ({ kind, what, size, why, isGood: true });
  const bad = (kind: ShoppingItem['kind'], what: string, why: string): ShoppingItem => ({
    kind,
    what,
    size: null,
    why,
    isGood: false,
  });
  const isMade = maker.processes.length > 0;
  const suits = material.lubricants.suit;
  return [
    ...(isMade ? [good('stock', material.name, 'what it is made of', sizeStock(task))] : []),
    ...listSeat(task, good),
    ...(task.hold === 'turns' || task.hold === 'press'
      ? []
      : [
          good(
            'glue',
            material.glue.holds,
            `holds on ${shortName(material)}; degrease and roughen both sides`,
          ),
          bad('glue', material.glue.fails, `does not hold on ${shortName(material)}, or harms it`),
        ]),
    good('grease', suits[0], `safe on ${shortName(material)}; a little, and never on belts or tyres`),
    ...material.lubricants.avoid.map((what) => bad('grease', what, `not on ${shortName(material)}`)),
    good('spare', `${maker.count - 1} more of the gear`, maker.whyCount),
  ];
}

function sizeStock({ maker, form }: HandOverTask): string {
  const { spec, faceWidth, hubs } = form;
  const length = faceWidth + hubs.reduce((sum, hub) => sum + hub.length, 0);
  if (maker.key === 'laser-cutter') return `sheet ${show(faceWidth)} mm thick`;
  if (maker.key === 'machine-shop' && spec.kind === 'external') {
    // Enough to turn clean and to hold in the chuck.
    const across = Math.ceil(findDiameters(spec).tip + 2);
    return `bar of ${across} mm across, ${Math.ceil(maker.count * (length + 3) + 20)} mm long`;
  }
  return `for ${maker.count} pieces`;
}

/** What the seat on the shaft wants: a bush, a file, a drill or reamer. */
function listSeat(
  { form, hold, bushOutside, shaft, maker }: HandOverTask,
  good: (kind: ShoppingItem['kind'], what: string, why: string, size?: string | null) => ShoppingItem,
): ShoppingItem[] {
  const items: ShoppingItem[] = [];
  const length = form.faceWidth + form.hubs.reduce((sum, hub) => sum + hub.length, 0);
  if (hold === 'bush' && bushOutside !== undefined && shaft !== undefined) {
    items.push(
      good(
        'bush',
        'brass tube or bush',
        'metal on the shaft, glue round the metal',
        `${show(bushOutside)} mm outside, ${show(shaft)} mm inside, ${show(length)} mm long`,
      ),
    );
  }
  if (hold === 'flat')
    items.push(
      good('tool', 'a flat needle file', 'for the flat on the shaft; cover the motor from the filings'),
    );
  if (hold === 'knurl') items.push(good('tool', 'two coarse flat files', 'to roll the shaft between'));
  if (hold === 'turns' && shaft !== undefined)
    items.push(good('spare', 'a steel pin', 'if the old one is worn', `${show(shaft)} mm`));
  if (form.bore.shape === 'round') {
    const size = Math.round(20 * findBoreRadius(form.bore)) / 10;
    const why =
      maker.key === 'machine-shop'
        ? 'to try the bore with'
        : 'holes come out small: open it by hand, in soft jaws';
    items.push(good('tool', 'a drill or hand reamer', why, `${show(size)} mm`));
  }
  return items;
}

function show(value: number): string {
  return String(Number(value.toPrecision(4)));
}
