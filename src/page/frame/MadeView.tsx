import type { ReactNode } from 'react';
import type { Job, Wheel } from '../../index.ts';
import { useIsItRight } from '../questions/use-is-it-right.tsx';
import { View } from './View.tsx';

/** *Is the new one right?* for a gear. A file of its own, as it loads only when it is asked for. */
export default function MadeView({ job, wheel }: { readonly job: Job; readonly wheel: Wheel }): ReactNode {
  return <View parts={useIsItRight(job, wheel)} job={job} wheel={wheel} />;
}
