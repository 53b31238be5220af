// Single keys: which deed has which, as the analyst set them. Off while writing in a field.

import { read } from './server.js';

/** All deeds with their words and usual keys. */
export const DEEDS = [
  ['next', 'To the next finding', 'n'],
  ['before', 'To the finding before', 'b'],
  ['open', 'Open the finding, or go back to the sheet', 'o'],
  ['right', 'Verdict: right', 'r'],
  ['wrong', 'Verdict: wrong', 'w'],
  ['cant-tell', "Verdict: can't tell", 'c'],
  ['take-back', 'Take the last verdict back', 'u'],
  ['give-back', 'Give back what was taken back', 'g'],
  ['play', 'Play or stop', ' '],
  ['earlier', 'A frame earlier', 'e'],
  ['later', 'A frame later', 'l'],
  ['slower', 'Whole, half, quarter speed', 's'],
  ['loop', 'Again and again', 'a'],
  ['moment', 'To the decisive moment', 'm'],
  ['from-here', 'It starts here', 'f'],
  ['to-here', 'It ends here', 't'],
  ['grade-1', 'Grade 1', '1'],
  ['grade-2', 'Grade 2', '2'],
  ['grade-3', 'Grade 3', '3'],
  ['grade-4', 'Grade 4', '4'],
  ['grade-5', 'Grade 5', '5'],
  ['note', 'Write a note', 'h'],
  ['keep', 'Keep as right, with corrections', 'v'],
  ['list', 'This list', '?'],
];

const doing = new Map();
let settings = { on: true, keys: {} };

/** How a key is written. */
export function keyName(key) {
  return key === ' ' ? 'space' : key;
}

export function keyOf(deed) {
  const usual = DEEDS.find((d) => d[0] === deed)[2];
  const kept = settings.keys?.[deed];
  return kept === undefined ? usual : kept;
}

export function keySettings() {
  return settings;
}

/** Says what a deed does on this page. */
export function does(deed, action) {
  doing.set(deed, action);
  const dialog = document.getElementById('key-list');
  if (dialog?.open) {
    fill(dialog);
  }
}

function isWriting(target) {
  return target.closest('input:not([type=checkbox]):not([type=radio]), textarea, select, [contenteditable]') !== null;
}

function press(event) {
  if (event.ctrlKey || event.metaKey || event.altKey || isWriting(event.target) || settings.on === false) {
    return;
  }
  const onButton = event.target.closest('button, a, summary') !== null && (event.key === ' ' || event.key === 'Enter');
  if (onButton) {
    return;
  }
  for (const [deed, action] of doing) {
    if (keyOf(deed) !== '' && keyOf(deed) === event.key) {
      event.preventDefault();
      action();
      return;
    }
  }
}

function showList() {
  const dialog = document.getElementById('key-list');
  fill(dialog);
  if (!dialog.open) {
    dialog.showModal();
  }
  dialog.querySelector('button').focus();
}

/** The deeds of this page, also those that come while the list is open. */
function fill(dialog) {
  const title = document.createElement('h2');
  title.id = 'key-list-title';
  title.textContent = settings.on === false ? 'Keys (turned off)' : 'Keys of this page';
  const table = document.createElement('table');
  for (const [deed, words] of DEEDS.filter((d) => doing.has(d[0]))) {
    const row = table.insertRow();
    const key = document.createElement('kbd');
    key.textContent = keyName(keyOf(deed)) || 'none';
    row.insertCell().append(key);
    row.insertCell().textContent = words;
  }
  const close = document.createElement('button');
  close.type = 'button';
  close.textContent = 'Close';
  close.addEventListener('click', () => dialog.close());
  const change = document.createElement('a');
  change.href = '/keys';
  change.textContent = 'Change them, or turn them off';
  const last = document.createElement('p');
  last.append(close, ' ', change);
  dialog.replaceChildren(title, table, last);
}

/** Starts listening. */
export async function listen() {
  does('list', showList);
  document.addEventListener('keydown', press);
  try {
    const kept = await read('/data/keys');
    settings = { on: kept.on !== false, keys: kept.keys ?? {} };
  } catch (failure) {
    settings = { on: true, keys: {} };
  }
}
