/** What the maker sets, in words that any slicer, service or shop understands; and what to beware of while making. */
export interface MakingSetting {
  /** Keys of processes.ts */
  readonly processes: readonly string[];
  readonly what: string;
  readonly value: string;
  readonly reason: string;
  readonly source: string;
}

const practice = 'common practice, no published source';
const filament = ['filament-0.25', 'filament-0.4', 'filament-0.6'] as const;
const printed = [...filament, 'resin', 'powder-bed'] as const;

export const makingSettings: readonly MakingSetting[] = [
  {
    processes: printed,
    what: 'Scale',
    value: '100 %, unit mm, no repair, no automatic turning',
    reason: 'every size in the file is meant',
    source: practice,
  },
  {
    processes: filament,
    what: 'Placing',
    value: 'flat on the bed, axis upright, no supports',
    reason: 'teeth then bend along the layers, which part more easily than they tear',
    source: practice,
  },
  {
    processes: ['filament-0.25'],
    what: 'Layer height',
    value: '0.1 mm or less',
    reason: 'under half the nozzle',
    source: practice,
  },
  {
    processes: ['filament-0.4'],
    what: 'Layer height',
    value: '0.12 to 0.16 mm',
    reason: 'under half the nozzle; thinner layers join better',
    source: practice,
  },
  {
    processes: ['filament-0.6'],
    what: 'Layer height',
    value: '0.2 mm',
    reason: 'under half the nozzle',
    source: practice,
  },
  {
    processes: filament,
    what: 'Walls',
    value: '4 or more, so that teeth are walls all through',
    reason: 'walls carry more than filling does',
    source: practice,
  },
  {
    processes: filament,
    what: 'Filling',
    value: '100 %',
    reason: 'small gears need all of it',
    source: practice,
  },
  {
    processes: filament,
    what: 'Outer wall',
    value: 'printed slowly, at an even speed, its seam in a gap between teeth',
    reason: 'a seam on a flank is a bump once a turn',
    source: practice,
  },
  {
    processes: filament,
    what: 'First layer',
    value: 'compensate its bulge, or file the rim of the face that lay on the bed',
    reason: 'the bulge stands in the mesh',
    source: practice,
  },
  {
    processes: ['resin'],
    what: 'Placing',
    value: 'axis upright or tilted, supports on a face and never on teeth or in the bore',
    reason: 'marks of supports stand in the mesh',
    source: practice,
  },
  {
    processes: ['resin'],
    what: 'Layer height',
    value: '0.05 mm or less',
    reason: 'steps on a flank are heard',
    source: practice,
  },
  {
    processes: ['resin'],
    what: 'After printing',
    value: 'wash, let dry, cure as long as the maker of the resin says; measure after curing',
    reason: 'it shrinks and hardens while curing',
    source: practice,
  },
  {
    processes: ['powder-bed'],
    what: 'After printing',
    value: 'blast clean, no dye, no smoothing',
    reason: 'both change the size of the teeth',
    source: practice,
  },
  {
    processes: ['machine-shop'],
    what: 'Teeth',
    value: 'hob, or mill with a form cutter of this module and angle; deburr the rims',
    reason: 'the tooth form is the standard one of the data table',
    source: practice,
  },
  {
    processes: ['machine-shop'],
    what: 'Bore and teeth',
    value: 'in one clamping, or the teeth on a mandrel in the finished bore',
    reason: 'a bore off center beats once a turn',
    source: practice,
  },
  {
    processes: ['laser-cut'],
    what: 'Cut',
    value: 'compensate half the width of the cut on each side; teeth and bore in one setting',
    reason: 'the file holds the finished size',
    source: practice,
  },
  {
    processes: filament,
    what: 'Beware',
    value: 'Air the room: hot plastic gives off fumes and fine particles.',
    reason: 'published studies of printer emissions',
    source: 'NIOSH guide on printing in offices, schools and homes: value from memory',
  },
  {
    processes: ['resin'],
    what: 'Beware',
    value: 'Gloves and eye protection until it is cured; keep uncured resin off skin and out of drains.',
    reason: 'uncured resin irritates and sensitizes',
    source: practice,
  },
  {
    processes: ['powder-bed', 'laser-cut', 'machine-shop'],
    what: 'Beware',
    value: 'Mind dust and chips when you fit it: file wet or wear a mask.',
    reason: 'plastic dust',
    source: practice,
  },
];
