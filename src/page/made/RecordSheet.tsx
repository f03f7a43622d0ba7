import '../maker/maker.css';
import './record.css';
import { type ReactNode, useEffect, useState } from 'react';
import {
  capitalize,
  type Fail,
  type Job,
  type MadeReport,
  type RepairRecord,
  tellMade,
  tellOdds,
  type Wheel,
} from '../../index.ts';
import { PaperFrame } from '../print/PaperFrame.tsx';
import { usePage, useStoreOfPage } from '../state/use-page.ts';
import { withNames } from '../words/with-names.ts';
import { hearOut } from '../worker/hear-out.ts';

/** One page on the repair: to look at, and on paper alone when it is printed. */
export default function RecordSheet(props: {
  readonly job: Job;
  readonly wheel: Wheel;
  readonly made: MadeReport | undefined;
}): ReactNode {
  const { job, wheel, made } = props;
  const { process, material } = wheel.made ?? {};
  const store = useStoreOfPage();
  const printed = usePage((state) => state.printed);
  const { paper } = usePage((state) => state.settings);
  const [record, setRecord] = useState<RepairRecord>();
  const [fail, setFail] = useState<Fail>();
  useEffect(() => {
    return hearOut(store.worker.ask('record', { job, wheelId: wheel.id, date: today(), process, material }), {
      onAnswer: setRecord,
      onFail: setFail,
      onTrouble: store.fail,
    });
  }, [store, job, wheel.id, process, material]);
  // Once this is gone, paper is the drawing's again.
  useEffect(() => () => store.state.setState({ printed: 'sheet' }), [store]);
  if (fail)
    return <p className="make-wait">{`There is no record yet: ${fail.message.replace(/\.$/, '')}.`}</p>;
  if (!record) return <p className="make-wait">The record is being written …</p>;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls has to be reached by the keyboard
    <section className="record" tabIndex={0} aria-label="Repair record">
      <button type="button" onClick={() => store.print('own')}>
        Print the record
      </button>
      <RecordText job={job} record={record} made={made} />
      {printed === 'own' && (
        <PaperFrame paper={paper} label="Repair record">
          <div className="record-paper">
            <RecordText job={job} record={record} made={made} />
          </div>
        </PaperFrame>
      )}
    </section>
  );
}

function RecordText(props: {
  readonly job: Job;
  readonly record: RepairRecord;
  readonly made: MadeReport | undefined;
}): ReactNode {
  const { job, record, made } = props;
  const { failed, identity, lookAgain } = record;
  const changes = record.made.changes.filter(({ isOn }) => isOn);
  return (
    <div className="record-text">
      <h2>{`${record.title}: ${record.wheel.name}`}</h2>
      <dl>
        <Row name="date">{record.date ?? ''}</Row>
        <Row name="what failed">
          {[
            failed.seen.length === 0
              ? 'nothing was noted'
              : failed.seen.map((one) => one.replace('-', ' ')).join(', '),
            ...(failed.material === null ? [] : [`of ${failed.material}`]),
          ].join('; ')}
        </Row>
        <Row name="why, most likely">
          {failed.causes
            .map(({ name, probability, test }) => `${capitalize(name)}, ${tellOdds(probability)}. ${test}`)
            .join(' ')}
        </Row>
        <Row name="readings">{record.readings.map(({ what, read }) => `${what} ${read}`).join('; ')}</Row>
        <Row name="what it was">
          {`${identity.what}${identity.probability === null ? ', as given' : `, ${tellOdds(identity.probability)}`}`}
        </Row>
        <Row name="what was made">
          {`${record.made.isTrial ? 'A trial part' : 'A part'} by ${record.made.process}, of ${record.made.material}. ${changes.length === 0 ? 'Nothing was changed.' : `Changed: ${changes.map(({ what }) => what).join('; ')}.`}`}
        </Row>
        <Row name="check">
          {made && made.verdict !== 'unread'
            ? tellMade(made)
                .slice(0, -1)
                .map((line) => withNames(line, job))
                .join(' ')
            : 'The made part was not measured.'}
        </Row>
        <Row name="look again">
          {`${lookAgain.on === null ? `After ${lookAgain.months} months` : `On ${lookAgain.on}`}: ${lookAgain.reason}.${lookAgain.isStopgap ? ' It is a stopgap.' : ''}`}
        </Row>
        <Row name="cautions">{record.cautions.slice(0, 3).join(' ')}</Row>
        <Row name="put in by">{''}</Row>
      </dl>
    </div>
  );
}

function Row({ name, children }: { readonly name: string; readonly children: string }): ReactNode {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );
}

/** By this computer's own calendar. */
function today(): string {
  const now = new Date();
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
