import type { ReactNode } from 'react';
import type { Job, Wheel } from '../../index.ts';
import { useHowToMakeIt } from '../questions/use-how-to-make-it.tsx';
import { View } from './View.tsx';

/** *How to make it* for a gear. A file of its own, as it loads only when it is asked for. */
export default function MakeView({ job, wheel }: { readonly job: Job; readonly wheel: Wheel }): ReactNode {
  return <View parts={useHowToMakeIt(job, wheel)} job={job} wheel={wheel} />;
}
