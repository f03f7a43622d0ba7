import './maker.css';
import { type ReactNode, useEffect, useState } from 'react';
import type { Fail, SheetPage } from '../../index.ts';
import { handOver } from '../state/save-file.ts';
import { usePage, useStoreOfPage } from '../state/use-page.ts';
import type { Asks, MakingAsk } from '../worker/asks.ts';
import { hearOut } from '../worker/hear-out.ts';

/** The making sheet as it will be printed, page under page: the same lines and words as its file. */
export default function SheetPreview({ ask }: { readonly ask: MakingAsk }): ReactNode {
  const store = useStoreOfPage();
  const { paper } = usePage((state) => state.settings);
  const [sheet, setSheet] = useState<Asks['sheet']['answer']>();
  const [fail, setFail] = useState<Fail>();
  const { job, wheelId, maker, process, material } = ask;
  // biome-ignore lint/correctness/useExhaustiveDependencies: what the sheet depends on, and no more
  useEffect(() => {
    return hearOut(store.worker.ask('sheet', { ...ask, paper }), {
      onAnswer: (came) => {
        setSheet(came);
        setFail(undefined);
      },
      onFail: setFail,
      onTrouble: store.fail,
    });
  }, [store, job, wheelId, maker, process, material, paper]);
  if (fail) return <p className="make-wait">{`There is no sheet yet: ${fail.message}.`}</p>;
  if (!sheet) return <p className="make-wait">The sheet is being laid out …</p>;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls has to be reached by the keyboard
    <section className="sheet-preview" tabIndex={0} aria-label="Making sheet">
      <div className="entry-row">
        <button type="button" onClick={() => handOver(sheet.bytes, sheet.name, 'application/pdf')}>
          Save this sheet as PDF
        </button>
      </div>
      {sheet.pages.map((page, k) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: pages never change places, and further teeth share a name
        <PagePicture key={`${page.name} ${k}`} page={page} />
      ))}
    </section>
  );
}

function PagePicture({ page }: { readonly page: SheetPage }): ReactNode {
  const { paper, name, marks } = page;
  const words = marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
  return (
    <svg
      className="sheet-page"
      viewBox={`0 0 ${paper.width} ${paper.height}`}
      role="img"
      aria-label={`${name}: ${words.join('. ')}`}
    >
      {marks.map((mark, k) => {
        // A page's marks never change places.
        const key = `${mark.kind} ${k}`;
        if (mark.kind === 'text')
          return (
            <text
              key={key}
              x={mark.x}
              y={paper.height - mark.y}
              fontSize={mark.size}
              fontWeight={mark.isBold ? 700 : 400}
            >
              {mark.text}
            </text>
          );
        const d = tracePath(mark, paper.height);
        if (mark.kind === 'fill') return <path key={key} className="sheet-fill" d={d} />;
        return (
          <path
            key={key}
            className="sheet-line"
            d={d}
            strokeWidth={mark.width}
            strokeDasharray={mark.dash.length > 0 ? mark.dash.join(' ') : undefined}
          />
        );
      })}
    </svg>
  );
}

/** Bulge: tan of a quarter of the piece's turn, counter-clockwise with y up. */
function tracePath(
  mark: Exclude<SheetPage['marks'][number], { readonly kind: 'text' }>,
  height: number,
): string {
  const { points } = mark;
  const bulges = mark.kind === 'line' ? mark.bulges : undefined;
  const isClosed = mark.kind === 'fill' || mark.isClosed;
  const count = points.length / 2;
  let path = `M${points[0]} ${height - points[1]}`;
  for (let k = 0; k < (isClosed ? count : count - 1); k++) {
    const next = (k + 1) % count;
    const x = points[2 * next];
    const y = points[2 * next + 1];
    const bulge = bulges?.[k] ?? 0;
    if (bulge === 0) {
      path += `L${x} ${height - y}`;
      continue;
    }
    const chord = Math.hypot(x - points[2 * k], y - points[2 * k + 1]);
    const radius = (chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
    path += `A${radius} ${radius} 0 ${Math.abs(bulge) > 1 ? 1 : 0} ${bulge > 0 ? 0 : 1} ${x} ${height - y}`;
  }
  return isClosed ? `${path}Z` : path;
}
