/** A wheel on its place, as far as its turn matters. */
export interface PhasedWheel {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  /** Undefined where it has none to settle: it stays as it is */
  readonly teeth: number | undefined;
  readonly isInternal: boolean;
  /** A rack slides along this direction, rad, its teeth to the left of it; its phase is a length along it */
  readonly rack?: { readonly along: number; readonly pitch: number } | undefined;
}

/**
 * By how much each wheel is turned so that the teeth of every mesh stand in each other's gaps, rad counter-clockwise from
 * tooth 0 on +x; of a rack by how far it is pushed along its direction from a tooth at its own origin.
 *
 * Wheels are settled outward from the first; a loop's last mesh has nothing left to turn and stays as it comes. Wheels of
 * one shaft are settled one by one: how their teeth stand to each other is known of no drawing.
 *
 * At a mesh the arcs from the line of centers run the same way along the tangent: for two external wheels
 * δ2/p2 = 1/2 − δ1/p1, where δ is a tooth's angle beyond the line and p the pitch angle; with an internal wheel both lie
 * on one side of the contact and δ2/p2 = 1/2 + δ1/p1, as with a rack, whose δ is a length.
 */
export function settlePhases(
  wheels: readonly PhasedWheel[],
  meshes: readonly { readonly driver: string; readonly driven: string }[],
): ReadonlyMap<string, number> {
  const byId = new Map(wheels.map((wheel) => [wheel.id, wheel]));
  const phases = new Map<string, number>();
  const mates = new Map<string, string[]>();
  for (const { driver, driven } of meshes) {
    mates.set(driver, [...(mates.get(driver) ?? []), driven]);
    mates.set(driven, [...(mates.get(driven) ?? []), driver]);
  }
  for (const first of wheels) {
    if (phases.has(first.id)) continue;
    phases.set(first.id, 0);
    const queue = [first];
    for (let wheel = queue.shift(); wheel; wheel = queue.shift()) {
      for (const id of mates.get(wheel.id) ?? []) {
        const mate = byId.get(id);
        if (!mate || phases.has(id)) continue;
        phases.set(id, phaseAgainst(wheel, phases.get(wheel.id) ?? 0, mate));
        queue.push(mate);
      }
    }
  }
  return phases;
}

function phaseAgainst(wheel: PhasedWheel, phase: number, mate: PhasedWheel): number {
  if (mate.rack && wheel.teeth !== undefined) {
    const own = (phase - lineToRack(mate.rack)) / ((2 * Math.PI) / wheel.teeth);
    return footOn(mate, mate.rack, wheel) + (own + 0.5) * mate.rack.pitch;
  }
  if (wheel.rack && mate.teeth !== undefined) {
    const pushed = (phase - footOn(wheel, wheel.rack, mate)) / wheel.rack.pitch;
    return lineToRack(wheel.rack) + (pushed - 0.5) * ((2 * Math.PI) / mate.teeth);
  }
  if (wheel.teeth === undefined || mate.teeth === undefined) return 0;
  const isInside = wheel.isInternal || mate.isInternal;
  // Seen from the ring's axis through the pinion's, both touch on the same side.
  const [from, to] = mate.isInternal ? [mate, wheel] : [wheel, mate];
  const line = Math.atan2(to.y - from.y, to.x - from.x);
  const own = (phase - line) / ((2 * Math.PI) / wheel.teeth);
  const pitch = (2 * Math.PI) / mate.teeth;
  return isInside ? line + (0.5 + own) * pitch : line + Math.PI + (0.5 - own) * pitch;
}

type Rack = NonNullable<PhasedWheel['rack']>;

/** From a pinion's axis square onto the rack. Its teeth stand to the left of its direction, so the pinion lies there. */
function lineToRack({ along }: Rack): number {
  return along - Math.PI / 2;
}

/** How far along the rack the pinion stands over it. */
function footOn(bar: PhasedWheel, { along }: Rack, pinion: PhasedWheel): number {
  return (pinion.x - bar.x) * Math.cos(along) + (pinion.y - bar.y) * Math.sin(along);
}
