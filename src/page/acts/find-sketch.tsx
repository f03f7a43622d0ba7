import type { ReactNode } from 'react';
import type { Slot } from '../state/slot.ts';
import { OutsideSketch, PinsSketch, RootSketch } from './sketch/AcrossSketch.tsx';
import { BoreSketch } from './sketch/BoreSketch.tsx';
import { CountSketch } from './sketch/CountSketch.tsx';
import { DepthSketch } from './sketch/DepthSketch.tsx';
import { InsideSketch } from './sketch/InsideSketch.tsx';
import { LookSketch } from './sketch/LookSketch.tsx';
import { RackSketch } from './sketch/RackSketch.tsx';
import { HelixSketch, RollSketch } from './sketch/RollSketch.tsx';
import { PostsSketch, ShaftSketch } from './sketch/ShaftSketch.tsx';
import { SideSketch } from './sketch/SideSketch.tsx';
import { SpanSketch } from './sketch/SpanSketch.tsx';
import { SplitSketch } from './sketch/SplitSketch.tsx';
import { ZeroSketch } from './sketch/ZeroSketch.tsx';
import type { SketchSubject } from './sketch-subject.ts';

/** The picture of an act, to stand in a 320 by 200 drawing; undefined for a reading that has none. */
export function findSketch(slot: Slot, subject: SketchSubject): ReactNode | undefined {
  const isInside = subject.kind === 'internal';
  const isBar = subject.kind === 'rack';
  switch (slot.of) {
    case 'teeth':
      return <CountSketch subject={subject} />;
    case 'outside':
      if (isBar) return <RackSketch at="tips" />;
      return isInside ? <InsideSketch subject={subject} at="tips" /> : <OutsideSketch subject={subject} />;
    case 'root':
      if (isBar) return undefined;
      return isInside ? <InsideSketch subject={subject} at="bottoms" /> : <RootSketch subject={subject} />;
    case 'tooth-depth':
      return <DepthSketch subject={subject} />;
    case 'span':
      // Only teeth on the outside are taken between flat jaws.
      return subject.kind !== 'external' ? undefined : <SpanSketch subject={subject} teeth={slot.teeth} />;
    case 'over-pins':
      if (isBar) return <RackSketch at="pin" />;
      return isInside ? (
        <InsideSketch subject={subject} at="pins" />
      ) : (
        <PinsSketch subject={subject} pinMm={slot.pinMm} />
      );
    case 'rack-pitch':
      return <RackSketch at="pitch" pitches={slot.pitches} />;
    case 'bore':
      return <BoreSketch />;
    case 'shaft':
      return <ShaftSketch hasFlat={false} />;
    case 'd-flat':
      return <ShaftSketch hasFlat />;
    case 'face-width':
    case 'hub-diameter':
    case 'overall-length':
    case 'face-offset':
      return <SideSketch subject={subject} at={slot.of} />;
    case 'center-distance':
      return <PostsSketch />;
    case 'helix-angle':
      return <HelixSketch />;
    case 'hand-roll':
      return <RollSketch />;
    case 'split-gap':
      return <SplitSketch />;
    case 'zero':
      return <ZeroSketch />;
    case 'looks-like':
    case 'happened':
      return <LookSketch isBroken={slot.of === 'happened'} />;
    default:
      return undefined;
  }
}
