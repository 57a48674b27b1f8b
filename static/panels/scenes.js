// Scenes: those kept in this browser, those that come with the program, and files; and the talks that come with it.

import { tr } from '../state/language.js';
import { countWords } from '../state/words.js';
import { createKeptScenes } from './kept_scenes.js';
import { createOpenFile } from './open_file.js';
import { h, setChildren, setText } from './shared/dom.js';
import { createShippedScenes } from './shipped_scenes.js';
import { createShippedTalks } from './shipped_talks.js';
import { createSheet } from './shared/fold.js';

const DRAWN_MS = 200; // that the sheet waits for its list of kept scenes

/** `examples`: as of api/examples.js; open(document) and openExample({id, title}) show a scene, in units(); `kept`: as kept_scenes.js says;
 *  saveScene() saves the scene at hand as a file; recover and status: as of open_file.js; `talks`: list() → promise of those that come with the program,
 *  openReady(one), open(document). */
export function createScenes({ examples, open, openExample, units, kept, saveScene, recover, status, talks }) {
  const sheet = createSheet({ title: tr('Scenes') });
  const input = h('input', {
    type: 'file',
    class: 'unseen',
    tabindex: -1,
    'aria-label': tr('Scene file'),
    onchange: () => {
      if (input.files.length) take(input.files[0]);
      input.value = '';
    },
  });
  const shipped = createShippedScenes({ examples, units, choose: chooseExample });
  const keptScenes = createKeptScenes({ kept, opened: () => sheet.close(), saveScene });
  const shippedTalks = createShippedTalks({ list: talks.list, choose: chooseTalk });
  const search = h('input', {
    type: 'search',
    class: 'linkbox',
    placeholder: tr('Search: cup, jump, thrust…'),
    'aria-label': tr('Search the scenes'),
    autocomplete: 'off',
    oninput: sift,
    onkeydown: event => {
      if (event.key === 'Enter' && wanted().length) sift()[0]?.click();
    },
  });
  const count = h('span', { class: 'small', role: 'status' });
  const trouble = h('div', { role: 'alert' });
  sheet.element.classList.add('scenes-sheet');
  sheet.content.append(
    h(
      'p',
      { class: 'links scenes-top' },
      search,
      count,
      h('button', { type: 'button', class: 'btn', onclick: () => input.click() }, tr('Open a file')),
      input,
      h('span', { class: 'small' }, tr('or drop one on the page')),
    ),
    trouble,
    keptScenes.element,
    h('div', { class: 'shipped' }, shippedTalks.element, shipped.element),
  );

  kept.on(() => sheet.element.open && keptScenes.update().then(sift));
  sheet.element.addEventListener('close', keptScenes.leave);

  const wanted = () => search.value.toLowerCase().split(/\s+/).filter(Boolean);

  // what holds every word asked for stays; the buttons that open it
  function sift() {
    const left = [...keptScenes.sift(wanted()), ...shippedTalks.sift(wanted()), ...shipped.sift(wanted())];
    setText(count, !wanted().length ? '' : left.length ? countWords(left.length, 'scene') : tr('No scene has these words.'));
    return left;
  }

  async function show() {
    setChildren(trouble);
    await Promise.race([keptScenes.update(), new Promise(resolve => setTimeout(resolve, DRAWN_MS))]);
    search.value = '';
    sheet.show();
    if (matchMedia('(pointer: fine)').matches) search.focus();
    await Promise.all([shipped.update(), shippedTalks.update()]).catch(problem => complain(problem.message));
    sift();
  }
  function chooseExample(example) {
    sheet.close();
    openExample(example);
  }
  function chooseTalk(one) {
    sheet.close();
    talks.openReady(one);
  }
  async function openTalk(document) {
    await talks.open(document);
    sheet.close();
  }
  function choose(document) {
    sheet.close();
    open(document);
  }

  const take = createOpenFile({ recover, status, open: choose, openTalk, complain });
  function complain(say) {
    sheet.show();
    setChildren(trouble, h('div', { class: 'notice refused' }, h('p', {}, h('b', {}, say), ` ${tr('Nothing was changed.')}`)));
  }
  document.addEventListener('dragover', event => {
    if (event.dataTransfer?.types.includes('Files')) event.preventDefault();
  });
  document.addEventListener('drop', event => {
    if (!event.dataTransfer?.files.length) return;
    event.preventDefault();
    take(event.dataTransfer.files[0]);
  });

  // the next or the one before of those to start from, without the sheet
  async function step(by) {
    try {
      openExample(await examples.beside(by, units()));
    } catch (problem) {
      complain(problem.message);
    }
  }
  return { show, chooseFile: () => input.click(), next: () => step(1), previous: () => step(-1) };
}
