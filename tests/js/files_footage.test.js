// Pictures of one's own: how fast they were taken.

import assert from 'node:assert/strict';
import test from 'node:test';
import { meantRate } from '../../static/files/footage.js';

// as a file has them whose times are whole milliseconds
const rounded = (rate, count) => count / (Math.round((1000 * count) / rate) / 1000);

test('a rate is the one that was meant, though times are rounded to milliseconds', () => {
  for (const rate of [12, 23.976, 24, 25, 29.97, 30, 59.94, 60])
    for (const count of [24 * 4, 1000]) {
      const exact = rate % 1 ? (Math.round(rate) * 1000) / 1001 : rate;
      assert.equal(meantRate(rounded(exact, count), count), rate, `${rate} of ${count}`);
    }
  assert.equal(meantRate(rounded(12, 8), 8), 12);
  assert.equal(meantRate(12.5, 1000), 12.5); // what is meant otherwise stays
});
