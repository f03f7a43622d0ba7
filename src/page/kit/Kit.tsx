import type { ReactNode } from 'react';
import type { Job } from '../../index.ts';
import { KitField } from './KitField.tsx';
import './Kit.css';
import { KitChoice } from './KitChoice.tsx';
import {
  calipers,
  editKit,
  editMachine,
  type PageKit,
  readOneLength,
  readPins,
  readYear,
  readZero,
} from './kit-fields.ts';

type Change = (what: string, edit: (job: Job) => Job) => void;

/** What the person measures with and makes with, and where the machine comes from. Only this is proposed from. */
export function Kit(props: { readonly job: Job; readonly onChange: Change }): ReactNode {
  const { job, onChange } = props;
  const kit: PageKit = job.kit ?? {};
  const caliper = kit.caliper ?? 'digital-0.01';
  const known = calipers.some(({ key }) => key === caliper);
  return (
    <div className="kit">
      <fieldset className="kit-part">
        <legend>Caliper</legend>
        <KitChoice
          label="Which kind?"
          chosen={caliper}
          choices={known ? calipers : [...calipers, { key: caliper, word: caliper }]}
          onChoose={(key) => onChange('caliper', (was) => editKit(was, 'caliper', key))}
        />
        <KitField
          label="Give or take"
          trade="uncertainty"
          hint="mm. Leave it empty for what is usual with that kind."
          shown={kit.uMm}
          read={(text) => notZero(readOneLength(text, 100))}
          onRead={(value) => onChange('give or take', (was) => editKit(was, 'uMm', value))}
        />
        <KitField
          label="It shows, when closed"
          trade="zero error"
          hint="mm, with its sign. Wipe the jaws first. It is taken off every reading."
          shown={kit.zeroMm}
          read={readZero}
          onRead={(value) => onChange('zero of the caliper', (was) => editKit(was, 'zeroMm', value))}
          mode="text"
        />
        <KitField
          label="Give or take of that"
          hint="mm. Close it five times: how much does it vary?"
          shown={kit.zeroUMm}
          read={(text) => readOneLength(text, 10)}
          onRead={(value) => onChange('give or take of the zero', (was) => editKit(was, 'zeroUMm', value))}
        />
        <KitField
          label="How thin are its jaws at the ends?"
          trade="jaw tip"
          hint="mm. Decides which spaces between teeth it can enter."
          shown={kit.jawTipMm}
          read={(text) => readOneLength(text, 100)}
          onRead={(value) => onChange('jaw tip', (was) => editKit(was, 'jawTipMm', value))}
        />
      </fieldset>
      <fieldset className="kit-part">
        <legend>Pins you own</legend>
        <KitField
          label="Their thicknesses"
          trade="pin diameters"
          hint="mm, spaces between. Drill shanks, needles, steel strings: two of each, and measure each first."
          shown={kit.pinsMm && kit.pinsMm.length > 0 ? kit.pinsMm.join('  ') : undefined}
          read={readPins}
          onRead={(value) => onChange('pins', (was) => editKit(was, 'pinsMm', value))}
          isWide
        />
      </fieldset>
      <fieldset className="kit-part">
        <legend>Scanner and printers</legend>
        <KitChoice
          label="Have you got a flat-bed scanner?"
          chosen={kit.scanner === undefined ? undefined : kit.scanner ? 'yes' : 'no'}
          choices={[
            { key: 'yes', word: 'Yes' },
            { key: 'no', word: 'No' },
          ]}
          onChoose={(key) => onChange('scanner', (was) => editKit(was, 'scanner', key === 'yes'))}
        />
        <KitField
          label="What can you print or cut with?"
          hint="In your own words. Kept with the job; the making sheet doesn’t read it yet."
          shown={kit.printers}
          read={(text) => ({ value: text.trim() === '' ? undefined : text.trim().slice(0, 500) })}
          onRead={(value) => onChange('printers', (was) => editKit(was, 'printers', value))}
          mode="text"
          isWide
        />
      </fieldset>
      <fieldset className="kit-part">
        <legend>The machine</legend>
        <KitChoice
          label="Where was it made?"
          chosen={job.machine?.made}
          choices={[
            { key: 'metric-land', word: 'Where mm are used' },
            { key: 'inch-land', word: 'Where inches are used' },
            { key: 'unknown', word: 'Don’t know' },
          ]}
          onChoose={(key) => onChange('where the machine was made', (was) => editMachine(was, 'made', key))}
        />
        <KitField
          label="About when?"
          hint="A year, such as 1984. Near enough is fine."
          shown={job.machine?.decade}
          read={readYear}
          onRead={(value) =>
            onChange('when the machine was made', (was) => editMachine(was, 'decade', value))
          }
        />
      </fieldset>
    </div>
  );
}

function notZero(read: ReturnType<typeof readOneLength>): ReturnType<typeof readOneLength> {
  return read.value === 0 ? { wrong: 'No reading is exact: type more than 0, or leave it empty.' } : read;
}
