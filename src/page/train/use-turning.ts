import { type RefObject, useEffect, useRef, useState } from 'react';

/** How one drawn wheel moves: round its axis, or along by a pitch that then repeats. */
export interface Motion {
  readonly id: string;
  /** CSS transforms at rest and after one round (or one pitch) of it */
  readonly rest: string;
  readonly after: string;
  /** Rounds (or pitches) for one turn of the input; 0 stands still */
  readonly rounds: number;
}

/** The fastest wheel goes round this often a second: slow enough for eyes to follow its pen mark. */
const fastestTurnsASecond = 0.4;

export interface Turning {
  readonly isTurning: boolean;
  /** Turns of the input that are shown in a second */
  readonly inputTurnsASecond: number;
  readonly start: () => void;
  readonly stop: () => void;
  /** By one step, for those who asked their system for no motion */
  readonly step: () => void;
}

/**
 * Turns drawn wheels at their true speeds to one another. Each is an animation that the browser runs by itself, so that
 * no frame asks anything of this page; paused, they stand where they came to.
 */
export function useTurning(
  root: RefObject<HTMLElement | null>,
  motions: readonly Motion[],
  stepTurns: number,
): Turning {
  const [isTurning, setIsTurning] = useState(false);
  const running = useRef<Animation[]>([]);
  const fastest = motions.reduce((most, one) => Math.max(most, Math.abs(one.rounds)), 0);
  const inputTurnsASecond = fastest > 0 ? fastestTurnsASecond / fastest : 0;

  useEffect(() => {
    const animations = motions.flatMap((motion) => {
      const element = root.current?.querySelector<HTMLElement>(`[data-turns="${CSS.escape(motion.id)}"]`);
      if (!element || motion.rounds === 0 || inputTurnsASecond === 0) return [];
      const animation = element.animate([{ transform: motion.rest }, { transform: motion.after }], {
        duration: 1000 / (Math.abs(motion.rounds) * inputTurnsASecond),
        iterations: Number.POSITIVE_INFINITY,
      });
      animation.pause();
      return [animation];
    });
    running.current = animations;
    setIsTurning(false);
    return () => {
      for (const animation of animations) animation.cancel();
    };
  }, [root, motions, inputTurnsASecond]);

  return {
    isTurning,
    inputTurnsASecond,
    start() {
      const now = Number(document.timeline.currentTime ?? 0);
      // One start for all: a frame's difference would show as teeth in teeth.
      for (const animation of running.current) animation.startTime = now - Number(animation.currentTime ?? 0);
      setIsTurning(true);
    },
    stop() {
      const at = running.current[0]?.currentTime ?? 0;
      for (const animation of running.current) {
        animation.pause();
        animation.currentTime = at;
      }
      setIsTurning(false);
    },
    step() {
      if (inputTurnsASecond === 0) return;
      for (const animation of running.current) {
        animation.currentTime = Number(animation.currentTime ?? 0) + (1000 * stepTurns) / inputTurnsASecond;
      }
    },
  };
}
