import { expect, test } from 'vitest';
import { tellSpeedError } from '../../src/words/tell-speed-error.ts';

// Own arithmetic: an output slow by e loses 3600 e/(1 + e) seconds an hour.
test.each([
  [0, 'exact'],
  [1.1390602752729e-5, 'slow by 0.0011 %, which is 0.041 seconds an hour'],
  [-1.1390602752729e-5, 'fast by 0.0011 %, which is 0.041 seconds an hour'],
  [0.01, 'slow by 1 %, which is 36 seconds an hour'],
  [1e-7, 'slow by less than 0.0001 %, which is 0.0086 seconds a day'],
  [1e-9, 'slow by less than 0.0001 %, which is 0.032 seconds a year'],
  [-2e-14, 'fast by less than 0.0001 %, less than a thousandth of a second a year'],
  [1, '2 times too slow'],
  [-0.75, '4 times too fast'],
])('%d is %s', (errorRelative, words) => {
  expect(tellSpeedError(errorRelative)).toBe(words);
});
