import { type ThreeElements, useFrame, useThree } from '@react-three/fiber';
import { type ReactNode, useCallback, useEffect, useMemo, useRef } from 'react';
import { type Group, OrthographicCamera, type ShaderMaterial } from 'three';
import type { ShapedPart } from '../../index.ts';
import { faceGeometry, filmMaterial, hatchMaterial } from './film-faces.ts';
import { fitPart, framePart } from './frame-part.ts';
import { edgeLines, inkLines, lineMaterial, plainLines } from './ink-lines.ts';
import { turnPose } from './pose.ts';
import type { PoseHolder } from './pose-holder.ts';
import { followGround, readGround } from './read-ground.ts';

export interface PartSceneProps {
  readonly part: Omit<ShapedPart, 'mesh'>;
  readonly isCut: boolean;
  /** Turned slowly; in steps where the person's system asks for less motion */
  readonly isTurning: boolean;
  readonly pose: PoseHolder;
  /** The element whose background and text color the picture is made of */
  readonly sheet: Element;
  /** Any text that changes when the sheet's colors do */
  readonly ground: string;
}

/** The part on the sheet. Drawn again only when told: a pose, a size, a color or the part itself has changed. */
export function PartScene({ part, isCut, isTurning, pose, sheet, ground }: PartSceneProps): ReactNode {
  const turned = useRef<Group>(null);
  const gl = useThree((state) => state.gl);
  const camera = useThree((state) => state.camera);
  const size = useThree((state) => state.size);
  const invalidate = useThree((state) => state.invalidate);
  const frame = useMemo(() => framePart(part), [part]);
  const drawn = useMemo(() => drawPart(part, isCut, frame), [part, isCut, frame]);
  useEffect(() => drawn.dispose, [drawn]);

  const place = useCallback(() => {
    if (!turned.current || !(camera instanceof OrthographicCamera)) return;
    const { yaw, pitch, nearness } = pose.get();
    // The axis stands upright, its lower end down; negative y looks at the eye.
    turned.current.rotation.set(pitch - Math.PI / 2, 0, yaw);
    const pixelsPerMm = nearness * fitPart(frame, pitch, size.width, size.height);
    camera.zoom = pixelsPerMm;
    const depth = 2 * (frame.radius + frame.half);
    camera.near = -depth;
    camera.far = depth;
    camera.position.set(0, 0, 0);
    camera.updateProjectionMatrix();
    // Where teeth stand closer than a dozen pixels, wide lines would run together.
    const wide = Math.min(2, Math.max(1, (frame.pitch * pixelsPerMm) / 6));
    for (const { uniforms } of drawn.lines) uniforms.sheet.value.set(size.width, size.height);
    drawn.edge.uniforms.pen.value = wide;
    drawn.choose(-Math.cos(pitch) * Math.sin(yaw), -Math.cos(pitch) * Math.cos(yaw), Math.sin(pitch));
    // Doubled and halved only, so that the hatching stands still while the part comes nearer.
    drawn.hatch.uniforms.spacing.value = 2 ** Math.round(Math.log2(9 / pixelsPerMm));
    invalidate();
  }, [pose, camera, size, frame, drawn, invalidate]);
  useEffect(() => {
    place();
    return pose.listen(place);
  }, [place, pose]);

  // biome-ignore lint/correctness/useExhaustiveDependencies: another ground has other colors, read from the sheet
  useEffect(() => {
    const ink = (): void => {
      const colors = readGround(sheet);
      gl.setClearColor(colors.ground, 1);
      for (const material of drawn.lines) inkLines(material, colors);
      drawn.film.uniforms.lit.value.copy(colors.lit);
      drawn.film.uniforms.shade.value.copy(colors.shade);
      drawn.hatch.uniforms.film.value.copy(colors.film);
      drawn.hatch.uniforms.ink.value.copy(colors.ink);
      invalidate();
    };
    ink();
    return followGround(ink);
  }, [sheet, ground, gl, drawn, invalidate]);

  useFrame((_, seconds) => {
    if (!isTurning || prefersSteps()) return;
    // After a pause the first frame would leap.
    pose.set(turnPose(pose.get(), Math.min(seconds, 0.25) * turnsPerSecond, 0));
  });
  useEffect(() => {
    if (!isTurning) return;
    invalidate();
    if (!prefersSteps()) return;
    const timer = setInterval(() => pose.set(turnPose(pose.get(), Math.PI / 12, 0)), 1000);
    return () => clearInterval(timer);
  }, [isTurning, pose, invalidate]);

  return (
    <group ref={turned}>
      <group position={frame.toMiddle}>
        {drawn.meshes.map((mesh) => (
          <mesh key={mesh.name} frustumCulled={false} {...mesh} />
        ))}
      </group>
    </group>
  );
}

const turnsPerSecond = Math.PI / 9;

function prefersSteps(): boolean {
  return window.matchMedia('(prefers-reduced-motion: reduce)').matches;
}

interface DrawnPart {
  readonly meshes: readonly (ThreeElements['mesh'] & { readonly name: string })[];
  readonly film: ShaderMaterial;
  readonly hatch: ShaderMaterial;
  /** Outlines, as wide as the teeth allow */
  readonly edge: ShaderMaterial;
  readonly lines: readonly ShaderMaterial[];
  /** Takes the direction from the part to the eye, in the part's axes */
  readonly choose: (x: number, y: number, z: number) => void;
  readonly dispose: () => void;
}

function drawPart(
  part: Omit<ShapedPart, 'mesh'>,
  isCut: boolean,
  { axis }: { axis: Float32Array },
): DrawnPart {
  const drawing = isCut ? part.cut : part.whole;
  const film = filmMaterial();
  const hatch = hatchMaterial();
  // Across the sheet's 45° whichever plane is cut: one of x and y is 0 on it.
  hatch.uniforms.slope.value.set(Math.SQRT1_2, Math.SQRT1_2, Math.SQRT1_2);
  const edge = lineMaterial('edge');
  const edges = edgeLines(drawing.edges);
  const center = lineMaterial('axis');
  center.uniforms.pen.value = 1;
  const all = [
    { name: 'faces', geometry: faceGeometry(drawing.faces), material: film, renderOrder: 0 },
    ...(isCut
      ? [{ name: 'cut', geometry: faceGeometry(part.cut.cap), material: hatch, renderOrder: 0 }]
      : []),
    { name: 'edges', geometry: edges.geometry, material: edge, renderOrder: 1 },
    { name: 'axis', geometry: plainLines(axis).geometry, material: center, renderOrder: 2 },
  ];
  return {
    meshes: all,
    film,
    hatch,
    edge,
    lines: [edge, center],
    choose: edges.choose,
    dispose() {
      for (const { geometry } of all) geometry.dispose();
      for (const material of [film, hatch, edge, center]) material.dispose();
    },
  };
}
