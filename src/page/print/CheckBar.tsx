import type { ReactNode } from 'react';
import './CheckBar.css';

const lengthMm = 50;

/** A bar to lay a caliper on: it tells whether the printer kept the scale. */
export function CheckBar(): ReactNode {
  const ticks = Array.from({ length: lengthMm / 5 + 1 }, (_, i) => i * 5);
  return (
    <div className="CheckBar">
      <svg className="CheckBar-bar" viewBox={`-1 0 ${lengthMm + 2} 6`} aria-hidden="true">
        <path d={`M0 5H${lengthMm}`} />
        <path d={ticks.map((x) => `M${x} 5V${x % 10 === 0 ? 1 : 3}`).join('')} />
      </svg>
      <p className="CheckBar-words">
        50 mm from first to last mark. Check it with your caliper: if it is off, print again at 100 %.
      </p>
    </div>
  );
}
