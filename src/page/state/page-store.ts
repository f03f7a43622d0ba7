import { createStore, type StoreApi } from 'zustand/vanilla';
import {
  checkPartsSize,
  checkSize,
  describeFail,
  Fail,
  type Job,
  type Wheel,
  type WheelReport,
} from '../../index.ts';
import { type Place, readAddress, turnTo, writeAddress } from '../address.ts';
import type { Keeper, KeptMachine, KeptParts, SaveOutcome } from '../keep/keeper.ts';
import { type AnswerWorker, Overtaken } from '../worker/ask-worker.ts';
import type { EarlyAnswer } from './ask-early.ts';
import { askIdentity } from './ask-identity.ts';
import { addWheel, editWheel, startJob } from './edit-job.ts';
import { changeJob, freshJob, type OpenJob, redoStep, undoStep } from './open-job.ts';
import { type PageState, type Settings, type Trouble, usualSettings } from './page-state.ts';
import { type Slot, slotKey } from './slot.ts';

/** Everything that the page can do. Methods return at once; what takes time shows in the state when it is there. */
export interface PageStore {
  readonly state: StoreApi<PageState>;
  readonly worker: AnswerWorker;
  /** For what takes long and can be given up: a worker of its own, so that answers don't wait behind it */
  readonly searcher: AnswerWorker;
  /** What the worker said of a gear, where it said so of this very job */
  readonly answerOf: (job: Job, wheelId: string) => WheelReport | undefined;
  readonly start: () => Promise<void>;
  /** Changes the open job, with a step to undo it. A change to the example makes a copy first. */
  readonly change: (what: string, edit: (job: Job) => Job) => void;
  readonly changeWheel: (wheelId: string, what: string, edit: (wheel: Wheel) => Wheel) => void;
  readonly undo: () => void;
  readonly redo: () => void;
  readonly go: (place: Partial<Place>) => void;
  /** Asks the question at hand about a gear or the whole train, or the first one where it can't be asked there */
  readonly turnTo: (to: { readonly wheelId: string } | 'train', question?: Place['question']) => void;
  readonly openAct: (slot: Slot | undefined) => void;
  readonly keepDraft: (key: string, text: string) => void;
  readonly newJob: () => void;
  readonly addGear: () => void;
  readonly print: (what: PageState['printed']) => void;
  /** Takes in every job of a file of jobs; says which could not be read */
  readonly takeInAll: (file: Blob) => Promise<void>;
  readonly openFile: (file: Blob, name: string) => Promise<void>;
  /** A file of the person's own parts, kept on this machine; one of the same name is replaced */
  readonly addParts: (file: Blob, name: string) => Promise<void>;
  readonly dropParts: (name: string) => Promise<void>;
  /** A measured machine, kept on this computer as it is now; how it stood before stays with it */
  readonly keepMachine: (name: string, file: KeptMachine['file']) => Promise<void>;
  /** The machine as it stood before its last change; one that was not there before goes */
  readonly stepMachineBack: (name: string) => Promise<void>;
  readonly loadAll: () => Promise<readonly Job[]>;
  readonly removeJob: (id: string) => Promise<void>;
  readonly set: (settings: Partial<Settings>) => void;
  readonly show: (over: PageState['over']) => void;
  readonly say: (said: string | undefined) => void;
  readonly fail: (trouble: unknown) => void;
}

export const exampleId = 'example';

/** Readings of a coupon are a dozen. */
const mostMachineSteps = 40;

