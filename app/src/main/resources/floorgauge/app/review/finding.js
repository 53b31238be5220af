// The finding view: film and plan at one instant, the time rule, the verdict and its corrections.

import { FilmClock, FreeClock } from './clock.js';
import { does, listen } from './keys.js';
import { Overlay } from './overlay.js';
import { Plan } from './plan.js';
import { Rule } from './rule.js';
import { deedName, read, say, send } from './server.js';

const page = document.getElementById('finding');
const byId = (id) => document.getElementById(id);
const form = byId('correct');
let clock = null;
let rule = null;

function press(id) {
  byId(id)?.click();
}

/** What is judged, as the server names it. */
function judged() {
  if (page.dataset.finding) {
    return { finding: page.dataset.finding };
  }
  return page.dataset.subject ? { subject: page.dataset.subject } : { film: page.dataset.film };
}

function corrections() {
  const roles = Array.from(form.querySelectorAll('.role'))
    .map((row) => ({ role: row.querySelector('.role-word').value, track: Number(row.querySelector('.role-track').value) }))
    .filter((r) => r.role !== '');
  return {
    from: Number(byId('from').value),
    to: Number(byId('to').value),
    kind: byId('kind').value,
    label: byId('label').value,
    roles,
    grade: Number(form.querySelector('input[name=grade]:checked').value),
    note: byId('note').value,
  };
}

async function judge(answer, extra = {}) {
  try {
    const done = await send('/do/verdict', { id: deedName(), answer, ...judged(), ...extra });
    show(done.answer, done.state);
    say(done.said);
    if (page.dataset.byHand) {
      location.assign(`/kept/${done.subject}`);
    }
  } catch (failure) {
    say(failure.message);
  }
}

function show(answer, state) {
  for (const button of page.querySelectorAll('button[data-answer]')) {
    button.setAttribute('aria-pressed', String(button.dataset.answer === answer));
  }
  const word = page.querySelector('.state');
  if (word) {
    word.textContent = state;
  }
}

/** Takes the film's last verdict back, or gives it back. */
async function turn(address) {
  try {
    const done = await send(address, { film: page.dataset.film });
    const here = page.dataset.finding ? done.finding === page.dataset.finding : done.subject === page.dataset.subject;
    if (here) {
      show(done.answer, done.state);
    }
    say(here || done.subject === '' ? done.said : `${done.said} It is another finding's.`);
  } catch (failure) {
    say(failure.message);
  }
}

form.addEventListener('submit', (event) => {
  event.preventDefault();
  judge('RIGHT', corrections());
});
const LOOK_AGAIN = 700;

/** Cutting may take a while, so it is asked after until it is done. */
async function cutClip() {
  const finding = page.dataset.finding;
  say((await send('/do/clip', { finding })).said);
  for (;;) {
    const { said } = await read(`/data/clip/${finding}`);
    if (said !== '') {
      say(said);
      return;
    }
    await new Promise((go) => setTimeout(go, LOOK_AGAIN));
  }
}

byId('clip')?.addEventListener('click', () => cutClip().catch((failure) => say(failure.message)));
byId('take-back').addEventListener('click', () => turn('/do/take-back'));
byId('give-back').addEventListener('click', () => turn('/do/give-back'));
for (const button of page.querySelectorAll('button[data-answer]')) {
  button.addEventListener('click', () => judge(button.dataset.answer));
}

/** Fields and rule say the same. */
function spanFields(from, to) {
  byId('from').value = from.toFixed(2);
  byId('to').value = to.toFixed(2);
}

for (const id of ['from', 'to']) {
  byId(id).addEventListener('input', () => {
    const from = Number(byId('from').value);
    const to = Number(byId('to').value);
    if (rule && Number.isFinite(from) && Number.isFinite(to) && from <= to) {
      rule.span = [from, to];
      rule.show(clock.time);
      clock.span = [from, to];
    }
  });
}

