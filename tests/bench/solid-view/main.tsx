import { createRoot } from 'react-dom/client';
import {
  BufferAttribute,
  BufferGeometry,
  DirectionalLight,
  EdgesGeometry,
  Group,
  HemisphereLight,
  LineBasicMaterial,
  LineSegments,
  Mesh,
  MeshLambertMaterial,
  OrthographicCamera,
  Scene,
  WebGLRenderer,
} from 'three';
import { type ShapedPart, shapePart } from '../../../src/index.ts';
import { holdPose } from '../../../src/page/solid/pose-holder.ts';
import { SolidCanvas } from '../../../src/page/solid/SolidCanvas.tsx';

/** What turns the part a little further, and what takes it away again. */
interface Turned {
  readonly turn: (yaw: number) => void;
  readonly end: () => void;
}

const sheet = document.getElementById('sheet') ?? document.body;
const pitch = (40 * Math.PI) / 180;
let calls = 0;
for (const name of ['drawElements', 'drawArrays', 'drawElementsInstanced', 'drawArraysInstanced'] as const) {
  const real: (...given: never[]) => void = WebGL2RenderingContext.prototype[name];
  Object.assign(WebGL2RenderingContext.prototype, {
    [name](this: WebGL2RenderingContext, ...given: never[]) {
      calls++;
      real.apply(this, given);
    },
  });
}

Object.assign(window, { measure });

/** Frames a second of one way to draw, over so many seconds of turning; and what is drawn in one second at rest. */
async function measure(way: 'product' | 'plain' | 'plain, smoothed', isCut: boolean, seconds: number) {
  const part = shapePart(job, { wheelId: 'a' });
  const { turn, end } =
    way === 'product' ? await showProduct(part, isCut) : showPlain(part, isCut, way === 'plain, smoothed');
  // Shaders are compiled by the first frames.
  for (let k = 0; k < 10; k++) await frame(() => turn(0.01 * k));
  const start = performance.now();
  let frames = 0;
  while (performance.now() - start < 1000 * seconds) await frame(() => turn(0.01 * frames++));
  const perSecond = (1000 * frames) / (performance.now() - start);
  await new Promise((resolve) => setTimeout(resolve, 300));
  calls = 0;
  await new Promise((resolve) => setTimeout(resolve, 1000));
  const atRest = calls;
  // Whether turning draws at all, or the rate is that of an empty sheet.
  await frame(() => turn(1));
  await frame(() => {});
  const perFrame = calls - atRest;
  end();
  return { perSecond, atRest, perFrame, triangles: part.mesh.triangles.length / 3, renderer: nameRenderer() };
}

const job = {
  format: 'sparetooth-job' as const,
  version: 1 as const,
  invented: true,
  wheels: [
    {
      id: 'a',
      spec: {
        teeth: 100,
        moduleMm: 1,
        pressureAngleDeg: 20,
        faceWidthMm: 10,
        bore: { shape: 'round' as const, diameterMm: 20 },
      },
    },
  ],
};

function frame(act: () => void): Promise<void> {
  return new Promise((resolve) =>
    requestAnimationFrame(() => {
      act();
      resolve();
    }),
  );
}

async function showProduct(part: ShapedPart, isCut: boolean): Promise<Turned> {
  const pose = holdPose({ yaw: 0, pitch, nearness: 1 });
  const host = document.createElement('div');
  sheet.append(host);
  const root = createRoot(host);
  let missing = false;
  root.render(
    <SolidCanvas
      {...{ part, isCut, isTurning: false, pose, sheet, ground: 'film' }}
      onMissing={() => {
        missing = true;
      }}
    />,
  );
  // The component is laid out by the product's style sheet, which isn't here.
  const style = document.createElement('style');
  style.textContent = '.solid-canvas { position: absolute; inset: 0 }';
  document.head.append(style);
  while (calls === 0 && !missing) await new Promise((resolve) => setTimeout(resolve, 50));
  if (missing) throw new Error('no WebGL here');
  return { turn: (yaw) => pose.set({ ...pose.get(), yaw }), end: () => root.unmount() };
}

/** The same faces and edges the way three's own materials draw them. */
function showPlain(part: ShapedPart, isCut: boolean, isSmoothed: boolean): Turned {
  const renderer = new WebGLRenderer({ antialias: isSmoothed });
  renderer.setSize(900, 600);
  renderer.setClearColor('#f3f5f2');
  sheet.append(renderer.domElement);
  const scene = new Scene();
  const turned = new Group();
  scene.add(turned, new HemisphereLight('#ffffff', '#c0c0c0', 2), new DirectionalLight('#ffffff', 1));
  const shown = isCut ? [part.cut.faces, part.cut.cap] : [part.whole.faces];
  for (const { positions, triangles } of shown) {
    const geometry = new BufferGeometry();
    geometry.setAttribute('position', new BufferAttribute(positions, 3));
    geometry.setIndex(new BufferAttribute(triangles, 1));
    turned.add(
      new Mesh(
        geometry,
        new MeshLambertMaterial({
          color: '#f3f5f2',
          flatShading: true,
          polygonOffset: true,
          polygonOffsetFactor: 1,
        }),
      ),
      new LineSegments(new EdgesGeometry(geometry, 25), new LineBasicMaterial({ color: '#15201d' })),
    );
  }
  const camera = new OrthographicCamera(-80, 80, 53, -53, -500, 500);
  return {
    turn(yaw) {
      turned.rotation.set(pitch - Math.PI / 2, 0, yaw);
      renderer.render(scene, camera);
    },
    end() {
      renderer.dispose();
      renderer.forceContextLoss();
      renderer.domElement.remove();
    },
  };
}

function nameRenderer(): string {
  const gl = document.createElement('canvas').getContext('webgl2');
  const names = gl?.getExtension('WEBGL_debug_renderer_info');
  return gl && names ? String(gl.getParameter(names.UNMASKED_RENDERER_WEBGL)) : 'not named';
}
