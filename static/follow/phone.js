// What this phone calls itself, so that its mark can be moved: letters of chance, kept until the tab is closed.

const NAME = 'rimfall-phone';
let name = null;

export function nameOfPhone() {
  try {
    name ??= sessionStorage.getItem(NAME);
  } catch {
    // kept by this page alone
  }
  name ??= Array.from(crypto.getRandomValues(new Uint8Array(16)), byte => byte.toString(16).padStart(2, '0')).join('');
  try {
    sessionStorage.setItem(NAME, name);
  } catch {
    // as above
  }
  return name;
}
