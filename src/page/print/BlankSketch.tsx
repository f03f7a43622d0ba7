import type { ReactNode } from 'react';
import { hatchRectangle } from '../drawing/hatch.ts';
import { UnsharpGear } from '../drawing/UnsharpGear.tsx';
import './BlankSketch.css';

const radius = 17;
const root = 13.5;

/** Some gear from the front and in half section, mm, each dimension with the number of its line below. */
export function BlankSketch(): ReactNode {
  return (
    <svg className="BlankSketch" viewBox="0 0 180 58" role="img" aria-label="Where each reading is taken">
      <g transform="translate(52 31) scale(1 -1)">
        <UnsharpGear kind="external" radius={radius} beyond={2} most={1} />
        <circle className="line-thin" r="4" />
      </g>
      <g transform="translate(106 31) scale(1 -1)">
        <path className="line-thin" d={hatchRectangle({ left: 0, right: 12, low: 4, high: root }, 1.4)} />
        <path className="line-thin" d={hatchRectangle({ left: 12, right: 20, low: 4, high: 8 }, 1.4)} />
        <path className="line-thin" d={`M0 4V${radius}H12V8H20V4ZM0 ${root}H12M0 0V${-radius}H12V-8H20V4`} />
        <path className="line-axis" d="M-4 0H24" />
      </g>
      <g className="BlankSketch-dimensions">
        <path d={`M${52 - radius} 31V5M${52 + radius} 31V5M${52 - radius} 7H${52 + radius}`} />
        <path d={`M${52 - root} 31V53M${52 + root} 31V53M${52 - root} 51H${52 + root}`} />
        <path d="M46 15V10M58 15V10M40 12H64" />
        <path d="M36 42L26 47H20M56 29L84 24H88M34 22L24 16H20" />
        <path d="M106 12V4M118 12V4M106 6H128" />
        <path d="M106 50V56M126 42V56M106 54H126" />
        <path d="M126 23H136M126 39H136M134 23V39" />
      </g>
      <g className="BlankSketch-marks">
        <text x="17" y="18">
          1
        </text>
        <text x="52" y="5.6">
          2
        </text>
        <text x="52" y="56">
          3
        </text>
        <text x="67" y="13.6">
          4
        </text>
        <text x="17" y="48.6">
          5
        </text>
        <text x="91" y="25.6">
          6
        </text>
        <text x="131" y="7.6">
          7
        </text>
        <text x="139" y="32.6">
          8
        </text>
        <text x="130" y="55.6">
          9
        </text>
      </g>
      <circle className="line-thin" cx="36.4" cy="41.6" r="1.6" />
    </svg>
  );
}
