import type { ReactNode } from 'react';
import type { Job, Wheel } from '../../index.ts';

export default function FitsView(_: { readonly job: Job; readonly wheel: Wheel | undefined }): ReactNode {
  return <p>soon</p>;
}
