import { type ReactNode, useId } from 'react';
import { drawCircle, drawPoints } from '../acts/sketch/draw-points.ts';
import { makeSketchGear, placeTeeth } from '../acts/sketch/sketch-gear.ts';
import './BeforeTakingApart.css';

/** The card before a machine is taken apart: what to do, and the cautions that come first. */
export function BeforeTakingApart(props: { readonly onSeen: () => void }): ReactNode {
  const id = useId();
  return (
    <section className="before-taking-apart" aria-labelledby={`${id}-title`}>
      <h2 id={`${id}-title`}>Before you take it apart</h2>
      <div className="before-taking-apart-caution">
        <CautionSign />
        <div>
          <p>
            <strong>Caution</strong>
          </p>
          <ul>
            {cautions.map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
        </div>
      </div>
      <div className="before-taking-apart-do">
        <ol>
          {acts.map(([act, more]) => (
            <li key={act}>
              <strong>{act}</strong> {more}
            </li>
          ))}
        </ol>
        <MarkedGears />
      </div>
      <button type="button" className="next" onClick={props.onSeen}>
        I have seen this
      </button>
    </section>
  );
}

const cautions = [
  'Mains: pull the plug. A switch that is off is not enough.',
  'Capacitors stay charged after the plug is out. Leave them to somebody trained.',
  'Wound springs let go at once. Wear eye protection.',
  'Lamps and lasers burn skin and eyes. Let lamps cool; leave laser parts closed.',
  'Local codes and licensed practice come first.',
];

const acts: readonly (readonly [string, string])[] = [
  ['Unplug it.', ''],
  ['Take a picture', 'from straight above, all gears in it.'],
  ['Mark each gear', 'with a pen: its upper face, and the tooth at 12 o’clock.'],
  ['Keep every crumb', 'in a bag: broken teeth can still be counted.'],
];

/** General warning: ISO 3864's triangle in its own yellow and black, whatever the page's light. */
function CautionSign(): ReactNode {
  return (
    <svg className="before-taking-apart-sign" viewBox="-3 -4 70 62" role="img" aria-label="Warning sign">
      <path className="before-taking-apart-ground" d="M32 -4L67 57.5H-3Z" />
      <path className="before-taking-apart-edge" d="M32 1L63 55H1Z" />
      <path className="before-taking-apart-ground" d="M32 9L56 51H8Z" />
      <path
        className="before-taking-apart-edge"
        d="M29 21h6l-1.2 17h-3.6zM32 41a3 3 0 1 1 0 6a3 3 0 1 1 0 -6z"
      />
    </svg>
  );
}

/** Two meshing gears from above, the tooth at 12 o'clock and the upper face of each marked. */
function MarkedGears(): ReactNode {
  const small = makeSketchGear({ kind: 'external', teeth: 12, isSplit: false, isHelical: false });
  const large = makeSketchGear({ kind: 'external', teeth: 18, isSplit: false, isHelical: false });
  const scale = 7;
  const gears = [
    { gear: small, x: 56, turn: Math.PI / 2 },
    { gear: large, x: 56 + 15 * scale, turn: Math.PI / 2 },
  ];
  return (
    <svg
      className="before-taking-apart-picture"
      viewBox="0 0 256 168"
      role="img"
      aria-label="Two gears from above, each with a mark at 12 o’clock and on its upper face"
    >
      {gears.map(({ gear, x, turn }) => (
        <g key={x}>
          <path className="line-known" d={drawPoints(placeTeeth(gear, { x, y: 88, scale, turn }), true)} />
          <path className="line-known" d={drawCircle([x, 88], 9)} />
          <path className="line-hand" d={`M${x} ${88 - gear.root * scale + 4}v14M${x - 24} 112l6 8l12 -18`} />
        </g>
      ))}
    </svg>
  );
}
