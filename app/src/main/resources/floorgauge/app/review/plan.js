// The floor from above at the clock's instant: the court's lines, everyone's mark, ways and distances.

import { arrow, dimension, el, roleWords, set } from './draw.js';

const MARGIN = 0.8;
const UNITS = 30; // of the drawing in a metre
const BODY_METRES = 0.25;
const SAME_MOMENT = 0.06;
const DOUBTFUL_METRES = 0.3; // a place known less well has its error drawn about it

export class Plan {
  constructor(svg, data) {
    this.svg = svg;
    this.data = data;
    this.court = data.court;
    this.holders = new Map();
    data.roles.forEach((r) => {
      if (!this.holders.has(r.track)) {
        this.holders.set(r.track, r.role);
      }
    });
    this.frame();
    this.lines();
    this.ways();
    this.passes();
    this.marks();
  }

  /** Court frame to drawing: the rim under attack at the top, not mirrored. */
  at(place) {
    const across = this.court.width / 2 - this.court.sign * place[1];
    const down = this.court.length / 2 - this.court.sign * place[0];
    return [across * UNITS, down * UNITS];
  }

  /** The part of the floor that everyone who matters stays on, with room. */
  frame() {
    const who = this.data.players.filter((p) => this.holders.size === 0 || this.holders.has(p.track));
    const places = who.flatMap((p) => p.way.filter((w) => w !== null).map((w) => this.at(w)));
    places.push(this.at(this.court.rim));
    const xs = places.map((p) => p[0]);
    const ys = places.map((p) => p[1]);
    const room = 2 * UNITS;
    let left = Math.max(-MARGIN * UNITS, Math.min(...xs) - room);
    let right = Math.min((this.court.width + MARGIN) * UNITS, Math.max(...xs) + room);
    const top = Math.max(-MARGIN * UNITS, Math.min(...ys) - room);
    const bottom = Math.max(...ys) + room;
    const least = (bottom - top) * 1.15;
    if (right - left < least) {
      const middle = (left + right) / 2;
      left = middle - least / 2;
      right = middle + least / 2;
    }
    this.svg.style.setProperty('--ratio', ((right - left) / (bottom - top)).toFixed(3));
    const shown = this.svg.clientWidth || 460;
    this.scale = Math.min(2.2, Math.max(0.5, (right - left) / shown));
    this.edges = [left, right];
    set(this.svg, { viewBox: [left, top, right - left, bottom - top].map(Math.round).join(' ') });
  }

  lines() {
    const group = el('g', { class: 'court' });
    for (const line of this.court.lines) {
      group.append(
        el('polyline', { class: 'court-line', points: line.map((p) => this.at(p).map((v) => v.toFixed(1)).join(',')).join(' ') }),
      );
    }
    const rim = this.at(this.court.rim);
    group.append(el('circle', { class: 'court-line', cx: rim[0], cy: rim[1], r: 0.225 * UNITS }));
    const left = this.at([this.court.board, -0.9]);
    const right = this.at([this.court.board, 0.9]);
    group.append(el('line', { class: 'court-line board', x1: left[0], y1: left[1], x2: right[0], y2: right[1] }));
    this.svg.append(group);
  }

  /** Ways of those with a role, the less certain the thinner; gaps stay open. */
  ways() {
    const group = el('g', { class: 'ways-drawn' });
    for (const player of this.data.players.filter((p) => this.holders.has(p.track))) {
      let piece = [];
      let weight = '';
      const finish = () => {
        if (piece.length > 1) {
          const side = player.attacks ? 'attacker' : 'defender';
          group.append(el('polyline', { class: `trail ${side} ${weight}`, points: piece.map((p) => p.join(',')).join(' ') }));
        }
      };
      player.way.forEach((place) => {
        const here = place === null ? '' : place[2] <= 0.2 ? 'certain' : place[2] <= 0.5 ? 'fair' : 'doubtful';
        if (here !== weight) {
          finish();
          piece = piece.length > 0 && place !== null && weight !== '' ? [piece[piece.length - 1]] : [];
          weight = here;
        }
        if (place !== null) {
          piece.push(this.at(place).map((v) => Math.round(v * 10) / 10));
        }
      });
      finish();
    }
    this.svg.append(group);
  }

