import { createHash } from 'node:crypto';
import { encodePart } from '../../src/formats/encode-part.ts';
import { partFormats } from '../../src/formats/part-formats.ts';
import { makePlate } from './make-plate.ts';

// Run as a program of its own in several time zones: the zone's offset, then one line a format.
console.log(`offset ${new Date(2026, 0, 1).getTimezoneOffset()}`);
for (const format of partFormats) {
  const bytes = encodePart(format, makePlate(), 'plate', { Title: 'a plate', teeth: '12' });
  console.log(`${format.key} ${createHash('sha256').update(bytes).digest('hex')}`);
}
