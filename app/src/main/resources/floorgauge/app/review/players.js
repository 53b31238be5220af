// The roster, and who is who on a film. A suggestion is set only when it is pressed.

import { listen } from './keys.js';
import { say, send } from './server.js';

const who = document.getElementById('who');

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

/** Suggestions follow from what was said of the other tracks, so the page is read anew where it stands. */
async function renew() {
  const response = await fetch(location.href);
  const fresh = new DOMParser().parseFromString(await response.text(), 'text/html');
  who.tBodies[0].replaceWith(fresh.getElementById('who').tBodies[0]);
  const all = fresh.getElementById('take-all');
  document.getElementById('take-all')?.remove();
  if (all) {
    document.querySelector('.ways').append(all);
  }
}

async function assign(choices) {
  try {
    for (const [track, player] of choices) {
      await send('/do/assign', { film: who.dataset.film, track, player });
    }
    await renew();
    who.querySelector(`tr[data-track="${choices[0][0]}"] select`).focus();
    const whose = choices.length === 1 ? `Track ${choices[0][0]}` : `${choices.length} tracks`;
    say(choices.length === 1 && choices[0][1] === '' ? `${whose}: taken back.` : `${whose}: kept for this film.`);
  } catch (failure) {
    say(failure.message);
  }
}

function choiceOf(element, player) {
  return [Number(element.closest('tr').dataset.track), player];
}

document.getElementById('roster')?.addEventListener('click', (event) => {
  if (event.target.closest('button')) {
    keep(event.target.closest('tr'));
  }
});
who?.addEventListener('change', (event) => assign([choiceOf(event.target, event.target.value)]));
document.addEventListener('click', (event) => {
  const button = event.target.closest('button.take');
  if (button) {
    assign([choiceOf(button, button.dataset.player)]);
  } else if (event.target.closest('#take-all')) {
    assign(Array.from(who.querySelectorAll('button.take'), (b) => choiceOf(b, b.dataset.player)));
  }
});
listen();