  /** The ball's way while nobody held it, dashed as a pass is. */
  passes() {
    const group = el('g', { class: 'passes-drawn' });
    let piece = [];
    const finish = () => {
      if (piece.length > 1) {
        group.append(el('polyline', { class: 'ball-way', points: piece.map((p) => p.join(',')).join(' ') }));
      }
      piece = [];
    };
    for (const place of this.data.ball ?? []) {
      if (place === null || place[4] !== null) {
        finish();
      } else {
        const here = this.at(place).map((v) => Math.round(v * 10) / 10);
        const last = piece[piece.length - 1];
        // A ball that lies about, or is seen a little here and there, makes no way.
        if (!last || Math.hypot(here[0] - last[0], here[1] - last[1]) >= DOUBTFUL_METRES * UNITS) {
          piece.push(here);
        }
      }
    }
    finish();
    this.svg.append(group);
  }

  marks() {
    this.window = el('polygon', { class: 'open-window', points: '' });
    this.windowWords = el('text', { class: 'dimension-label', 'text-anchor': 'middle' });
    this.svg.append(this.window);
    this.dots = new Map();
    for (const player of this.data.players) {
      const holder = this.holders.has(player.track);
      const group = el('g', { class: `player${holder ? ' holder' : ' bystander'}` });
      const r = (holder ? 11 : 8.5) * this.scale;
      if (player.attacks) {
        group.append(el('circle', { class: 'attacker-mark', r }));
      } else {
        group.append(
          el('circle', { class: 'envelope', r: BODY_METRES * UNITS }),
          el('line', { class: 'defender-mark', x1: -r * 0.62, y1: -r * 0.62, x2: r * 0.62, y2: r * 0.62 }),
          el('line', { class: 'defender-mark', x1: -r * 0.62, y1: r * 0.62, x2: r * 0.62, y2: -r * 0.62 }),
        );
      }
      const number = el('text', {
        class: 'player-number haloed',
        'text-anchor': player.attacks ? 'middle' : 'start',
        x: player.attacks ? 0 : r * 0.8,
        y: player.attacks ? 4 * this.scale : r * 1.3,
        'font-size': (holder ? 11 : 9) * this.scale,
      });
      number.textContent = player.mark;
      group.append(number);
      const words = roleWords(this.holders.get(player.track));
      if (words) {
        const role = el('text', { class: 'role-name haloed', 'text-anchor': 'middle', y: -r - 4 * this.scale, 'font-size': 10.5 * this.scale });
        role.textContent = words;
        group.append(role);
      }
      this.dots.set(player.track, group);
      this.svg.append(group);
    }
    this.ballError = el('circle', { class: 'ball-error' });
    this.ball = el('circle', { class: 'ball', r: 4.2 * this.scale });
    this.dimensions = el('g');
    this.svg.append(this.ballError, this.ball, this.dimensions, this.windowWords);
  }

  /** The sample of the ball at a time: place, standard error, height or null, holder's track or null; null where not seen. */
  ballAt(time) {
    return this.data.ball?.[Math.round((time - this.data.from) / this.data.step)] ?? null;
  }

  /** In hands the ball stands at the shoulder of its holder's mark, so that the number can be read. */
  showBall(time) {
    const sample = this.ballAt(time);
    const holder = sample === null || sample[4] === null ? null : this.place(sample[4], time);
    const visibility = sample === null ? 'hidden' : 'visible';
    const beside = holder === null ? 0 : 8.5 * this.scale;
    const [x, y] = sample === null ? [0, 0] : this.at(holder ?? sample);
    set(this.ball, { visibility, cx: x - beside, cy: y - beside });
    const doubtful = sample !== null && holder === null && sample[2] > DOUBTFUL_METRES;
    set(this.ballError, { visibility: doubtful ? 'visible' : 'hidden', cx: x, cy: y, r: doubtful ? sample[2] * UNITS : 0 });
  }

  ballWords(time) {
    if (!this.data.ball) {
      return '';
    }
    const sample = this.ballAt(time);
    if (sample === null) {
      return ' The ball is not seen.';
    }
    const holder = this.data.players.find((p) => p.track === sample[4]);
    const height = sample[3] === null ? '' : `, ${sample[3].toFixed(1)} m up`;
    return holder ? ` ${holder.name} has the ball.` : sample[4] === null ? ` The ball is in flight${height}.` : '';
  }

  /** Where a player is at a time, by the two samples about it; null where not seen. */
  place(track, time) {
    const player = this.data.players.find((p) => p.track === track);
    if (!player) {
      return null;
    }
    const at = (time - this.data.from) / this.data.step;
    const below = player.way[Math.floor(at)] ?? null;
    const above = player.way[Math.ceil(at)] ?? null;
    if (below === null || above === null) {
      return below ?? above;
    }
    const share = at - Math.floor(at);
    return below.map((v, i) => v + share * (above[i] - v));
  }