function transport(plan, data) {
  const spoken = byId('plan-words');
  const now = byId('now');
  const play = byId('play');
  const words = (time) => {
    now.textContent = `${time.toFixed(2)} s`;
    const deed = clock.playing ? 'Stop' : 'Play';
    if (play.textContent !== deed) {
      play.textContent = deed;
    }
    if (!clock.playing) {
      spoken.textContent = plan.words(time);
      byId('plan').setAttribute('aria-label', plan.words(time));
    }
  };
  clock.onChange(words);
  play.addEventListener('click', () => clock.toggle());
  byId('earlier').addEventListener('click', () => clock.frame(-1));
  byId('later').addEventListener('click', () => clock.frame(1));
  byId('slower').addEventListener('click', () => {
    const speed = clock.slower();
    byId('slower').textContent = `Speed: ${speed === 1 ? 'whole' : speed === 0.5 ? 'half' : 'quarter'}`;
  });
  byId('loop').addEventListener('click', () => {
    byId('loop').textContent = `Loop: ${clock.loop() ? 'on' : 'off'}`;
  });
  byId('to-moment').addEventListener('click', () => {
    clock.stop();
    clock.seek(data.moment);
  });
}

async function stage() {
  const data = await read(`/data/finding/${page.dataset.finding}`);
  if (data.missing) {
    say(data.missing);
  }
  const plan = new Plan(byId('plan'), data);
  const video = byId('film');
  let overlay = null;
  if (video && data.film) {
    const pictures = await read(data.pictures);
    overlay = new Overlay(byId('over-film'), data, pictures, plan);
    clock = new FilmClock(video, data.from, data.to, overlay.times);
    video.addEventListener('error', () => say('The film cannot be played; the plan beside it still moves by frames.'));
    video.addEventListener('loadedmetadata', () => clock.seek(data.moment), { once: true });
    video.src = data.film;
    clock.onChange((time) => overlay.show(time));
  } else {
    clock = new FreeClock(data.from, data.to, data.step);
  }
  clock.span = [data.start, data.end];
  clock.onChange((time) => plan.show(time));
  rule = new Rule(byId('rule'), data, clock, spanFields);
  transport(plan, data);
  const from = Number(byId('from').value);
  const to = Number(byId('to').value);
  if (from !== data.start || to !== data.end) {
    rule.span = [Math.max(data.from, from), Math.min(data.to, to)];
    clock.span = rule.span;
  }
  clock.seek(data.moment);
  window.floorgaugeView = { clock, overlay, plan };
  page.dataset.ready = '1';
}

const here = (end) => {
  if (rule) {
    rule.setSpan(end === 'from' ? clock.time : rule.span[0], end === 'from' ? rule.span[1] : clock.time);
    say(`It ${end === 'from' ? 'starts' : 'ends'} at ${clock.time.toFixed(2)} s; keep it to hold on to that.`);
  }
};

does('next', () => press('after'));
does('before', () => press('before'));
does('open', () => press('back'));
does('right', () => judge('RIGHT'));
does('wrong', () => judge('WRONG'));
does('cant-tell', () => judge('CANT_TELL'));
does('take-back', () => turn('/do/take-back'));
does('give-back', () => turn('/do/give-back'));
does('note', () => byId('note').focus());
does('keep', () => form.requestSubmit());
for (const grade of [1, 2, 3, 4, 5]) {
  does(`grade-${grade}`, () => {
    form.querySelector(`input[name=grade][value="${grade}"]`).checked = true;
    say(`Grade ${grade}; keep it to hold on to that.`);
  });
}
if (page.dataset.finding) {
  does('play', () => press('play'));
  does('earlier', () => press('earlier'));
  does('later', () => press('later'));
  does('slower', () => press('slower'));
  does('loop', () => press('loop'));
  does('moment', () => press('to-moment'));
  does('from-here', () => here('from'));
  does('to-here', () => here('to'));
  stage().catch((failure) => say(failure.message));
}
listen();
