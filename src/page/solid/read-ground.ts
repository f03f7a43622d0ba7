import { Color, SRGBColorSpace, Vector3 } from 'three';

/** The page's two colors as they are now, and the solid's lightest and darkest face between them. Each 0 to 1. */
export interface Ground {
  readonly isDark: boolean;
  readonly film: Vector3;
  readonly ink: Vector3;
  readonly lit: Vector3;
  readonly shade: Vector3;
  /** For clearing */
  readonly ground: Color;
}

/** Reads an element's own background and text color. On dark ground light is what ink adds, on light ground shade. */
export function readGround(element: Element): Ground {
  const { backgroundColor, color } = getComputedStyle(element);
  const film = toVector(backgroundColor);
  const ink = toVector(color);
  const isDark = film.y < ink.y;
  const toned = (share: number): Vector3 => film.clone().lerp(ink, share);
  return {
    isDark,
    film,
    ink,
    lit: isDark ? toned(0.26) : toned(0),
    shade: isDark ? toned(0.04) : toned(0.24),
    ground: new Color(backgroundColor),
  };
}

function toVector(css: string): Vector3 {
  const { r, g, b } = new Color(css).getRGB({ r: 0, g: 0, b: 0 }, SRGBColorSpace);
  return new Vector3(r, g, b);
}

/** Calls back whenever the page's colors may have changed: its light was set, or the system's. */
export function followGround(changed: () => void): () => void {
  const observer = new MutationObserver(changed);
  observer.observe(document.documentElement, { attributes: true, attributeFilter: ['data-light'] });
  const scheme = window.matchMedia('(prefers-color-scheme: dark)');
  scheme.addEventListener('change', changed);
  return () => {
    observer.disconnect();
    scheme.removeEventListener('change', changed);
  };
}
