import { makers, processes, type Wheel } from '../../index.ts';
import type { KeptMachine } from '../keep/keeper.ts';

export type Making = NonNullable<Wheel['making']>;
export type MakerOfPage = (typeof makers)[number];

/** Who makes a gear's part, how, and of what, as far as the job says. */
export interface MakingWish {
  readonly maker: MakerOfPage | undefined;
  /** Undefined where nothing is made, or nobody was chosen yet */
  readonly process: (typeof processes)[number] | undefined;
  readonly material: string | undefined;
  /** The measured machine whose errors the files take back */
  readonly machine: KeptMachine | undefined;
  /** A machine that the job names, and that is not known on this computer */
  readonly isMachineMissing: boolean;
}

/** What the job says; a job that names a process alone means its usual maker. */
export function readMakingWish(wheel: Wheel, machines: readonly KeptMachine[]): MakingWish {
  const making: Making = wheel.making ?? {};
  const named = makers.find((one) => one.key === making.maker);
  const maker = named ?? makers.find(({ processes: has }) => has.includes(making.process ?? ''));
  const key =
    making.process !== undefined && maker?.processes.includes(making.process)
      ? making.process
      : maker?.processes[0];
  const process = processes.find((one) => one.key === key);
  const material =
    making.material !== undefined && process?.materials.includes(making.material)
      ? making.material
      : undefined;
  const machine = machines.find((one) => one.name === making.machine && one.file.process === process?.key);
  return {
    maker,
    process,
    material,
    machine,
    isMachineMissing: making.machine !== undefined && machine === undefined,
  };
}

/** The gear with that changed in how it is to be made; what is undefined is no longer said. */
export function changeMaking(wheel: Wheel, change: { readonly [Key in keyof Making]?: unknown }): Wheel {
  const entries = Object.entries({ ...wheel.making, ...change }).filter(([, value]) => value !== undefined);
  const { making: _, ...rest } = wheel;
  return entries.length === 0 ? rest : { ...rest, making: Object.fromEntries(entries) as Making };
}

/** The gear with one change of the design left out, or made again. */
export function switchChange(wheel: Wheel, key: string, isOn: boolean): Wheel {
  const off = (wheel.making?.off ?? []).filter((one) => one !== key);
  const next = isOn ? off : [...off, key];
  return changeMaking(wheel, { off: next.length === 0 ? undefined : next });
}
