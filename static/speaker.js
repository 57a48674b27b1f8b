// The speaker's window of the server's page.

import { showSpeaker } from './panels/present/speaker.js';
import { CHANNEL } from './state/speaking.js';

showSpeaker({ channel: new BroadcastChannel(CHANNEL), kept: sessionStorage });
