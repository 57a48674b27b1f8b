// Files as the page writes them, without a browser: a picture, a zip of pictures and two clips, each with notes.
// node write_page_files.mjs NOTES.json FOLDER

import { readFileSync, writeFileSync } from 'node:fs';
import { createZip } from '../../static/files/picture_files.js';
import { withNotes } from '../../static/files/png_notes.js';
import { fileOf as mp4 } from '../../static/files/mp4.js';
import { fileOf as webm } from '../../static/files/webm.js';

const [notesFile, folder] = process.argv.slice(2);
const text = readFileSync(notesFile);
const notes = JSON.parse(text);
const write = (name, parts) => writeFileSync(`${folder}/${name}`, Buffer.concat(parts));
// the smallest PNG: one grey pixel (ISO/IEC 15948)
const PNG = Buffer.from(
  '89504e470d0a1a0a0000000d49484452000000010000000108000000003a7e9b550000000a49444154789c6360000000020001e221bc330000000049454e44ae426082',
  'hex',
);
write('picture.png', withNotes(PNG, notes));
const zip = createZip();
zip.add('pictures.json', text);
zip.add('picture.1001.png', PNG);
write('pictures.zip', zip.finish());
const frames = Array.from({ length: 50 }, (_, k) => ({ bytes: new Uint8Array(3000).fill(k), key: k % 48 === 0 }));
const decoder = { codec: 'vp09.00.31.08', codedWidth: 64, codedHeight: 36 };
const clip = { frames, fps: [24, 1], width: 64, height: 36, codec: 'vp9', decoder, title: 'A clip', notes };
write('clip.webm', webm(clip));
write(
  'clip.mp4',
  (await mp4(clip)).map(part => new Uint8Array(part)),
);
