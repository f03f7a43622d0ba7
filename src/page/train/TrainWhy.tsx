import './train-why.css';
import type { ReactNode } from 'react';
import { capitalize, type DriveReport, type Job, type TrainDrawing, type Wheel } from '../../index.ts';
import { findSeat } from '../state/edit-train.ts';
import { orderWheels } from '../state/order-wheels.ts';
import { formatLength } from '../words/format-length.ts';
import { nameWheel } from '../words/name-wheel.ts';
import { withNames } from '../words/with-names.ts';
import type { TrainAct } from './choose-train-next.ts';
import { nameKind } from './wheel-kinds.ts';

/** Why the train is said to run: every mesh with its figures, how it is put together, what is drawn by guess. */
export function TrainWhy(props: {
  readonly job: Job;
  readonly report: DriveReport | undefined;
  readonly drawing: TrainDrawing | undefined;
  readonly unit: 'mm' | 'in';
  readonly onAct: (act: TrainAct) => void;
}): ReactNode {
  const { job, report, drawing, unit, onAct } = props;
  return (
    <div className="why">
      {report && report.troubles.length > 0 && (
        <section>
          <h3 className="why-title">What stands in the way</h3>
          <ul>
            {report.troubles.map((trouble) => (
              <li key={trouble.message}>
                {withNames(`${capitalize(trouble.message)}. ${trouble.remedy}`, job)}
              </li>
            ))}
          </ul>
        </section>
      )}
      {report && report.meshes.length > 0 && <Meshes job={job} report={report} unit={unit} onAct={onAct} />}
      <section>
        <h3 className="why-title">How it is put together</h3>
        {orderWheels(job).map((wheel) => (
          <Seated key={wheel.id} job={job} wheel={wheel} onAct={onAct} />
        ))}
        <button type="button" className="plain" onClick={() => onAct({ of: 'add' })}>
          Add a gear
        </button>
      </section>
      <p>A gear’s solid can be looked at under How to make it, one gear at a time.</p>
      {[...(report?.notes ?? []), ...(drawing?.guesses ?? [])].map((note) => (
        <p key={note}>{withNames(`${capitalize(note)}.`, job)}</p>
      ))}
    </div>
  );
}

function Meshes(props: {
  readonly job: Job;
  readonly report: DriveReport;
  readonly unit: 'mm' | 'in';
  readonly onAct: (act: TrainAct) => void;
}): ReactNode {
  const { job, report, unit, onAct } = props;
  const show = (mm: number | null): string =>
    mm === null ? '–' : unit === 'mm' ? mm.toFixed(3) : (mm / 25.4).toFixed(5);
  return (
    <section>
      <h3 className="why-title">Mesh by mesh</h3>
      <table className="why-readings train-meshes">
        <thead>
          <tr>
            <th scope="col">which turns which</th>
            <th scope="col">
              play, {unit} <small>backlash</small>
            </th>
            <th scope="col">
              unevenness <small>transmission error</small>
            </th>
            <th scope="col">
              sharing the load <small>contact ratio</small>
            </th>
          </tr>
        </thead>
        <tbody>
          {report.meshes.map((mesh) => (
            <tr key={`${mesh.driver} ${mesh.driven}`}>
              <th scope="row">
                {`${nameWheel(job, mesh.driver)}, ${nameWheel(job, mesh.driven)}`}
                <span className="train-mesh-says">
                  {tellMesh(mesh)}
                  {mesh.kind === 'belt' ? null : (
                    <button
                      type="button"
                      className="plain"
                      onClick={() => onAct({ of: 'distance', wheelId: mesh.driven, mate: mesh.driver })}
                    >
                      {mesh.centerMm === null
                        ? 'measure the distance'
                        : `${formatLength(mesh.centerMm, unit)} ${unit} apart`}
                    </button>
                  )}
                  {mesh.verdict !== null && (
                    <button
                      type="button"
                      className="plain"
                      onClick={() => onAct({ of: 'see', wheelId: mesh.driven, mate: mesh.driver })}
                    >
                      see it rolled
                    </button>
                  )}
                </span>
              </th>
              <td>{show(mesh.backlashMinMm)}</td>
              <td>{show(mesh.transmissionErrorMm)}</td>
              <td>{mesh.contactRatio === null ? '–' : mesh.contactRatio.toFixed(2)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {report.meshes.flatMap((mesh) =>
        mesh.notes.map((note) => (
          <p key={`${mesh.driver} ${mesh.driven} ${note}`} className="train-note">
            {`${capitalize(nameWheel(job, mesh.driver))}, ${nameWheel(job, mesh.driven)}: ${withNames(note, job)}${/[.!?]$/.test(note) ? '' : '.'}`}
          </p>
        )),
      )}
    </section>
  );
}

function tellMesh(mesh: DriveReport['meshes'][number]): string {
  if (mesh.verdict === 'turns') return 'turns';
  if (mesh.verdict === 'rough') return 'runs rough';
  if (mesh.verdict === 'jams')
    return mesh.freeFromMm === null ? 'jams' : `jams, free from ${mesh.freeFromMm.toFixed(2)} mm`;
  return mesh.kind === 'belt' ? 'a belt' : mesh.kind === 'worm' ? 'a screw, not rolled' : 'not rolled';
}

/** One wheel in a sentence; opened, what of it can be said anew. */
function Seated(props: {
  readonly job: Job;
  readonly wheel: Wheel;
  readonly onAct: (act: TrainAct) => void;
}): ReactNode {
  const { job, wheel, onAct } = props;
  const change = (words: string, act: TrainAct): ReactNode => (
    <li>
      <button type="button" className="plain" onClick={() => onAct(act)}>
        {words}
      </button>
    </li>
  );
  const { id } = wheel;
  return (
    <details className="train-seated">
      <summary>
        <span>
          <strong>{wheel.name ?? id}</strong> {tellSeated(job, wheel)}
        </span>
      </summary>
      <ul>
        {change('It runs against something else', { of: 'against', wheelId: id })}
        {change('It sits otherwise', { of: 'seat', wheelId: id })}
        {change('It is another kind', { of: 'kind', wheelId: id })}
        {(wheel.kind === 'pulley' || wheel.kind === 'worm' || wheel.kind === 'worm-wheel') &&
          change('Its size', { of: 'size', wheelId: id })}
        {change('Work on it', { of: 'gear', wheelId: id })}
      </ul>
    </details>
  );
}

/** "is a gear, one piece with X; Y turns it; turns Z." */
function tellSeated(job: Job, wheel: Wheel): string {
  const seat = findSeat(job, wheel);
  const how = {
    alone: 'alone on its post',
    'one-piece': 'one piece with',
    'same-shaft': 'on one shaft with',
    'same-post': 'loose on the post of',
  }[seat.how];
  const sits = seat.how === 'alone' ? how : `${how} ${nameWheel(job, seat.wheelId)}`;
  const meshes = job.meshes ?? [];
  const by = meshes.flatMap((mesh) =>
    mesh.driven === wheel.id && mesh.driver ? [nameWheel(job, mesh.driver)] : [],
  );
  const on = meshes.flatMap((mesh) =>
    mesh.driver === wheel.id && mesh.driven ? [nameWheel(job, mesh.driven)] : [],
  );
  const parts = [`is ${nameKind(wheel.kind)}, ${sits}`];
  if (by.length > 0) parts.push(`${by.join(' and ')} turns it`);
  if (on.length > 0) parts.push(`it turns ${on.join(' and ')}`);
  return `${parts.join('; ')}.`;
}
