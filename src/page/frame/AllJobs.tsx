import { type ReactNode, useRef } from 'react';
import { PickFile } from '../entries/PickFile.tsx';
import { handOver } from '../state/save-file.ts';
import { usePage, useStoreOfPage } from '../state/use-page.ts';

/** Every job kept on this machine: open it, remove it, hand all over as one file, take such a file in. */
export function AllJobs(): ReactNode {
  const store = useStoreOfPage();
  const jobs = usePage((state) => state.jobs);
  const openId = usePage((state) => state.open?.id);
  const picker = useRef<HTMLInputElement>(null);
  return (
    <div className="entry">
      {jobs.length === 0 && <p>No job is kept here yet. Every change to one is kept by itself.</p>}
      <ul className="jobs-list">
        {jobs.map((job) => (
          <li key={job.id} className="jobs-row">
            <button
              type="button"
              className="plain"
              onClick={() => store.go({ jobId: job.id, subject: 'gear', wheelId: undefined })}
            >
              {job.title}
            </button>
            <span className="entry-hint">
              {`${job.gears} ${job.gears === 1 ? 'gear' : 'gears'}, ${new Date(job.changed).toLocaleString()}`}
              {job.id === openId ? ', open' : ''}
            </span>
            <button
              type="button"
              aria-label={`Remove ${job.title} from this machine`}
              onClick={() => void store.removeJob(job.id)}
            >
              Remove
            </button>
          </li>
        ))}
      </ul>
      <div className="entry-row">
        <button
          type="button"
          disabled={jobs.length === 0}
          onClick={async () => {
            const [all, { packAllJobs }] = await Promise.all([
              store.loadAll(),
              import('../keep/all-jobs.ts'),
            ]);
            handOver(packAllJobs(all), 'sparetooth-jobs.zip', 'application/zip');
          }}
        >
          Save all as one file
        </button>
        <button type="button" onClick={() => picker.current?.click()}>
          Take in a file of jobs
        </button>
        <PickFile
          ref={picker}
          accept=".zip"
          label="Take in a file of jobs"
          testId="open-all"
          onPick={(file) => void store.takeInAll(file)}
        />
      </div>
    </div>
  );
}
