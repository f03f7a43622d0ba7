import type { ReactNode } from 'react';
import type { Job, Wheel } from '../../index.ts';
import { useTrainFits } from '../questions/use-train-fits.tsx';
import { useWhatFits } from '../questions/use-what-fits.tsx';
import { View } from './View.tsx';

/** *What fits?* for a gear or, without one, for the train. A file of its own, as it loads only when it is asked for. */
export default function FitsView(props: { readonly job: Job; readonly wheel: Wheel | undefined }): ReactNode {
  const { job, wheel } = props;
  return wheel ? <OfGear job={job} wheel={wheel} /> : <OfTrain job={job} />;
}

function OfGear({ job, wheel }: { readonly job: Job; readonly wheel: Wheel }): ReactNode {
  return <View parts={useWhatFits(job, wheel)} job={job} wheel={wheel} />;
}

function OfTrain({ job }: { readonly job: Job }): ReactNode {
  return <View parts={useTrainFits(job)} job={job} wheel={undefined} />;
}
