// Take it away: files with format and size, how they are made in one sentence, one Save.

import { countWords } from '../state/words.js';
import { $$, h, setAttribute, setChildren, setText } from './dom.js';
import { download, fileName } from './files.js';
import { createSheet } from './sheet.js';

/** make: what a file holds, each () → Promise of text: {csv, notes, answer, scene}. */
export function createTakeAway({ store, make }) {
  const FILES = [
    { key: 'paths', say: 'Paths', format: 'CSV, a row a frame and body', end: 'csv', type: 'text/csv', text: () => make.csv() },
    {
      key: 'notes',
      say: 'Notes to the paths',
      format: 'JSON: names, axes, the scene',
      end: 'csv.json',
      type: 'application/json',
      text: () => make.notes(),
    },
    {
      key: 'answer',
      say: 'Numbers',
      format: 'JSON, every array and event',
      end: 'answer.json',
      type: 'application/json',
      text: () => make.answer(),
    },
    {
      key: 'scene',
      say: 'The scene itself',
      format: 'JSON, opens here again',
      end: 'rimfall.json',
      type: 'application/json',
      text: () => make.scene(),
    },
  ];
  const sheet = createSheet({ title: 'Take it away' });
  const what = h('p', { class: 'lead' });
  const ticks = FILES.map(file => ({
    ...file,
    box: h('input', { type: 'checkbox', id: `take-${file.key}`, onchange: update }),
    size: h('td', { class: 'r' }),
  }));
  const save = h('button', { type: 'button', class: 'btn strong', onclick: saveAll });
  const trouble = h('div', { role: 'alert' });
  let made = new Map(),
    round = 0;
  sheet.content.append(
    what,
    h(
      'table',
      {},
      h(
        'tbody',
        {},
        ticks.map(({ key, say, format, box, size }) =>
          h(
            'tr',
            {},
            h('td', { class: 'tick' }, box),
            h('td', { class: 'w' }, h('label', { for: `take-${key}` }, say)),
            h('td', { class: 'r format' }, format),
            size,
          ),
        ),
      ),
    ),
    trouble,
    h(
      'div',
      { class: 'between' },
      h(
        'p',
        { class: 'small' },
        'X spinward, Y up, Z along the spin vector, in metres, turning with the deck. Frame 1001 is time 0.',
      ),
      save,
    ),
    h(
      'p',
      { class: 'small caution-line' },
      'For stories, pictures and teaching; not for the design of a real rotor, platform or tether.',
    ),
  );
  for (const link of $$('#foot [data-take]')) link.addEventListener('click', () => show(link.dataset.take));

  async function show(key = 'paths') {
    ticks.forEach(file => {
      file.box.checked = file.key === key || (key === 'paths' && file.key === 'notes');
    });
    setChildren(trouble);
    made = new Map();
    sheet.show();
    update();
    await Promise.all(ticks.map(prepare));
  }

  // made as soon as the sheet opens, so that their sizes can be told
  async function prepare(file) {
    const mine = (round += 1);
    file.round = mine;
    setText(file.size, '');
    try {
      const text = await file.text();
      if (file.round !== mine) return;
      made.set(file.key, text);
      setText(file.size, sizeWords(new Blob([text]).size));
    } catch (problem) {
      setText(file.size, 'not to be had');
      setChildren(trouble, h('div', { class: 'notice failed' }, h('p', {}, h('b', {}, `${file.say}: ${problem.message}`))));
    }
    update();
  }

  const chosen = () => ticks.filter(file => file.box.checked);
  function update() {
    const { answer, document } = store,
      files = chosen(),
      ready = files.filter(file => made.has(file.key));
    const bytes = ready.reduce((sum, file) => sum + new Blob([made.get(file.key)]).size, 0);
    if (answer) {
      const { grid } = answer,
        fps = grid.fps[0] / grid.fps[1];
      setText(
        what,
        `${capital(countWords(document.motions.length, 'motion'))}, ${((grid.count - 1) / (fps * grid.samples_per_frame)).toFixed(1)} s at ${Number(fps.toFixed(3))} frames a second, in metres.`,
      );
    }
    setText(save, files.length ? `Save ${countWords(files.length, 'file')}${ready.length ? `, ${sizeWords(bytes)}` : ''}` : 'Save');
    setAttribute(save, 'disabled', files.length === 0 || ready.length < files.length);
  }
  function saveAll() {
    const name = fileName(store.read('title'));
    chosen().forEach(file => download(`${name}.${file.end}`, made.get(file.key), file.type));
  }
  return { show };
}

function sizeWords(bytes) {
  return bytes < 1000 ? `${bytes} B` : bytes < 1e6 ? `${Math.round(bytes / 1000)} kB` : `${(bytes / 1e6).toFixed(1)} MB`;
}

function capital(text) {
  return text[0].toUpperCase() + text.slice(1);
}