  show(time) {
    for (const player of this.data.players) {
      const place = this.place(player.track, time);
      const dot = this.dots.get(player.track);
      set(dot, place === null ? { visibility: 'hidden' } : { visibility: 'visible', transform: `translate(${this.at(place).map((v) => v.toFixed(1)).join(' ')})` });
    }
    this.showBall(time);
    this.openWindow(time);
    this.distances(time);
  }

  /** The lane of a pass, shaded while the receiver is open. */
  openWindow(time) {
    const opens = this.data.ticks.find((t) => t.words === 'window opens');
    const closes = this.data.ticks.find((t) => t.words === 'window closes');
    const from = this.data.roles.find((r) => r.role === 'passer' || r.role === 'ball handler');
    const to = this.data.roles.find((r) => r.role === 'receiver');
    const open = opens && from && to && time >= opens.at - 1e-6 && (!closes || time <= closes.at + 1e-6);
    const a = open ? this.place(from.track, time) : null;
    const b = open ? this.place(to.track, time) : null;
    if (a === null || b === null) {
      set(this.window, { visibility: 'hidden' });
      this.windowWords.textContent = '';
      return;
    }
    const p = this.at(a);
    const q = this.at(b);
    const length = Math.hypot(q[0] - p[0], q[1] - p[1]) || 1;
    const nx = (-(q[1] - p[1]) / length) * 0.3 * UNITS;
    const ny = ((q[0] - p[0]) / length) * 0.3 * UNITS;
    set(this.window, {
      visibility: 'visible',
      points: `${p[0]},${p[1]} ${q[0] + nx},${q[1] + ny} ${q[0] - nx},${q[1] - ny}`,
    });
    set(this.windowWords, { x: (p[0] + q[0]) / 2, y: (p[1] + q[1]) / 2 - 5, 'font-size': 10.5 * this.scale });
    this.windowWords.textContent = 'open';
  }

  distances(time) {
    this.dimensions.replaceChildren();
    const drawn = new Set();
    for (const mark of this.data.marks.filter((m) => m.draws === 'distance' || m.draws === 'point')) {
      const a = this.place(mark.from, time);
      const b = mark.draws === 'point' ? [...mark.place, 0] : this.place(mark.to, time);
      const key = `${mark.from} ${mark.to ?? mark.place}`;
      const now = Math.abs(time - mark.at) <= SAME_MOMENT;
      if (a === null || b === null || (drawn.has(key) && !now)) {
        continue;
      }
      drawn.add(key);
      const metres = Math.hypot(a[0] - b[0], a[1] - b[1]);
      const error = Math.hypot(a[2], b[2]);
      const words = now ? `${mark.name} ${mark.text}` : `${metres.toFixed(2)} ± ${error.toFixed(2)} m apart`;
      this.dimensions.append(this.drawDimension(this.at(a), this.at(b), words, now && mark.beyond, now));
    }
  }

  drawDimension(a, b, words, beyond, now) {
    const parts = dimension(a, b, 20 * this.scale);
    const group = el('g', { class: `dimension${beyond ? ' beyond' : ''}${now ? ' now' : ''}` });
    parts.extensions.forEach(([p, q]) => group.append(el('line', { class: 'extension-line', x1: p[0], y1: p[1], x2: q[0], y2: q[1] })));
    const [p, q] = parts.line;
    group.append(el('line', { class: 'dimension-line', x1: p[0], y1: p[1], x2: q[0], y2: q[1] }));
    parts.arrows.forEach((x) => group.append(el('polygon', { class: 'arrowhead', points: arrow(...x) })));
    const width = words.length * 6.4 * this.scale;
    const reach = parts.anchor === 'middle' ? [width / 2, width / 2] : parts.anchor === 'start' ? [0, width] : [width, 0];
    const x = Math.min(this.edges[1] - reach[1] - 4, Math.max(this.edges[0] + reach[0] + 4, parts.words[0]));
    const text = el('text', { class: 'dimension-label', x, y: parts.words[1], 'text-anchor': parts.anchor, 'font-size': 12 * this.scale });
    text.textContent = words;
    group.append(text);
    return group;
  }

  /** The instant in words. */
  words(time) {
    const seen = this.data.players.filter((p) => this.place(p.track, time) !== null);
    const byRole = new Map();
    for (const player of seen.filter((p) => this.holders.has(p.track))) {
      const role = this.holders.get(player.track);
      byRole.set(role, [...(byRole.get(role) ?? []), player.name]);
    }
    const holders = Array.from(byRole, ([role, names]) => `${role}${names.length > 1 ? 's' : ''} ${names.join(', ')}`).join('; ');
    return `The floor from above at ${time.toFixed(2)} s, the rim under attack at the top: ${holders || `${seen.length} players`}.${this.ballWords(time)}`;
  }
}
