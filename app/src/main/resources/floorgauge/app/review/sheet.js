// The morning sheet: move from finding to finding, and judge them where they stand.

import { deedName, say, send } from './server.js';
import { does, listen } from './keys.js';

const sheet = document.getElementById('sheet');
const articles = Array.from(sheet.querySelectorAll('article.finding'));

/** The finding that keys speak of: the one that has the focus, else the first in view. */
function current() {
  const focused = document.activeElement?.closest('article.finding');
  if (focused) {
    return focused;
  }
  return articles.find((a) => a.getBoundingClientRect().bottom > 80);
}

function move(by) {
  const focused = document.activeElement?.closest('article.finding');
  const at = focused ? articles.indexOf(focused) + by : Math.max(0, articles.indexOf(current()));
  const next = articles[Math.min(articles.length - 1, Math.max(0, at))];
  next?.focus();
  next?.scrollIntoView({ block: 'start' });
}

/** Shows a verdict on the article and in the list at the top. */
function show(article, answer, state) {
  article.classList.remove('judged', 'right', 'wrong', 'cant-tell');
  if (answer) {
    article.classList.add('judged', answer.toLowerCase().replace('_', '-'));
  }
  for (const button of article.querySelectorAll('button[data-answer]')) {
    button.setAttribute('aria-pressed', String(button.dataset.answer === answer));
  }
  article.querySelector('.state').textContent = state;
  const listed = sheet.querySelector(`li[data-listed="${CSS.escape(article.dataset.finding)}"] .state`);
  if (listed) {
    listed.textContent = state;
  }
}

async function judge(article, answer) {
  if (!article) {
    return;
  }
  try {
    const done = await send('/do/verdict', { id: deedName(), finding: article.dataset.finding, answer });
    show(article, done.answer, done.state);
    say(`Finding ${article.querySelector('.number').textContent}: ${done.state}.`);
  } catch (failure) {
    say(failure.message);
  }
}

/** Takes the film's last verdict back, or gives it back. */
async function turn(address) {
  try {
    const done = await send(address, { film: sheet.dataset.film });
    const article = articles.find((a) => a.dataset.finding === done.finding);
    if (article) {
      show(article, done.answer, done.state);
      article.focus();
    }
    say(done.said);
  } catch (failure) {
    say(failure.message);
  }
}

sheet.addEventListener('click', (event) => {
  const button = event.target.closest('button[data-answer]');
  if (button) {
    judge(button.closest('article.finding'), button.dataset.answer);
  }
});

does('next', () => move(1));
does('before', () => move(-1));
does('open', () => {
  const article = current();
  if (article) {
    location.assign(`/finding/${article.dataset.finding}`);
  }
});
does('right', () => judge(current(), 'RIGHT'));
does('wrong', () => judge(current(), 'WRONG'));
does('cant-tell', () => judge(current(), 'CANT_TELL'));
does('take-back', () => turn('/do/take-back'));
does('give-back', () => turn('/do/give-back'));

/** A button beside the links at the top: none of them does anything without this script. */
function button(id, words, deed) {
  const made = document.createElement('button');
  made.type = 'button';
  made.id = id;
  made.textContent = words;
  made.addEventListener('click', deed);
  sheet.querySelector('.ways').append(made);
}

button('write-labels', 'Write the label file for score', async () => {
  try {
    say((await send('/do/labels', { film: sheet.dataset.film })).said);
  } catch (failure) {
    say(failure.message);
  }
});
button('take-back', 'Take the last verdict back', () => turn('/do/take-back'));
button('give-back', 'Give it back', () => turn('/do/give-back'));

document.getElementById('practice-note').addEventListener('change', async (event) => {
  try {
    say((await send('/do/note', { film: sheet.dataset.film, note: event.target.value })).said);
  } catch (failure) {
    say(failure.message);
  }
});

listen();
const wanted = location.hash.startsWith('#finding-') ? document.getElementById(location.hash.slice(1)) : null;
wanted?.focus();
