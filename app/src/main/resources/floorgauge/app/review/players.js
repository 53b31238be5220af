// The roster, and who is who on a film. A suggestion is set only when it is pressed.

import { listen } from './keys.js';
import { say, send } from './server.js';

async function keep(row) {
  const field = (name) => row.querySelector(`[name=${name}]`);
  const number = field('number').value;
  try {
    const done = await send('/do/player', {
      id: row.dataset.player,
      name: field('name').value,
      number: number === '' ? null : Number(number),
      squad: field('squad').value,
      position: field('position').value,
      active: field('active').checked,
    });
    say(done.said);
    if (row.dataset.player === '') {
      location.reload();
    }
  } catch (failure) {
    say(failure.message);
  }
}

async function assign(table, row, player) {
  try {
    const done = await send('/do/assign', { film: table.dataset.film, track: Number(row.dataset.track), player });
    row.querySelector('select').value = player;
    row.querySelector('.take')?.remove();
    say(`Track ${row.dataset.track}: ${done.said}`);
  } catch (failure) {
    say(failure.message);
  }
}

document.getElementById('roster')?.addEventListener('click', (event) => {
  if (event.target.closest('button')) {
    keep(event.target.closest('tr'));
  }
});
const who = document.getElementById('who');
who?.addEventListener('change', (event) => assign(who, event.target.closest('tr'), event.target.value));
who?.addEventListener('click', (event) => {
  const button = event.target.closest('button.take');
  if (button) {
    assign(who, button.closest('tr'), button.dataset.player);
  }
});
listen();
