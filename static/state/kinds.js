// The kinds of motion as the page sets them out: groups to add from, what one is called, and how many of them are said.

/** @type {[string, string[]][]} */
const GROUPS = [
  ['Things', ['drop', 'throw', 'roll', 'stand', 'hang']],
  ['Liquids', ['pour']],
  ['People', ['jump', 'walk', 'lift', 'let_go']],
  ['Craft', ['approach']],
];
const SAID = {
  stand: { add: 'a thing on a table', name: 'On a table', many: 'things on tables' },
  hang: { add: 'a hanging thing', name: 'Hanging', many: 'hanging things' },
  lift: { add: 'a lift ride', name: 'Lift', many: 'lift rides' },
  let_go: { add: 'someone who lets go of the rim', short: 'Let go', name: 'Let go', one: 'person letting go', many: 'people letting go' },
  approach: { add: 'an approach', many: 'approaches' },
};
const PEOPLE = new Set(['jump', 'walk', 'lift', 'let_go']);
const UNATTENDED = new Set(['approach']);

/** [[word, kinds]] of the kinds that the server has; what belongs to no group comes last. */
export function kindGroups(kinds) {
  const known = Object.keys(kinds),
    placed = new Set(GROUPS.flatMap(([, of]) => of));
  /** @type {[string, string[]][]} */
  const groups = [...GROUPS, ['More', known.filter(kind => !placed.has(kind))]];
  return groups.map(([word, of]) => [word, of.filter(kind => known.includes(kind))]).filter(([, of]) => of.length);
}

/** What a kind is called: {add: 'a drop', short: 'Drop', name: 'Drop', one: 'drop', many: 'drops'}. */
export function kindWords(kind, label = kind) {
  const said = SAID[kind] ?? {},
    plain = label.toLowerCase();
  const add = said.add ?? `a ${plain}`;
  return { add, short: said.short ?? label, name: said.name ?? label, one: said.one ?? add.replace(/^an? /, ''), many: said.many ?? `${plain}s` };
}

/** The one who moves is a person, drawn as one. */
export function movesAPerson(kind) {
  return PEOPLE.has(kind);
}

/** Somebody stands where it starts: who drops, throws, pours; nobody beside a person who moves, or far out where a craft is. */
export function isAttended(kind) {
  return !PEOPLE.has(kind) && !UNATTENDED.has(kind);
}
