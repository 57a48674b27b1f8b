// How each file is made: by the server, or here from the stages. Every maker gives {name, blob}.

import { tr } from '../../state/language.js';
import { codeClip } from '../../files/clip.js';
import { framesOf } from '../../state/export.js';
import { motionName } from '../../state/fields.js';
import { fileName } from '../shared/files.js';

// fetched when wanted
const pictures = () =>
  import('../../files/picture_files.js').catch(() => {
    throw new Error(tr('The part of the page that makes pictures could not be loaded: the server does not answer.'));
  });

/** picture() → the choices of pictures; sceneText() → the scene as a file. */
export function createMaking({ store, clock, studio, picture, sceneText }) {
  const slug = () => fileName(store.read('title'));
  const carried = () => ({ scene: store.document });
  const motionNames = () => store.document.motions.map((_, i) => motionName(store, i)).filter(name => !store.view.hidden.includes(name));
  const IN_BROWSER = { scene, picture: moment, sequence, clip };

  /** row {key, say, kind}; job {ready(format) → the server's Blob, notes: its own on the same request, tell(say, done, all), signal}. */
  async function make({ key, say, kind }, job) {
    if (kind.format === null) return IN_BROWSER[key](job, kind);
    job.tell(tr(say), 0, 1);
    const blob = await job.ready(kind.format);
    if (!kind.drawn) return { name: `${slug()}.${kind.ending}`, blob };
    return { name: `${slug()}.${kind.ending.replace(/svg$/, 'png')}`, blob: await (await pictures()).pngOfSvg(blob, picture().width, carried()) };
  }

  async function scene() {
    return { name: `${slug()}.rimfall.json`, blob: new Blob([sceneText()], { type: 'application/json' }) };
  }

  async function moment({ tell, signal }) {
    tell(tr('This moment'), 0, 1);
    const { frame } = picture();
    const shot = studio.shoot({ ...picture(), stride_s: clock.stride_s });
    try {
      await shot.draw(clock.time_s, signal);
      return { name: `${slug()}.${frame}.png`, blob: await (await pictures()).pngOf(shot.canvas, carried()) };
    } finally {
      shot.close();
    }
  }

  async function sequence({ notes, tell, signal }) {
    const frames = framesOf(notes.file);
    const { mattes, depth, ...chosen } = picture();
    const { createZipOfFrames, pngBytes } = await pictures();
    const layers = [{ named: frame => `${slug()}.${frame}.png`, open: () => studio.shoot(chosen), bytes: ({ canvas }) => pngBytes(canvas) }];
    for (const name of mattes ? motionNames() : []) {
      const matte = { ...chosen, what: 'things', bare: true, labels: false, only: name };
      layers.push({
        named: frame => `${slug()}.matte-${fileName(name)}.${frame}.png`,
        open: () => studio.shoot(matte),
        bytes: ({ canvas }) => pngBytes(canvas),
      });
    }
    if (depth) {
      const { exrOf } = await import('../../files/exr_file.js');
      layers.push({
        named: frame => `${slug()}.depth.${frame}.exr`,
        open: () => studio.shoot({ ...chosen, deep: true, labels: false }),
        bytes: shot => exrOf(shot.depth()),
      });
    }
    const all = frames.length * layers.length;
    const noted = { name: `${slug()}.json`, text: JSON.stringify(notes, null, 2) };
    const zip = createZipOfFrames(noted, { tell: done => tell(tr('Frame {done} of {all}', { done, all }), done, all), signal });
    for (const { named, open, bytes } of layers) {
      const shot = open(); // one at a time: they are drawn by the same two stages
      try {
        const drawn = async time_s => {
          await shot.draw(time_s, signal);
          return bytes(shot);
        };
        await zip.add({ frames, drawn, named });
      } finally {
        shot.close();
      }
    }
    return { name: `${slug()}.pictures.zip`, blob: new Blob(zip.finish(), { type: 'application/zip' }) };
  }

  async function clip({ notes, tell, signal }, { container }) {
    const frames = framesOf(notes.file);
    const size = evenSize(picture());
    const shot = studio.shoot({ ...picture(), ...size, bare: false });
    const draw = drawer(shot, signal);
    try {
      const parts = await codeClip({
        container,
        ...size,
        draw: i => draw(frames[i].time_s),
        count: frames.length,
        fps: notes.file.shown_fps,
        title: notes.title,
        notes,
        tell: done => tell(tr('Frame {done} of {all}', { done, all: frames.length }), done, frames.length),
        signal,
      });
      return { name: `${slug()}.${container}`, blob: new Blob(parts, { type: `video/${container}` }) };
    } finally {
      shot.close();
    }
  }
  return make;
}

function drawer(shot, signal) {
  return async time_s => {
    await shot.draw(time_s, signal);
    return shot.canvas;
  };
}

// colour is coded for two by two pixels
function evenSize({ width, height }) {
  return { width: width - (width % 2), height: height - (height % 2) };
}
