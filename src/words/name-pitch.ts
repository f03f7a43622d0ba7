/** What a size is called, as a person asks for it in a shop: the trade's word in brackets. */
export function namePitch(pitch: { readonly system: string; readonly size: number }): string {
  const size = Number(pitch.size.toFixed(4));
  switch (pitch.system) {
    case 'module':
      return `metric size ${size} (module)`;
    case 'diametral-pitch':
      return `inch size ${size} (DP)`;
    case 'circular-pitch':
      return `inch size by tooth distance, ${size} in (circular pitch)`;
    default:
      return `a size in no list, about ${Number(pitch.size.toFixed(3))} (module)`;
  }
}
