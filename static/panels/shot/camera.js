// Through which camera? One of one's own, by place, aim, bank and lens, or out of a file: a stage is seen through it, the plate lies in its frame, it
// goes out with every file, and a match can be made through it.

import { tr, trLater } from '../../state/language.js';
import { footageOf, isFootage } from '../../files/footage.js';
import { inOrder } from '../../state/match.js';
import { FIRST_CAMERA, cameraRequest } from '../../state/camera_request.js';
import { createNewest } from '../../state/newest.js';
import { countWords } from '../../state/words.js';
import { areStagesFlat, h, setAttribute, setChildren, setText } from '../shared/dom.js';
import { createSwitch } from '../shared/choice.js';
import { createCameraSentence } from './camera_sentence.js';

const FLAT = trLater('Without 3D drawing no stage can be seen through it; it goes out with files, and a path can be matched through it.');

/** `match`: {footage() → the pictures that are open, or null; through(rows) → a match through these cameras}. */
export function createCamera({ element, store, client, heard, match }) {
  let typed = FIRST_CAMERA,
    wanted = false, // from "Set up a camera" to "Remove the camera": an answer or a plate that comes later than that is of no camera
    ownPlate = null, // pictures opened as the plate alone
    file = null, // {answer}: of a file, in place of what is typed
    told = null, // the server's answer
    problem = null,
    lastQuestion = null;
  const { want } = createNewest({
    request: () => cameraRequest(store.document, typed),
    ask: (body, signal) => client.camera(body, signal),
    answered(answer) {
      if (wanted && !file) take(answer, 0);
    },
    failed(why) {
      problem = why.message;
      update();
    },
  });

  function take(answer, k) {
    told = answer;
    problem = null;
    const first = store.shot.camera === null;
    store.setShot({ camera: { shown: true, opacity: 0.5, plate: ownPlate, ...store.shot.camera, own: answer.cameras[k] } });
    if (first) element.parentElement.querySelector('#shot-camera-title').scrollIntoView({ block: 'start' });
  }

  function ask() {
    const { habitat } = store.document,
      key = JSON.stringify([habitat, typed]);
    if (!store.shot.camera || file || key === lastQuestion) return;
    lastQuestion = key;
    want();
  }

  function begin() {
    wanted = true;
    lastQuestion = JSON.stringify([store.document.habitat, typed]);
    want();
  }

  async function open(chosen) {
    try {
      const radius_m = store.read('habitat.radius_m');
      const answer = await client.cameraFile(chosen, { view: typed.view, ...(radius_m ? { radius_m } : {}) });
      wanted = true;
      file = { answer };
      take(answer, 0);
      heard.say(answer.words[0]);
    } catch (why) {
      problem = tr('{name}: {why} Nothing was changed.', { name: chosen.name, why: why.message });
      update();
    }
  }

  async function openPlate(files) {
    try {
      const plate = await footageOf(inOrder(files.filter(isFootage)));
      if (!wanted) return plate.close();
      ownPlate?.close();
      ownPlate = plate;
      problem = null;
      patch({ plate, shown: true });
      heard.say(tr('{name} lies in the frame of the camera.', { name: plate.name }));
    } catch (why) {
      problem = tr('{why} Nothing was changed.', { why: why.message });
      update();
    }
  }

  const patch = part => store.shot.camera && store.setShot({ camera: { ...store.shot.camera, ...part } });
  const chooser = h('input', {
    type: 'file',
    accept: '.csv,.usda,.usdc,.usdz,.glb',
    class: 'unseen',
    tabindex: -1,
    'aria-hidden': true,
    onchange: () => chooser.files[0] && open(chooser.files[0]),
  });
  const plateChooser = h('input', {
    type: 'file',
    multiple: true,
    accept: 'image/*,video/*',
    class: 'unseen',
    tabindex: -1,
    'aria-hidden': true,
    onchange: () => plateChooser.files.length && openPlate([...plateChooser.files]),
  });
  const button = (words, onclick, kind = 'link') => h('button', { type: 'button', class: kind, onclick }, words);
  const openFile = () => {
    chooser.value = '';
    chooser.click();
  };
  const first = h(
    'div',
    {},
    h('p', { class: 'lead' }, tr('Look at a stage through a camera of your own: it goes out with every .glb and OpenUSD file.')),
    h('p', { class: 'links camera-begin' }, button(tr('Set up a camera'), begin, 'btn'), button(tr('Open a camera file'), openFile, 'btn')),
  );
  const sentence = createCameraSentence({
    store,
    get: () => typed,
    put: next => {
      typed = next;
      ask();
      update();
    },
  });
  const words = h('p', { class: 'lead' }),
    others = h('p', { class: 'links' });
  const through = createSwitch({
    label: tr('See the stage through it'),
    on: () => store.shot.camera?.shown,
    turn: () => patch({ shown: !store.shot.camera.shown }),
  });
  const opacity = h('input', {
    type: 'range',
    min: 0,
    max: 100,
    step: 5,
    'aria-label': tr('Opacity of the plate'),
    oninput: () => patch({ opacity: Number(opacity.value) / 100 }),
  });
  const choosePlate = () => {
    plateChooser.value = '';
    plateChooser.click();
  };
  const looks = h('p', { class: 'links' }, through.element),
    openOne = button(tr('Open a plate'), choosePlate);
  const lay = button(tr('Lay the pictures of the path in its frame'), () => patch({ plate: match.footage() })),
    away = button(tr('Take the plate away'), () => patch({ plate: null }));
  const plate = h('label', { class: 'between' }, h('span', {}, tr('Opacity of the plate')), opacity);
  const judge = button(tr('Match the path through it'), () => match.through(told.match)),
    typeIt = button(tr('Set it by hand'), () => {
      file = null;
      lastQuestion = null;
      ask();
      update();
    });
  const leave = button(tr('Remove the camera'), () => {
    wanted = false;
    file = null;
    ownPlate?.close();
    ownPlate = null;
    store.setShot({ camera: null });
  });
  const asked = h(
    'div',
    { hidden: true },
    sentence.element,
    words,
    others,
    looks,
    plate,
    h('p', { class: 'links' }, openOne, lay, away, judge, typeIt, button(tr('Open a camera file'), openFile), leave),
  );
  const trouble = h('p', { class: 'refusal', role: 'alert', hidden: true });
  element.append(chooser, plateChooser, first, asked, trouble);

  function update() {
    const { camera } = store.shot,
      footage = match.footage();
    setAttribute(first, 'hidden', camera !== null);
    setAttribute(asked, 'hidden', camera === null);
    setAttribute(trouble, 'hidden', problem === null);
    setText(trouble, problem ?? '');
    if (!camera) return;
    ask();
    setAttribute(sentence.element, 'hidden', file !== null);
    sentence.update();
    const flat = areStagesFlat();
    setText(words, told ? `${told.words[0]}${flat ? ` ${tr(FLAT)}` : ''}` : '');
    const cameras = file?.answer.cameras ?? [];
    setChildren(
      others,
      cameras.length > 1
        ? [h('span', { class: 'small' }, countWords(cameras.length, 'camera')), ...cameras.map((one, k) => button(one.name, () => take(file.answer, k)))]
        : [],
    );
    through.update();
    opacity.value = String(100 * camera.opacity);
    setAttribute(looks, 'hidden', flat);
    setAttribute(plate, 'hidden', !camera.plate || flat);
    setAttribute(away, 'hidden', !camera.plate);
    setAttribute(openOne, 'hidden', flat);
    setAttribute(lay, 'hidden', !footage || camera.plate === footage || flat);
    setAttribute(judge, 'hidden', !footage || !told?.match);
    setAttribute(typeIt, 'hidden', file === null);
  }
  return { update };
}
