// Why a request has no answer: the server refused it, or gave none.

import { tr } from '../state/language.js';

const TOO_HEAVY = /^(work|motions\.\d+)$/; // the field that a refusal of too much work names: all of it, or a motion as a whole

/** The server said no: `errors` is its list of {field, was, may_be, say}. */
export class ValidationError extends Error {
  constructor(errors) {
    super(errors[0]?.say ?? tr('The server refused it.'));
    this.errors = errors;
  }

  get tooHeavy() {
    return this.errors.some(({ field }) => TOO_HEAVY.test(field));
  }
}

/** No answer that can be used. `reason`: 'unreachable' nobody is there, or the answer broke off; 'busy' to be asked again after `wait_ms`;
 *  'lost' likewise, for what worked on it has ended; 'late' nothing came for too long; 'fault' the server failed. */
export class Unanswered extends Error {
  constructor(say, { reason = 'unreachable', wait_ms = 0, ...rest } = {}) {
    super(say, rest);
    Object.assign(this, { reason, wait_ms });
  }
}
