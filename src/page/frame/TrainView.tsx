import type { ReactNode } from 'react';
import type { Job } from '../../index.ts';
import { useTrain } from '../questions/use-train.tsx';
import { View } from './View.tsx';

/** *What is it?* for the whole train. A file of its own, as it loads only when it is asked for. */
export default function TrainView({ job }: { readonly job: Job }): ReactNode {
  return <View parts={useTrain(job)} job={job} wheel={undefined} />;
}
