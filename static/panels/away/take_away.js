// Take it away: what, how in a sentence, and one Save.

import { tr } from '../../state/language.js';
import { canCode } from '../../files/clip.js';
import { exportPart, factsOf, sizeWords } from '../../state/export.js';
import { motionName } from '../../state/fields.js';
import { countWords } from '../../state/words.js';
import { $, $$, h, setAttribute, setChildren, setText } from '../shared/dom.js';
import { createAsking } from './asking.js';
import { createProgress } from './choices.js';
import { createHow } from './how.js';
import { FRAMED, offered, PICTURES, createRows } from './offered.js';
import { createMaking } from './making.js';
import { createPictures } from './pictures.js';
import { createSaved, download } from '../shared/files.js';
import { createSheet } from '../shared/fold.js';

const LINKS = { paths: ['paths', 'notes'], pictures: ['picture'], scene: ['scene'] };

/** exported(format, request, signal) → Blob; studio draws pictures, null without WebGL; cameras() → those of the stages as they stand;
 *  sceneText() → the scene as a file; settled() → null, or when the address is that of the scene as it is. */
export function createTakeAway({ store, clock, exported, studio, cameras, sceneText, settled }) {
  const { formats, fields } = store.fields.export;
  const sheet = createSheet({ title: tr('Take it away') });
  const kept = () => ({ files: {}, picture: {}, kinds: {}, ...store.view.away });
  const keep = part => store.look({ away: { ...kept(), ...part } });
  const names = () => store.document.motions.map((_, i) => motionName(store, i));
  const rows = createRows({
    groups: offered(formats, studio !== null),
    kinds: kept().kinds,
    changed: update,
    chose: (row, value) => keep({ kinds: { ...kept().kinds, [row]: value } }),
  });
  const how = createHow({
    fields,
    chosen: () => kept().files,
    keep: files => keep({ files }),
    sceneRate: () => store.answer?.grid.fps ?? [24, 1],
    motions: names,
    errorsChanged: offer,
  });
  const pictures = createPictures({
    chosen: () => kept().picture,
    keep: picture => keep({ picture }),
    largest_px: studio?.largest_px ?? 0,
    errorsChanged: offer,
  });
  const asking = createAsking({
    exported,
    request: () => ({
      scene: store.document,
      export: { ...exportPart(kept().files, names()), ...(staged.length && { stage_cameras: staged }), ...ownCameras(store.shot) },
    }),
    changed: showAnswer,
    failed: complain,
  });
  const make = createMaking({ store, clock, studio, picture: pictures.now, sceneText });
  const facts = h('div', { class: 'small facts', role: 'status' });
  const trouble = h('div', { role: 'alert' });
  const save = h('button', { type: 'button', class: 'btn strong', onclick: saveAll });
  const saved = createSaved();
  const progress = createProgress({ cancel: () => job?.abort() });
  const parts = layOut({ sheet, rows, how, facts, pictures, trouble, progress, saved, save, drawable: studio !== null, caution: store.fields.caution });
  let job = null, // while files are made
    staged = []; // what the stages were seen from as the sheet was opened

  if (!canCode()) rows.of('clip')?.bar(tr('This browser cannot encode video; take every frame instead.'));
  for (const link of $$('#foot [data-take]')) link.addEventListener('click', () => show(link.dataset.take));
  for (const link of [parts.page, $('#brief-link')]) link.addEventListener('click', toBrief);
  store.on('view', patch => sheet.element.open && 'away' in patch && update());
  sheet.element.addEventListener('close', () => job?.abort());

  // the brief of what is seen now, also of a change that is not in the address yet
  async function toBrief(event) {
    const link = event.currentTarget,
      written = settled();
    if (written) {
      event.preventDefault();
      await written;
    }
    setAttribute(link, 'href', `brief${location.hash}`);
    if (written) link.click();
  }

  function show(link) {
    rows.tick(LINKS[link]);
    staged = cameras();
    setChildren(trouble);
    saved.clear();
    sheet.show();
    update();
    rows.ticked()[0]?.box.scrollIntoView({ block: 'nearest' });
  }

  function update() {
    const ticked = rows.ticked();
    const uses = new Set(ticked.flatMap(row => row.kind.uses));
    how.update(uses);
    pictures.update();
    parts.how.hidden = uses.size === 0;
    parts.pictures.hidden = studio === null || !ticked.some(row => PICTURES.includes(row.key) || row.kind.drawn);
    if (uses.size) asking.want(ticked.map(row => row.kind));
    if (!asking.notes()) setChildren(facts); // those of an earlier choice
    tellSizes();
    offer();
  }

  // one Save, for as many files, where nothing is wrong
  function offer() {
    const { length } = rows.ticked();
    setText(save, length ? tr('Save {files}', { files: countWords(length, 'file') }) : tr('Save'));
    const wrong = (!parts.how.hidden && how.hasErrors()) || (!parts.pictures.hidden && pictures.hasErrors());
    setAttribute(save, 'disabled', !length || job !== null || wrong);
  }

  function showAnswer() {
    how.accepted();
    setChildren(trouble);
    setChildren(
      facts,
      factsOf(asking.notes()).map(sentence => h('p', {}, sentence)),
    );
    tellSizes();
    offer();
  }

  // what the server would refuse is said before Save; the other files are made all the same
  const refused = row => (row.kind.format && asking.notes()?.refused?.[row.kind.format]) || '';

  function tellSizes() {
    for (const row of rows.all) {
      if (!row.barred) row.warn(row.box.checked ? refused(row) : '');
      const bytes = row.kind.drawn ? null : asking.size(row.kind.format);
      const frames = FRAMED.includes(row.key) ? asking.notes()?.file.frame_count : null;
      row.tell(!row.box.checked ? '' : bytes !== null ? sizeWords(bytes) : frames ? countWords(frames, 'frame') : '');
    }
  }

  async function saveAll() {
    job = new AbortController();
    const { signal } = job,
      ticked = rows.ticked(),
      names = [];
    asking.stop();
    saved.clear();
    setChildren(trouble);
    offer();
    let server = {};
    try {
      if (ticked.some(one => one.kind.uses.length)) server = await asking.settled(signal);
      for (const row of ticked) {
        if (signal.aborted) break;
        if (!refused(row)) names.push(...(await saveOne(row, { ...server, signal, tell: progress.tell })));
      }
    } catch (problem) {
      if (!signal.aborted) complain(problem);
    }
    job = null;
    progress.tell(null);
    saved.tell(...names);
    offer();
  }

  // one that fails keeps the others from nothing; gives the names of what was saved
  async function saveOne(row, job) {
    try {
      const file = await make(row, job);
      job.signal.throwIfAborted();
      return [download(file.name, file.blob)];
    } catch (problem) {
      if (!job.signal.aborted) complain(problem, row);
      return [];
    }
  }

  function complain(problem, row = null) {
    setChildren(facts);
    const elsewhere = !problem.errors?.map(how.take).every(Boolean);
    const say = row ? `${tr(row.say)}: ${problem.message}` : problem.message;
    setChildren(trouble, elsewhere && h('div', { class: 'notice failed' }, h('p', {}, h('b', {}, say))));
    offer();
  }
  return { show };
}

