// Change keys, turn them off, or go back to the usual ones.

import { DEEDS, keyName, keyOf, keySettings, listen } from './keys.js';
import { say, send } from './server.js';

const body = document.querySelector('#key-table tbody');
const on = document.getElementById('keys-on');

function collect() {
  const keys = {};
  for (const input of body.querySelectorAll('input')) {
    const usual = DEEDS.find((d) => d[0] === input.name)[2];
    if (input.dataset.key !== usual) {
      keys[input.name] = input.dataset.key;
    }
  }
  return { on: on.checked, keys };
}

async function keep(settings) {
  try {
    say((await send('/do/keys', settings)).said);
  } catch (failure) {
    say(failure.message);
  }
}

function taken(key, except) {
  return Array.from(body.querySelectorAll('input')).find((i) => i !== except && i.dataset.key === key && key !== '');
}

function row([deed, words]) {
  const tr = body.insertRow();
  tr.insertCell().textContent = words;
  const input = document.createElement('input');
  input.name = deed;
  input.readOnly = true;
  input.size = 8;
  input.dataset.key = keyOf(deed);
  input.value = keyName(keyOf(deed));
  input.setAttribute('aria-label', `${words}: press the new key, or Delete for none`);
  input.addEventListener('keydown', (event) => {
    if (event.key === 'Tab' || event.key === 'Escape' || event.key === 'Shift') {
      return;
    }
    event.preventDefault();
    const key = event.key === 'Delete' || event.key === 'Backspace' ? '' : event.key;
    const other = taken(key, input);
    if (other) {
      say(`That key is taken: ${DEEDS.find((d) => d[0] === other.name)[1]}.`);
      return;
    }
    input.dataset.key = key;
    input.value = keyName(key);
    keep(collect());
  });
  tr.insertCell().append(input);
}

await listen();
on.checked = keySettings().on !== false;
on.addEventListener('change', () => keep(collect()));
DEEDS.forEach(row);
document.getElementById('keys-usual').addEventListener('click', async () => {
  await keep({ on: true, keys: {} });
  location.reload();
});
