import './solid.css';
import { type ReactNode, useCallback, useEffect, useState } from 'react';
import type { Fail, Job, ShapedPart } from '../../index.ts';
import { usePage, useStoreOfPage } from '../state/use-page.ts';
import { hearOut } from '../worker/hear-out.ts';
import { hasWebgl } from './has-webgl.ts';
import { SolidStage } from './SolidStage.tsx';

interface SolidViewProps {
  readonly job: Job;
  readonly wheelId: string;
  readonly process: string | undefined;
  readonly material?: string | undefined;
  /** Designed to last; the old gear's copy where false */
  readonly isLasting?: boolean | undefined;
  /** Back to the drawing */
  readonly onClose: () => void;
}

/** The solid of one gear's part, or why there is none to be seen. */
export default function SolidView(props: SolidViewProps): ReactNode {
  const { job, wheelId, process, material, isLasting, onClose } = props;
  const store = useStoreOfPage();
  const unit = usePage((state) => state.settings.unit);
  const [part, setPart] = useState<Omit<ShapedPart, 'mesh'>>();
  const [fail, setFail] = useState<Fail>();
  const [isMissing, setMissing] = useState(() => !hasWebgl());
  const miss = useCallback(() => setMissing(true), []);

  useEffect(() => {
    const answer = store.answerOf(job, wheelId);
    return hearOut(store.worker.ask('solid', { job, wheelId, process, material, isLasting, answer }), {
      onAnswer: (came) => {
        setPart(came);
        setFail(undefined);
      },
      onFail: setFail,
      onTrouble: store.fail,
    });
  }, [store, job, wheelId, process, material, isLasting]);

  if (isMissing) {
    return (
      <Instead onClose={onClose}>
        This browser can't show the solid: it has no WebGL, or it is switched off. The drawing and the part's
        files don't need it, and nothing is missing from them.
      </Instead>
    );
  }
  if (fail) {
    return (
      <Instead onClose={onClose}>
        There is no solid yet: {fail.message}. {fail.remedy}
      </Instead>
    );
  }
  if (!part) return <p className="solid-instead">The solid is being made …</p>;
  return <SolidStage part={part} unit={unit} onMissing={miss} onClose={onClose} />;
}

function Instead(props: { readonly children: ReactNode; readonly onClose: () => void }): ReactNode {
  return (
    <div className="solid-instead">
      <p role="status">{props.children}</p>
      <button type="button" onClick={props.onClose}>
        Back to the drawing
      </button>
    </div>
  );
}
