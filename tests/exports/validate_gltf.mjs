// Asks the validator of glTF's own makers about .glb files, many in one run: `node validate_gltf.mjs <its module> <file>...`.
// Prints one JSON object: file -> what it says of errors, warnings and hints, and what it counted.

import fs from 'node:fs';
import { pathToFileURL } from 'node:url';

const [module, ...files] = process.argv.slice(2);
const { validateBytes } = (await import(pathToFileURL(module))).default;
const said = {};
for (const file of files) {
  const { issues, info } = await validateBytes(new Uint8Array(fs.readFileSync(file)), { maxIssues: 0 });
  said[file] = { issues, info };
}
console.log(JSON.stringify(said));