export function createPageStore(
  keeper: Keeper,
  worker: AnswerWorker,
  searcher: AnswerWorker,
  example: Job,
  early?: EarlyAnswer,
): PageStore {
  const state = createStore<PageState>(() => ({
    place: readAddress(window.location.hash),
    open: undefined,
    isExample: false,
    jobs: [],
    keeping: keeper.condition(),
    answers: {},
    working: new Set<string>(),
    act: undefined,
    drafts: {},
    settings: usualSettings,
    parts: [],
    machines: [],
    trouble: undefined,
    said: undefined,
    over: undefined,
    printed: 'sheet',
    hasActed: false,
  }));
  const { getState, setState } = state;
  let saving: Promise<void> = Promise.resolve();
  const exampleJob = freshJob(exampleId, example);

  const adopt = (open: OpenJob, isExample: boolean): void => {
    setState({
      open,
      isExample,
      answers: {},
      act: undefined,
      drafts: {},
      trouble: undefined,
      over: undefined,
    });
    answerAll();
    if (isExample) return;
    void keeper.keepLastOpen(open.id);
    void keeper.loadDrafts(open.id).then((drafts) => {
      if (getState().open?.id === open.id) setState({ drafts: { ...drafts, ...getState().drafts } });
    });
  };

  /** Saves what is open now; saves follow one another, each with the newest state. */
  const save = (): void => {
    saving = saving.then(async () => {
      const { open, isExample } = getState();
      if (!open || isExample) return;
      settle(open, await keeper.save(open));
      setState({ jobs: await keeper.list(), keeping: keeper.condition() });
    });
  };

  const settle = (sent: OpenJob, came: SaveOutcome): void => {
    const { open } = getState();
    if (!open || open.id !== sent.id) return;
    if (came.outcome === 'saved') {
      setState({ open: { ...open, revision: came.revision } });
    } else if (came.outcome === 'elsewhere') {
      // Both are kept: the other window's under the old name, this one's as a job of its own.
      const copy = { ...open, id: newId(), revision: 0, job: titled(open.job, 'this window') };
      setState({
        open: copy,
        said: 'This job was changed in another window at the same time. Both are kept: what you typed here is now a job of its own.',
      });
      navigate({ ...getState().place, jobId: copy.id }, true);
      save();
    }
  };

  const answerAll = (): void => {
    const { open, place } = getState();
    const wheels = [...(open?.job.wheels ?? [])];
    // The gear that is looked at is answered first.
    wheels.sort((a, b) => Number(b.id === place.wheelId) - Number(a.id === place.wheelId));
    for (const wheel of wheels) void answer(wheel);
  };

  const withWorking = (wheelId: string, isWorking: boolean): ReadonlySet<string> => {
    const working = new Set(getState().working);
    if (isWorking) working.add(wheelId);
    else working.delete(wheelId);
    return working;
  };

  const answer = async (wheel: Wheel): Promise<void> => {
    const { open } = getState();
    if (!open) return;
    const { job } = open;
    setState({ working: withWorking(wheel.id, true) });
    try {
      const isAsked = early?.job === job && early.wheelId === wheel.id;
      const came = await (isAsked ? early.answer : askIdentity(worker, job, wheel, `identify ${wheel.id}`));
      const before = getState().answers[wheel.id]?.report;
      if (getState().open?.job !== job) return;
      setState({
        working: withWorking(wheel.id, false),
        answers: { ...getState().answers, [wheel.id]: { job, before, ...came } },
      });
    } catch (error) {
      if (error instanceof Overtaken) return;
      setState({ working: withWorking(wheel.id, false) });
      fail(error);
    }
  };

  const fail = (error: unknown): void => {
    setState({ trouble: error === undefined ? undefined : describeTrouble(error) });
  };

  const navigate = (place: Place, replaces = false): void => {
    const address = writeAddress(place);
    setState({ place });
    if (window.location.hash === address) return;
    if (replaces) window.history.replaceState(null, '', address);
    else window.history.pushState(null, '', address);
  };

  const follow = async (): Promise<void> => {
    const place = readAddress(window.location.hash);
    const { open } = getState();
    setState({ place, act: undefined, over: undefined });
    if (place.jobId === open?.id) return;
    if (place.jobId === undefined || place.jobId === exampleId) {
      adopt(exampleJob, true);
      return;
    }
    const kept = await keeper.load(place.jobId);
    if (kept) adopt(kept, false);
    else {
      setState({ said: 'That job is not kept on this machine. Open its file, if you have one.' });
      await openSomething();
    }
  };

  /** The last job, else the example. */
  const openSomething = async (): Promise<void> => {
    const last = await keeper.lastOpen();
    const kept = last === undefined ? undefined : await keeper.load(last);
    const open = kept ?? exampleJob;
    navigate(startOf(open), true);
    adopt(open, !kept);
  };

  const openNew = (job: Job, said?: string): void => {
    const open = freshJob(newId(), job);
    navigate(startOf(open));
    adopt(open, false);
    setState({ said, hasActed: true });
    save();
  };

  const replaceOpen = (open: OpenJob): void => {
    const { open: before, place } = getState();
    if (open === before) return;
    setState({ open, trouble: undefined, said: undefined, hasActed: true });
    const ids = (open.job.wheels ?? []).map((wheel) => wheel.id);
    if (place.wheelId !== undefined && !ids.includes(place.wheelId))
      navigate({ ...place, wheelId: ids[0] }, true);
    answerAll();
    save();
  };

  const change: PageStore['change'] = (what, edit) => {
    const { open, isExample, place } = getState();
    if (!open) return;
    if (!isExample) {
      replaceOpen(changeJob(open, what, edit));
      return;
    }
    const changed = edit(open.job);
    if (changed === open.job) return;
    const copy = freshJob(newId(), titled(open.job, 'my copy'));
    setState({ isExample: false });
    navigate({ ...place, jobId: copy.id }, true);
    replaceOpen(changeJob(copy, what, edit));
    setState({ said: 'The example stays as it is: you are working in a copy of it.' });
    void keeper.keepLastOpen(copy.id);
  };

  const go: PageStore['go'] = (place) => {
    navigate({ ...getState().place, ...place });
    setState({ act: undefined, over: undefined, trouble: undefined });
    if (getState().place.jobId !== getState().open?.id) void follow();
  };

  const keepParts = async (parts: readonly KeptParts[]): Promise<void> => {
    setState({ parts });
    if (!(await keeper.keepParts(parts)))
      setState({ said: 'Your parts could not be kept on this machine: they last as long as this window.' });
    setState({ keeping: keeper.condition() });
  };

  const keepMachines = async (machines: readonly KeptMachine[]): Promise<void> => {
    setState({ machines });
    if (!(await keeper.keepMachines(machines)))
      setState({ said: 'This could not be kept on this computer: it lasts as long as this window.' });
    setState({ keeping: keeper.condition() });
  };

  const takeInAll: PageStore['takeInAll'] = async (file) => {
    try {
      const { checkPackSize, unpackJobs } = await import('../keep/all-jobs.ts');
      checkPackSize(file.size);
      const refused: string[] = [];
      let taken = 0;
      for (const { name, bytes } of unpackJobs(new Uint8Array(await file.arrayBuffer()))) {
        try {
          const { job } = await worker.ask('open', { bytes });
          await keeper.save(freshJob(newId(), job));
          taken++;
        } catch (error) {
          if (!(error instanceof Fail)) throw error;
          refused.push(`${name}: ${error.message}`);
        }
      }
      setState({
        jobs: await keeper.list(),
        keeping: keeper.condition(),
        said: [`${taken} jobs taken in.`, ...refused.map((one) => `Not taken: ${one}.`)].join(' '),
      });
    } catch (error) {
      fail(error);
    }
  };

  const openFile: PageStore['openFile'] = async (file, name) => {
    try {
      if (/\.zip$/i.test(name)) {
        await takeInAll(file);
        return;
      }
      // The size is known before anything is read.
      checkSize(file.size);
      const bytes = new Uint8Array(await file.arrayBuffer());
      const { job, notices } = await worker.ask('open', { bytes });
      const noted =
        notices.length === 0 ? '' : ` ${notices.length} fields are not known here: kept, but not used.`;
      openNew(job, `Opened ${name}.${noted}`);
    } catch (error) {
      fail(error);
    }
  };

  return {
    state,
    worker,
    searcher,
    answerOf(job, wheelId) {
      const known = getState().answers[wheelId];
      return known?.job === job ? known.report : undefined;
    },
    async start() {
      window.addEventListener('popstate', () => void follow());
      window.addEventListener('hashchange', () => void follow());
      keeper.onSavedElsewhere((id) => void refresh(id));
      const settings = { ...usualSettings, ...(await keeper.loadSettings()) };
      setState({ settings, parts: await keeper.loadParts(), machines: await keeper.loadMachines() });
      const { place } = getState();
      if (place.jobId === undefined) await openSomething();
      else await follow();
      setState({ jobs: await keeper.list(), keeping: keeper.condition() });
    },
    change,
    changeWheel(wheelId, what, edit) {
      change(what, (job) => editWheel(job, wheelId, edit));
    },
    undo() {
      const { open } = getState();
      if (open) replaceOpen(undoStep(open));
    },
    redo() {
      const { open } = getState();
      if (open) replaceOpen(redoStep(open));
    },
    go,
    turnTo(to, question) {
      const { place } = getState();
      go(turnTo({ ...place, question: question ?? place.question }, to));
    },
    openAct(act) {
      setState({ act, over: undefined, trouble: undefined, hasActed: true });
    },
    keepDraft(key, text) {
      const { open, isExample, drafts } = getState();
      const { [key]: _, ...others } = drafts;
      const next = text === '' ? others : { ...others, [key]: text };
      setState({ drafts: next });
      if (open && !isExample) void keeper.keepDrafts(open.id, next);
    },
    newJob() {
      openNew(startJob(nextTitle(getState().jobs.map((job) => job.title))));
    },
    openFile,
    addGear() {
      change('a gear added', addWheel);
      const added = getState().open?.job.wheels?.at(-1);
      if (added) navigate({ ...turnTo(getState().place, { wheelId: added.id }), question: 'what-is-it' });
    },
    print(printed) {
      setState({ printed });
      // After the next frame the sheet to print is on the page.
      requestAnimationFrame(() => requestAnimationFrame(() => window.print()));
    },
    takeInAll,
    async addParts(file, name) {
      try {
        checkPartsSize(file.size);
        const bytes = new Uint8Array(await file.arrayBuffer());
        await keepParts([...getState().parts.filter((one) => one.name !== name), { name, bytes }]);
      } catch (error) {
        fail(error);
      }
    },
    async dropParts(name) {
      await keepParts(getState().parts.filter((one) => one.name !== name));
    },
    async keepMachine(name, file) {
      const { machines } = getState();
      const before = machines.find((one) => one.name === name);
      const past = before ? [...before.past, before.file].slice(-mostMachineSteps) : [];
      await keepMachines([...machines.filter((one) => one !== before), { name, file, past }]);
    },
    async stepMachineBack(name) {
      const { machines } = getState();
      const found = machines.find((one) => one.name === name);
      if (!found) return;
      const others = machines.filter((one) => one !== found);
      const file = found.past.at(-1);
      await keepMachines(file ? [...others, { name, file, past: found.past.slice(0, -1) }] : others);
    },
    async loadAll() {
      const kept = await Promise.all((await keeper.list()).map(({ id }) => keeper.load(id)));
      return kept.flatMap((open) => (open ? [open.job] : []));
    },
    async removeJob(id) {
      await keeper.remove(id);
      setState({ jobs: await keeper.list() });
      if (getState().open?.id === id) await openSomething();
    },
    set(settings) {
      const next = { ...getState().settings, ...settings };
      setState({ settings: next });
      void keeper.keepSettings({ ...next });
    },
    show(over) {
      setState({ over });
    },
    say(said) {
      setState({ said });
    },
    fail,
  };

  /** Another window saved this job: its newer state is taken over, since everything here is saved already. */
  async function refresh(id: string): Promise<void> {
    await saving;
    const { open } = getState();
    setState({ jobs: await keeper.list() });
    if (open?.id !== id) return;
    const theirs = await keeper.load(id);
    // A change made here meanwhile is on its way to be saved, and will be told of the other window's.
    if (getState().open !== open) return;
    if (theirs && theirs.revision > open.revision) {
      setState({ open: theirs, said: 'Changed in another window: this is how it stands there.' });
      answerAll();
    }
  }
}

function describeTrouble(error: unknown): Trouble {
  if (error instanceof Fail) return describeFail(error);
  return {
    code: 'broken',
    field: '',
    message: `something in this page went wrong (${error instanceof Error ? error.message : String(error)})`,
    remedy: 'Nothing typed is lost. Save a file, then load the page again.',
    details: {},
  };
}

/** Where a job is opened: its first gear. */
function startOf({ id, job }: OpenJob): Place {
  return { jobId: id, subject: 'gear', wheelId: job.wheels?.[0]?.id, question: 'what-is-it' };
}

function titled(job: Job, what: string): Job {
  const { invented: _, ...rest } = job;
  return { ...rest, title: `${job.title ?? 'Job'} (${what})` };
}

function nextTitle(taken: readonly string[]): string {
  let number = 1;
  while (taken.includes(`Machine ${number}`)) number++;
  return `Machine ${number}`;
}

function newId(): string {
  return crypto.randomUUID().slice(0, 8);
}

export function draftKey(wheelId: string, slot: Slot): string {
  return `${wheelId} ${slotKey(slot)}`;
}
