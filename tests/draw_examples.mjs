// {fields, opened: [what opening each scene to start from gives]} on standard input; the small drawing of each on standard output.

import { readFileSync } from 'node:fs';
import { decodeAnswer } from '../static/api/client.js';
import { vignetteOf } from '../static/views/vignette.js';

const { fields, opened } = JSON.parse(readFileSync(0, 'utf8'));
const drawings = opened.map(({ trace, mesh }) => vignetteOf({ ...decodeAnswer(trace), drawn: mesh.habitats, craft: mesh.craft }, fields));
process.stdout.write(JSON.stringify(drawings));
