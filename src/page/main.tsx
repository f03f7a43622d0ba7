import './tokens.css';
import { createRoot } from 'react-dom/client';
import example from '../../demo-data/slide-projector.json';
import type { Job } from '../index.ts';
import { Frame } from './frame/Frame.tsx';
import { openKeeper } from './keep/open-keeper.ts';
import { askEarly } from './state/ask-early.ts';
import { createPageStore } from './state/page-store.ts';
import { PageContext } from './state/use-page.ts';
import { createAnswerWorker } from './worker/ask-worker.ts';

const worker = createAnswerWorker();
const searcher = createAnswerWorker({ isEager: false });
// The example is read by the tests as every demo job is, so its type holds.
const firstJob = example as Job;
// A bare address is a first visit, as far as can be told before storage is open.
const early = window.location.hash.length < 3 ? askEarly(worker, firstJob) : undefined;
const keeper = await openKeeper();
const store = createPageStore(keeper, worker, searcher, firstJob, early);
void store.start();

const root = document.getElementById('page');
if (!root) throw new Error('the page has no root element');
createRoot(root).render(
  <PageContext value={store}>
    <Frame />
  </PageContext>,
);
