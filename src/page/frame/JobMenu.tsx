import { PickFile } from '../entries/PickFile.tsx';
import './job-menu.css';
import { type ReactNode, useEffect, useRef } from 'react';
import type { Job, Wheel } from '../../index.ts';
import { handOver, saveFile } from '../state/save-file.ts';
import { usePage, useStoreOfPage } from '../state/use-page.ts';

/** Files, the other jobs, the kit, how the page stands, printing: everything that is not a question. */
export function JobMenu({
  job,
  wheel,
}: {
  readonly job: Job | undefined;
  readonly wheel: Wheel | undefined;
}): ReactNode {
  const store = useStoreOfPage();
  const settings = usePage((state) => state.settings);
  const answer = usePage((state) => (wheel ? state.answers[wheel.id] : undefined));
  const menu = useRef<HTMLDetailsElement>(null);
  const picker = useRef<HTMLInputElement>(null);
  const close = (): void => {
    if (menu.current) menu.current.open = false;
  };
  useEffect(() => {
    const leave = (event: Event): void => {
      if (event instanceof KeyboardEvent && event.key !== 'Escape') return;
      if (event instanceof PointerEvent && menu.current?.contains(event.target as Node)) return;
      if (!menu.current?.open) return;
      menu.current.open = false;
      if (event instanceof KeyboardEvent) menu.current.querySelector('summary')?.focus();
    };
    document.addEventListener('keydown', leave);
    document.addEventListener('pointerdown', leave);
    return () => {
      document.removeEventListener('keydown', leave);
      document.removeEventListener('pointerdown', leave);
    };
  }, []);
  const item = (words: string, act: () => void, isOff = false): ReactNode => (
    <li>
      <button
        type="button"
        className="menu-item"
        disabled={isOff}
        onClick={() => {
          close();
          act();
        }}
      >
        {words}
      </button>
    </li>
  );
  return (
    <div className="menu-place">
      <PickFile
        ref={picker}
        accept=".json,application/json,.zip"
        label="Open a job file"
        testId="open-file"
        onPick={(file) => void store.openFile(file, file.name)}
      />
      <details ref={menu} className="menu">
        <summary className="menu-summary">File</summary>
        <ul className="menu-list">
          {item('New job', () => store.newJob())}
          {item('Open a file …', () => picker.current?.click())}
          {item('Save as a file', () => job && saveFile(job), !job)}
          {item('All jobs on this machine', () => store.show('jobs'))}
          {item('Add a gear', () => store.addGear(), !job)}
          {item(wheel ? 'Name this gear and job …' : 'Name this job …', () => store.show('names'), !job)}
          {item('My tools and this machine', () => store.show('kit'), !job)}
          {item('My spare parts', () => store.show('parts'), !job)}
          {item('Before you take it apart', () => store.show('before'), !job)}
          {item('Print this sheet', () => store.print('sheet'), !wheel)}
          {item('Print a blank measuring sheet', () => store.print('blank'), !wheel)}
          {item(
            'Save the figures of this answer',
            () => {
              if (!answer) return;
              const text = `${JSON.stringify({ wheels: [answer.report] }, null, 2)}\n`;
              handOver(
                new TextEncoder().encode(text),
                `${wheel?.id ?? 'gear'}-answer.json`,
                'application/json',
              );
            },
            !answer,
          )}
          {item(settings.unit === 'mm' ? 'Show inches' : 'Show millimeters', () =>
            store.set({ unit: settings.unit === 'mm' ? 'in' : 'mm' }),
          )}
          {item(settings.mirrored ? 'Slip on the right' : 'Slip on the left', () =>
            store.set({ mirrored: !settings.mirrored }),
          )}
          {item(lightWords[settings.light], () => store.set({ light: nextLight[settings.light] }))}
          {item(settings.paper === 'a4' ? 'Paper: A4, use Letter' : 'Paper: Letter, use A4', () =>
            store.set({ paper: settings.paper === 'a4' ? 'letter' : 'a4' }),
          )}
        </ul>
      </details>
    </div>
  );
}

const lightWords = {
  auto: 'Light as the system: use light',
  light: 'Light: use dark',
  dark: 'Dark: as the system',
} as const;

const nextLight = { auto: 'light', light: 'dark', dark: 'auto' } as const;
