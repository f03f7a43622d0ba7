import { type RefObject, useEffect } from 'react';
import { type Pose, type PoseStep, stepPose, turnPose, zoomPose } from './pose.ts';
import type { PoseHolder } from './pose-holder.ts';

/**
 * Lets the hand hold the solid: one finger or the mouse turns it, two fingers or the wheel bring it nearer, and so do
 * the keys anywhere in `view`. Whatever the hand does, `onTouch` hears of it first.
 */
export function useHand(
  view: RefObject<HTMLElement | null>,
  stage: RefObject<HTMLElement | null>,
  pose: PoseHolder,
  home: Pose,
  onTouch: () => void,
): void {
  useEffect(() => {
    const around = view.current;
    const sheet = stage.current;
    if (!around || !sheet) return;
    const fingers = new Map<number, { x: number; y: number }>();
    const apart = (): number => {
      const [a, b] = [...fingers.values()];
      return a && b ? Math.hypot(a.x - b.x, a.y - b.y) : 0;
    };
    const down = (event: PointerEvent): void => {
      onTouch();
      if (event.button !== 0) return;
      fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
      sheet.setPointerCapture(event.pointerId);
    };
    const move = (event: PointerEvent): void => {
      const last = fingers.get(event.pointerId);
      if (!last) return;
      const before = apart();
      fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
      if (fingers.size === 1)
        pose.set(
          turnPose(pose.get(), (event.clientX - last.x) * perPixel, (event.clientY - last.y) * perPixel),
        );
      else if (before > 0) pose.set(zoomPose(pose.get(), apart() / before));
    };
    const up = (event: PointerEvent): void => {
      fingers.delete(event.pointerId);
    };
    const wheel = (event: WheelEvent): void => {
      event.preventDefault();
      onTouch();
      pose.set(
        zoomPose(
          pose.get(),
          Math.exp(-Math.sign(event.deltaY) * Math.min(Math.abs(event.deltaY), 100) * 0.002),
        ),
      );
    };
    const key = (event: KeyboardEvent): void => {
      const step = stepOfKey[event.key];
      if (!step || event.altKey || event.ctrlKey || event.metaKey) return;
      event.preventDefault();
      onTouch();
      pose.set(stepPose(pose.get(), step, home));
    };
    sheet.addEventListener('pointerdown', down);
    sheet.addEventListener('pointermove', move);
    sheet.addEventListener('pointerup', up);
    sheet.addEventListener('pointercancel', up);
    sheet.addEventListener('wheel', wheel, { passive: false });
    around.addEventListener('keydown', key);
    return () => {
      sheet.removeEventListener('pointerdown', down);
      sheet.removeEventListener('pointermove', move);
      sheet.removeEventListener('pointerup', up);
      sheet.removeEventListener('pointercancel', up);
      sheet.removeEventListener('wheel', wheel);
      around.removeEventListener('keydown', key);
    };
  }, [view, stage, pose, home, onTouch]);
}

/** Half a turn for the width of a hand on the glass, rad. */
const perPixel = Math.PI / 360;

const stepOfKey: Readonly<Record<string, PoseStep>> = {
  ArrowLeft: 'left',
  ArrowRight: 'right',
  ArrowUp: 'up',
  ArrowDown: 'down',
  '+': 'nearer',
  '=': 'nearer',
  '-': 'farther',
  Home: 'home',
};
