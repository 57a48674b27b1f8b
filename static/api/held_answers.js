// The answers that stand in a file that plays by itself: unpacked once, each read when it is first shown.

import { decodeAnswer } from './client.js';

/** `text`: JSON by gzip in base64, as the server's exports/one_file packs it.
 *  @param {string} text */
export async function createAnswers(text) {
  const held = JSON.parse(await unpacked(text));
  const read = [];
  const numbers = new Map(); // of the steps' scenes, which are the same object where they have the same answer
  let way = null; // the answers on the way that the dials are on

  function answer(number) {
    const { trace, mesh, words } = held.answers[number];
    read[number] ??= { ...decodeAnswer(told(trace, words)), drawn: held.meshes[mesh].habitats, craft: held.meshes[mesh].craft ?? null };
    return read[number];
  }

  const dialsOf = number => held.answers[number].trace.scene.habitat;

  // there and back again
  function between(from, to) {
    const ends = [numbers.get(from), numbers.get(to)];
    const found = held.moves?.find(move => ends.includes(move.from) && ends.includes(move.to) && ends[0] !== ends[1]);
    return found?.answers.length ? found : null;
  }

  return {
    fields: held.fields,
    hidden: held.hidden ?? [],
    answer,
    words: number => held.answers[number].words,
    /** The steps of a talk, those with one answer sharing one scene. */
    steps(steps) {
      const scenes = [];
      return steps.map((step, k) => {
        const number = held.scenes[k];
        scenes[number] ??= step.scene;
        numbers.set(scenes[number], number);
        return { ...step, scene: scenes[number] };
      });
    },
    answerOf: ({ scene }) => answer(numbers.get(scene)),
    feltOf: ({ scene }) => held.felt?.[numbers.get(scene)] ?? null,
    /** Whether there are answers on the way from one scene to another; if so, theirs are given from now on. */
    isOnTheWay(from, to) {
      way = between(from, to);
      return way !== null;
    },
    /** The answer on the way that is nearest to a scene whose dials move; null on no way. */
    onTheWay({ habitat }) {
      if (!way) return null;
      const dial = dialsOf(way.from).radius_m === dialsOf(way.to).radius_m ? 'spin_rpm' : 'radius_m';
      const off = number => Math.abs(dialsOf(number)[dial] - habitat[dial]);
      return answer([way.from, ...way.answers, way.to].reduce((best, number) => (off(number) < off(best) ? number : best)));
    },
  };
}

async function unpacked(text) {
  const bytes = Uint8Array.from(atob(text.trim()), letter => letter.charCodeAt(0));
  return new Response(new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip'))).text();
}

function told(trace, words) {
  return { ...trace, motions: trace.motions.map((motion, i) => ({ ...motion, in_short: words[i]?.short ?? '' })) };
}
