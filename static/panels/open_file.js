// A file opened: a scene or a talk as JSON is read here; any other that Rimfall wrote, the server reads.

import { tr } from '../state/language.js';
import { jsonIn } from '../files/json_file.js';
import { sizeWords } from '../state/export.js';
import { isRecord, isScene } from '../state/fields.js';

const LARGEST_BYTES = 60_000_000; // that the server takes

/** recover(file, {signal, told}) → the server's {scene}; open(document) shows a scene, openTalk(document) a talk, once
 *  the server has read it; complain(say): why nothing was opened. */
export function createOpenFile({ recover, status, open, openTalk, complain }) {
  let newest = null;

  /** A File; the one chosen last is opened. */
  return async function take(file) {
    newest?.abort();
    const mine = new AbortController();
    newest = mine;
    const job = status.begin({ say: tr('Reading {file}, {size}', { file: file.name, size: sizeWords(file.size) }), cancel: () => mine.abort() });
    try {
      const { scene, talk } = await documentIn(file, { recover, signal: mine.signal, told: job.progress });
      if (mine.signal.aborted) return;
      if (talk) await openTalk(talk);
      else open(scene);
    } catch (problem) {
      if (!mine.signal.aborted) complain(`${file.name}: ${problem.message}`);
    } finally {
      job.end();
    }
  };
}

/** The document in a file, {scene} or {talk}; throws an Error whose words say why there is none. */
export async function documentIn(file, { recover, signal, told }) {
  if (file.size > LARGEST_BYTES)
    throw new Error(tr('It has {size}. A file may have {most} at most.', { size: sizeWords(file.size), most: sizeWords(LARGEST_BYTES) }));
  const json = jsonIn(await file.arrayBuffer());
  if (!json) {
    const { scene } = await recover(file, { signal, told });
    return 'rimfall_talk' in scene ? { talk: scene } : { scene }; // of a talk that was taken away as one file
  }
  if (json.wrong) throw new Error(json.wrong);
  if (isRecord(json.value) && 'rimfall_talk' in json.value) return { talk: json.value };
  const scene = [json.value, json.value.scene].find(isScene);
  if (!scene) throw new Error(tr('It holds no Rimfall scene.'));
  return { scene };
}
