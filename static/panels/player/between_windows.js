// A channel between a file's page and its speaker's window, which files have no other between them: messages from window to window.

const NAME = '#speaker'; // of the window, at the end of its address

export const isSpeaker = () => location.hash === NAME && window.opener !== null;

/** `other`: the window to speak to, or null until one that was opened from here speaks first. It has what is used of a BroadcastChannel. */
export function createChannel(other = null) {
  const channel = {
    onmessage: null,
    postMessage: data => other?.postMessage(data, '*'), // of a file no origin can be named
    close: () => removeEventListener('message', hear),
  };
  function hear(event) {
    if (event.source !== other && event.source?.opener !== window) return;
    other = event.source;
    channel.onmessage?.(event);
  }
  addEventListener('message', hear);
  return channel;
}

/** The speaker's window: the same file, which shows itself so. */
export function openSpeaker() {
  window.open(`${location.href.replace(/#.*$/, '')}${NAME}`, 'rimfall-speaker', 'popup,width=900,height=680');
}
