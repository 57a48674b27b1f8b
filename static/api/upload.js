// A body sent so that it is told how far it is, which fetch does not.

/** told(done, of): bytes. Gives a Response, and rejects as fetch does. */
export function upload(path, { method, headers, body }, signal, told) {
  return new Promise((resolve, reject) => {
    const sending = new XMLHttpRequest();
    signal.throwIfAborted();
    signal.addEventListener('abort', () => (sending.abort(), reject(signal.reason)), { once: true });
    sending.open(method, path);
    for (const [name, value] of Object.entries(headers)) sending.setRequestHeader(name, value);
    sending.responseType = 'arraybuffer';
    sending.upload.addEventListener('progress', event => told(event.loaded, event.total));
    sending.addEventListener('error', () => reject(new TypeError('The upload failed.')));
    sending.addEventListener('load', () => resolve(responseOf(sending)));
    sending.send(body);
  });
}

function responseOf(sending) {
  const retryAfter = sending.getResponseHeader('retry-after');
  return new Response(sending.response, { status: sending.status, headers: retryAfter === null ? {} : { 'retry-after': retryAfter } });
}
