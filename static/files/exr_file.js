// A picture of figures as OpenEXR, 32 bits each: what compositing reads as it stands.

import { EXRExporter } from '../vendor/EXRExporter.js';
import { DataTexture, FloatType, RGBAFormat } from '../vendor/three.module.js';

/** values (width × height), the lowest row first → the file's bytes, the value in R, G and B. */
export async function exrOf({ width, height, values }) {
  const data = new Float32Array(4 * values.length);
  values.forEach((value, i) => data.set([value, value, value, 1], 4 * i));
  const texture = new DataTexture(data, width, height, RGBAFormat, FloatType);
  try {
    return await new EXRExporter().parse(texture, { type: FloatType });
  } finally {
    texture.dispose();
  }
}
