/** A circle about the origin as path data, open in so many places along its lower left quarter. */
export function gapsInCircle(radius: number, gaps: number): string {
  if (gaps === 0)
    return `M${radius} 0A${radius} ${radius} 0 1 1 ${-radius} 0A${radius} ${radius} 0 1 1 ${radius} 0Z`;
  const point = (angle: number): string =>
    `${(radius * Math.cos(angle)).toFixed(2)} ${(radius * Math.sin(angle)).toFixed(2)}`;
  // Screen angles: y points down, so the lower left lies between a quarter and a half turn.
  const first = Math.PI / 2 + 0.15;
  const pitch = (Math.PI / 2 - 0.3) / (2 * gaps - 1);
  const last = first + (2 * gaps - 1) * pitch;
  let path = `M${point(last)}A${radius} ${radius} 0 1 1 ${point(first)}`;
  for (let k = 1; k < gaps; k++) {
    path += `M${point(first + (2 * k - 1) * pitch)}A${radius} ${radius} 0 0 1 ${point(first + 2 * k * pitch)}`;
  }
  return path;
}
