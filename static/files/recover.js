// The scene out of a file that was taken away: notes and arrays as JSON, glTF, OpenUSD as text, plots. The server reads the others.

const GLB = 0x46546c67; // "glTF", little-endian
const JSON_FROM = 20; // the header of the file and of its first part
const USDA = /string rimfall = ("(?:[^"\\]|\\.)*")/;

/** The scene document inside a file's bytes (ArrayBuffer), or null where it holds none of those. */
export function sceneIn(bytes) {
  try {
    const view = new DataView(bytes);
    if (bytes.byteLength > JSON_FROM && view.getUint32(0, true) === GLB) {
      return JSON.parse(text(bytes.slice(JSON_FROM, JSON_FROM + view.getUint32(12, true)))).asset.extras.scene;
    }
    const said = text(bytes);
    if (said.startsWith('#usda')) return JSON.parse(JSON.parse(USDA.exec(said)[1])).scene;
    if (said.startsWith('<svg')) return JSON.parse(unescaped(/<metadata>([\s\S]*?)<\/metadata>/.exec(said)[1]));
    const parsed = JSON.parse(said);
    return parsed.scene?.rimfall ? parsed.scene : null;
  } catch {
    return null;
  }
}

function text(bytes) {
  return new TextDecoder().decode(bytes);
}

function unescaped(said) {
  return said.replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&amp;', '&');
}
