// A talk as it is given: its steps in order, which one it is at, and what of it is still held back. No elements, no clock.

const FIRST = { title: '', about: '', steps: [] };

/** `resolved` {title, about, steps}: a talk in which every step is whole, as the server gives it (POST /api/talk).
 *  phase of the step it is at: 'plain'; where it asks, 'held' and then 'revealed'. paused: it stands at its pause point.
 *  Topics of `on`: 'step' another step (or the same from its start), 'phase' something held is shown, or held again, 'pause' it stands at its
 *  pause point, 'resume' it goes on from there, 'steps' the talk itself was changed. */
export function createTalk(resolved = {}) {
  const hearers = new Map();
  const emit = topic => {
    for (const hear of [...(hearers.get(topic) ?? [])]) hear(talk);
  };

  function enter(at, phase) {
    Object.assign(talk, { at, phase, paused: false });
    emit('step');
    return true;
  }

  function turn(phase) {
    Object.assign(talk, { phase, paused: false });
    emit('phase');
    return true;
  }

  function resume() {
    talk.paused = false;
    emit('resume');
    return true;
  }

  const talk = {
    ...FIRST,
    ...resolved,
    at: 0,
    phase: firstPhase(resolved.steps?.[0]),
    paused: false,
    /** null where it has none yet. */
    get step() {
      return talk.steps[talk.at] ?? null;
    },
    /** From the start of a step; of the nearest there is. */
    go(at) {
      if (!talk.steps.length) return false;
      const nearest = Math.min(Math.max(0, at), talk.steps.length - 1);
      return enter(nearest, firstPhase(talk.steps[nearest]));
    },
    /** What is held is shown; else on from the pause point it stands at; else to the next step. Whether there was any of it. */
    next() {
      if (talk.phase === 'held') return turn('revealed');
      if (talk.paused) return resume();
      return talk.at < talk.steps.length - 1 && talk.go(talk.at + 1);
    },
    /** What was shown is held again; else to the step before, with nothing of it held. */
    back() {
      if (talk.phase === 'revealed') return turn('held');
      return talk.at > 0 && enter(talk.at - 1, asks(talk.steps[talk.at - 1]) ? 'revealed' : 'plain');
    },
    reveal: () => talk.phase === 'held' && turn('revealed'),
    /** Its clock has come to the pause point. */
    pause() {
      if (talk.paused) return;
      talk.paused = true;
      emit('pause');
    },
    /** The talk as it was changed, of which it may name but a part; it stays at the step it is at, unless told otherwise.
     *  @param {{title?: string, about?: string, steps?: any[], at?: number}} changed */
    set({ at, ...changed }) {
      const { step, phase } = talk;
      Object.assign(talk, changed);
      const still = talk.steps.indexOf(step);
      talk.at = Math.max(0, Math.min(at ?? (still < 0 ? talk.at : still), talk.steps.length - 1));
      if (asks(talk.step) !== (phase !== 'plain') || talk.step !== step) talk.phase = firstPhase(talk.step);
      emit('steps');
    },
    on(topic, hear) {
      if (!hearers.has(topic)) hearers.set(topic, new Set());
      hearers.get(topic).add(hear);
      return () => hearers.get(topic).delete(hear);
    },
  };
  return talk;
}

const asks = step => Boolean(step?.ask);
const firstPhase = step => (asks(step) ? 'held' : 'plain');