// Where things stand on the sheet: what on the left, how on the right, Save at the foot and always in sight.

/** `drawable`: the stages can be drawn into pictures. `caution`: what stands at the foot. Gives {page, how, pictures}: the link to the page to print, and the two sections. */
function layOut({ sheet, rows, how, facts, pictures, trouble, progress, saved, save, drawable, caution }) {
  const page = h('a', { class: 'link', href: 'brief', target: '_blank', rel: 'opener' }, tr('Brief to print'));
  const third = words => h('h3', { class: 'third' }, words);
  const parts = {
    page,
    how: h('section', {}, third(tr('How')), how.element, facts),
    pictures: h('section', {}, third(tr('Pictures')), pictures.element),
  };
  const none = h('p', { class: 'small' }, tr('Pictures and clips need WebGL, which this browser does not give.'));
  sheet.element.classList.add('away-sheet');
  sheet.content.append(
    h('div', {}, rows.element, h('p', { class: 'links' }, page, h('span', { class: 'small' }, tr('opens in a new tab')))),
    h('div', { class: 'how-side' }, parts.how, parts.pictures, drawable ? null : none),
    h(
      'div',
      { class: 'away-foot' },
      trouble,
      h('p', { class: 'small caution-line' }, caution),
      h('div', { class: 'between' }, progress.element, saved.element, save),
    ),
  );
  return parts;
}

const ownCameras = ({ camera }) => (camera ? { cameras: [camera.own] } : {});
