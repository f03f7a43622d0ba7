import { createRoot, extend, type ReconcilerRoot, type RenderProps } from '@react-three/fiber';
import { type ReactNode, useEffect, useRef, useState } from 'react';
import { Group, Mesh } from 'three';
import { PartScene, type PartSceneProps } from './PartScene.tsx';

// All that the scene is made of: the rest of three stays out of the bundle.
extend({ Group, Mesh });

interface SolidCanvasProps extends Omit<PartSceneProps, 'sheet'> {
  readonly sheet: HTMLElement;
  /** The drawing context could not be had, or was taken away and not given back */
  readonly onMissing: () => void;
}

/** A canvas as large as the sheet, drawn on when something changes and not otherwise. All is given back at the end. */
export function SolidCanvas({
  sheet,
  onMissing,
  part,
  isCut,
  isTurning,
  pose,
  ground,
}: SolidCanvasProps): ReactNode {
  const host = useRef<HTMLDivElement>(null);
  const [root, setRoot] = useState<ReconcilerRoot<HTMLCanvasElement>>();
  const missing = useRef(onMissing);
  missing.current = onMissing;

  useEffect(() => {
    const parent = host.current;
    if (!parent) return;
    // A canvas serves one context: each mounting makes its own.
    const canvas = document.createElement('canvas');
    parent.append(canvas);
    const made = createRoot(canvas);
    let isGone = false;
    const measure = () => ({ width: parent.clientWidth, height: parent.clientHeight, top: 0, left: 0 });
    made.configure({ ...setup, size: measure() }).then(
      () => isGone || setRoot(made),
      () => isGone || missing.current(),
    );
    const watch = new ResizeObserver(() => {
      const { width, height } = measure();
      if (width > 0 && height > 0) void made.configure({ ...setup, size: measure() });
    });
    watch.observe(parent);
    const lost = (event: Event): void => {
      event.preventDefault();
      if (!isGone) missing.current();
    };
    canvas.addEventListener('webglcontextlost', lost);
    return () => {
      isGone = true;
      watch.disconnect();
      made.unmount();
      canvas.remove();
      setRoot(undefined);
    };
  }, []);

  useEffect(() => {
    root?.render(<PartScene {...{ part, isCut, isTurning, pose, sheet, ground }} />);
  }, [root, part, isCut, isTurning, pose, sheet, ground]);
  return <div ref={host} className="solid-canvas" />;
}

const setup: RenderProps<HTMLCanvasElement> = {
  frameloop: 'demand',
  orthographic: true,
  flat: true,
  dpr: [1, 2],
  // Lines smooth their own edges, and every face ends in a line.
  gl: { antialias: false, alpha: false, stencil: false },
};
