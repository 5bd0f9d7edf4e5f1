import type { SolidMesh } from '@lastinch/mesh';
import { useEffect, useRef, useState } from 'react';
import {
  BufferAttribute,
  BufferGeometry,
  DirectionalLight,
  HemisphereLight,
  Mesh,
  MeshLambertMaterial,
  PerspectiveCamera,
  Scene,
  Spherical,
  Vector3,
  WebGLRenderer,
} from 'three';
import { OrbitControls } from 'three/addons/controls/OrbitControls.js';
import frame from '../../design/step.module.css';
import style from './SolidView.module.css';

/** More pixels than this cost a phone its battery and show nothing more. */
const MOST_PIXELS = 1.5;
const TURN = Math.PI / 24;
const NEARER = 1.12;

/** A solid that can be turned by mouse, finger and keys. Drawn when something changes, and only then. */
export default function SolidView(props: { readonly mesh: SolidMesh; readonly label: string }) {
  const { mesh, label } = props;
  const place = useRef<HTMLDivElement>(null);
  const [isImpossible, setImpossible] = useState(false);
  useEffect(() => {
    const holder = place.current;
    if (holder === null) return;
    try {
      return show(holder, mesh, label);
    } catch {
      setImpossible(true);
      return;
    }
  }, [mesh, label]);
  return (
    <figure className={style.figure}>
      {isImpossible ? (
        <p>This browser draws no solids. The files hold it all the same. {label}</p>
      ) : (
        <>
          <div ref={place} className={style.place} />
          <figcaption className={frame.about}>
            Turn it: drag, or arrow keys. Nearer and further: wheel, two fingers, or + and −.
          </figcaption>
        </>
      )}
    </figure>
  );
}

/** Puts a canvas into its place, and gives back how to take it away. */
function show(holder: HTMLElement, mesh: SolidMesh, label: string): () => void {
  const renderer = new WebGLRenderer({ antialias: true, alpha: true });
  const canvas = renderer.domElement;
  canvas.className = style.canvas ?? '';
  canvas.tabIndex = 0;
  canvas.setAttribute('role', 'img');
  canvas.setAttribute('aria-label', label);
  renderer.setPixelRatio(Math.min(MOST_PIXELS, window.devicePixelRatio));
  holder.append(canvas);

  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(mesh.points, 3));
  geometry.setIndex(new BufferAttribute(mesh.triangles, 1));
  geometry.computeBoundingSphere();
  const { center = new Vector3(), radius = 1 } = geometry.boundingSphere ?? {};
  const material = new MeshLambertMaterial({ color: toneOf(holder), flatShading: true });
  const scene = new Scene();
  scene.add(new Mesh(geometry, material), new HemisphereLight(0xffffff, 0x8a8984, 2));
  const camera = new PerspectiveCamera(32, 1, radius / 50, radius * 20);
  camera.up.set(0, 0, 1);
  camera.position.copy(center).add(new Vector3(1.1, -3.2, 1.5).multiplyScalar(radius * 1.05));
  const light = new DirectionalLight(0xffffff, 1.8);
  light.position.set(0.6, 0.8, 1);
  camera.add(light);
  scene.add(camera);

  let frame = 0;
  const draw = (): void => {
    if (frame !== 0) return;
    frame = requestAnimationFrame(() => {
      frame = 0;
      renderer.render(scene, camera);
    });
  };
  const controls = new OrbitControls(camera, canvas);
  controls.target.copy(center);
  controls.enablePan = false;
  controls.minDistance = radius * 1.2;
  controls.maxDistance = radius * 8;
  controls.addEventListener('change', draw);
  controls.update();
  // A finger that goes up and down moves the page.
  canvas.style.touchAction = 'pan-y pinch-zoom';

  const turn = (around: number, over: number, nearer: number): void => {
    const offset = new Vector3().subVectors(camera.position, center);
    // The ball's pole is y; here it is z.
    const ball = new Spherical().setFromVector3(new Vector3(offset.x, offset.z, -offset.y));
    ball.theta += around;
    ball.phi = Math.min(Math.PI - 0.05, Math.max(0.05, ball.phi + over));
    ball.radius = Math.min(controls.maxDistance, Math.max(controls.minDistance, ball.radius / nearer));
    const turned = new Vector3().setFromSpherical(ball);
    camera.position.copy(center).add(new Vector3(turned.x, -turned.z, turned.y));
    controls.update();
    draw();
  };
  const press = (event: KeyboardEvent): void => {
    const [around, over, nearer] = KEYS[event.key] ?? [0, 0, 1];
    if (around === 0 && over === 0 && nearer === 1) return;
    event.preventDefault();
    turn(around, over, nearer);
  };
  canvas.addEventListener('keydown', press);

  const fit = (): void => {
    const { clientWidth: wide, clientHeight: tall } = holder;
    if (wide === 0 || tall === 0) return;
    renderer.setSize(wide, tall, false);
    camera.aspect = wide / tall;
    camera.updateProjectionMatrix();
    draw();
  };
  const size = new ResizeObserver(fit);
  size.observe(holder);
  const tone = (): void => {
    material.color.set(toneOf(holder));
    draw();
  };
  const night = window.matchMedia('(prefers-color-scheme: dark)');
  night.addEventListener('change', tone);
  const chosen = new MutationObserver(tone);
  chosen.observe(document.documentElement, { attributeFilter: ['data-theme'] });
  fit();

  return () => {
    night.removeEventListener('change', tone);
    chosen.disconnect();
    size.disconnect();
    canvas.removeEventListener('keydown', press);
    cancelAnimationFrame(frame);
    controls.dispose();
    geometry.dispose();
    material.dispose();
    renderer.dispose();
    canvas.remove();
  };
}

const KEYS: Readonly<Record<string, readonly [number, number, number]>> = {
  ArrowLeft: [-TURN, 0, 1],
  ArrowRight: [TURN, 0, 1],
  ArrowUp: [0, -TURN, 1],
  ArrowDown: [0, TURN, 1],
  '+': [0, 0, NEARER],
  '=': [0, 0, NEARER],
  '-': [0, 0, 1 / NEARER],
};

/** The tone of stops in all drawings, as it is here and now. */
function toneOf(holder: HTMLElement): string {
  const swatch = document.createElement('span');
  swatch.style.color = 'var(--picture-crush)';
  holder.append(swatch);
  const { color } = getComputedStyle(swatch);
  swatch.remove();
  return color;
}
