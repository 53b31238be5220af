// The time rule: a ruler in seconds with named ticks, the instant, and the two ends of the finding, all of which can be
// moved by pointer and by keyboard.

import { arrow, el, set } from './draw.js';

const WIDTH = 1000;
const SIDE = 16;
const KEY_STEP = 0.04;
const BIG_STEP = 0.4;

export class Rule {
  constructor(svg, data, clock, onSpan) {
    Object.assign(this, { svg, data, clock, onSpan });
    this.span = [data.start, data.end];
    // Letters and grips keep their size on the screen, however narrow the rule is drawn.
    this.type = Math.max(13, (12.5 * WIDTH) / Math.max(300, svg.clientWidth || WIDTH));
    this.unit = this.type / 13;
    this.rows();
    this.base();
    this.handles();
    clock.onChange((time) => this.show(time));
    this.show(clock.time);
  }

  x(time) {
    return SIDE + ((time - this.data.from) / (this.data.to - this.data.from)) * (WIDTH - 2 * SIDE);
  }

  time(x) {
    return this.data.from + ((x - SIDE) / (WIDTH - 2 * SIDE)) * (this.data.to - this.data.from);
  }

  /** Puts the words of ticks on rows so that none runs into another. */
  rows() {
    const ends = [];
    const letter = this.type * 0.56;
    this.placed = this.data.ticks
      .filter((t) => t.at >= this.data.from && t.at <= this.data.to)
      .map((tick) => {
        const x = this.x(tick.at);
        const width = tick.words.length * letter;
        const anchor = x < width / 2 + 4 ? 'start' : x > WIDTH - width / 2 - 4 ? 'end' : 'middle';
        const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
        let row = 0;
        while (row < ends.length && ends[row] > left - 8) {
          row++;
        }
        ends[row] = left + width;
        return { tick, x, row, anchor };
      });
    this.delays = this.data.marks.filter((m) => m.draws === 'delay');
    this.top = 10 + ends.length * (this.type + 4) + this.delays.length * (this.type + 12);
    this.height = this.top + 30 * this.unit + this.type + 14;
    set(this.svg, { viewBox: `0 0 ${WIDTH} ${this.height}` });
  }

  base() {
    const y = this.top;
    const group = el('g');
    this.bar = el('rect', { class: 'span-bar', y: y - 5 * this.unit, height: 10 * this.unit });
    group.append(this.bar, el('line', { class: 'rule-line', x1: SIDE, y1: y, x2: WIDTH - SIDE, y2: y }));
    const length = this.data.to - this.data.from;
    const step = length > 12 ? 1 : length > 6 ? 0.5 : 0.1;
    for (let i = Math.ceil(this.data.from / step); i * step <= this.data.to; i++) {
      const time = i * step;
      const whole = Math.abs(time - Math.round(time)) < 1e-6;
      const x = this.x(time);
      group.append(el('line', { class: 'tick', x1: x, y1: y, x2: x, y2: y + (whole ? 9 : 5) * this.unit }));
      if (whole) {
        const text = el('text', { class: 'scale', x, y: y + 13 * this.unit + this.type, 'text-anchor': 'middle', 'font-size': this.type });
        text.textContent = `${Math.round(time)} s`;
        group.append(text);
      }
    }
    const words = this.delays.length * (this.type + 12);
    for (const { tick, x, row, anchor } of this.placed) {
      const at = this.type + words + row * (this.type + 4);
      if (tick.error > 0) {
        const left = this.x(Math.max(this.data.from, tick.at - tick.error));
        const right = this.x(Math.min(this.data.to, tick.at + tick.error));
        group.append(el('line', { class: 'tick-error', x1: left, y1: y - 8, x2: right, y2: y - 8 }));
      }
      group.append(el('line', { class: 'tick named', x1: x, y1: at + 3, x2: x, y2: y }));
      const text = el('text', { class: 'tick-words haloed', x, y: at, 'text-anchor': anchor, 'font-size': this.type });
      text.textContent = tick.words;
      group.append(text);
    }
    this.delays.forEach((delay, i) => this.delay(group, delay, this.type + 8 + i * (this.type + 12)));
    this.svg.append(group);
    this.describe();
  }

  delay(group, delay, y) {
    const a = this.x(Math.max(this.data.from, delay.begins));
    const b = this.x(Math.min(this.data.to, delay.ends));
    const dimension = el('g', { class: `dimension${delay.beyond ? ' beyond' : ''}` });
    const inside = b - a > 24;
    dimension.append(
      el('line', { class: 'extension-line', x1: a, y1: y - 4, x2: a, y2: this.top }),
      el('line', { class: 'extension-line', x1: b, y1: y - 4, x2: b, y2: this.top }),
      el('line', { class: 'dimension-line', x1: inside ? a : a - 13, y1: y, x2: inside ? b : b + 13, y2: y }),
      el('polygon', { class: 'arrowhead', points: arrow(a, y, inside ? -1 : 1, 0) }),
      el('polygon', { class: 'arrowhead', points: arrow(b, y, inside ? 1 : -1, 0) }),
    );
    const right = b + 18 + delay.text.length * this.type * 0.6 < WIDTH;
    const text = el('text', {
      class: 'dimension-label',
      x: right ? b + 18 : a - 18,
      y: y + this.type * 0.35,
      'text-anchor': right ? 'start' : 'end',
      'font-size': this.type,
    });
    text.textContent = `${delay.name} ${delay.text}`;
    dimension.append(text);
    group.append(dimension);
  }

  describe() {
    const words = this.placed.map((p) => `${p.tick.words} at ${p.tick.at.toFixed(2)} s`).join(', ');
    set(this.svg, { role: 'group', 'aria-label': `Time rule from ${this.data.from.toFixed(1)} to ${this.data.to.toFixed(1)} s${words ? `: ${words}` : ''}` });
  }

  handles() {
    this.from = this.handle('span-end', 'Start of the finding', (t) => this.setSpan(t, this.span[1]));
    this.to = this.handle('span-end', 'End of the finding', (t) => this.setSpan(this.span[0], t));
    this.now = this.handle('instant', 'Instant shown', (t) => {
      this.clock.stop();
      this.clock.seek(t);
    });
    const y = this.top;
    const u = this.unit;
    this.from.append(el('rect', { class: 'grip', x: -16 * u, y: y - 22 * u, width: 32 * u, height: 44 * u }), el('path', { class: 'bracket', d: `M${6 * u} ${y - 13 * u}H0V${y + 13 * u}H${6 * u}` }));
    this.to.append(el('rect', { class: 'grip', x: -16 * u, y: y - 22 * u, width: 32 * u, height: 44 * u }), el('path', { class: 'bracket', d: `M${-6 * u} ${y - 13 * u}H0V${y + 13 * u}H${-6 * u}` }));
    this.now.append(
      el('rect', { class: 'grip', x: -16 * u, y: y - 30 * u, width: 32 * u, height: 60 * u }),
      el('line', { class: 'instant-line', x1: 0, y1: 2, x2: 0, y2: y + 12 * u }),
      el('polygon', { class: 'instant-head', points: `0,${y + 2 * u} ${-7 * u},${y + 16 * u} ${7 * u},${y + 16 * u}` }),
    );
    this.svg.addEventListener('pointerdown', (event) => {
      if (!event.target.closest('[role=slider]')) {
        this.clock.stop();
        this.clock.seek(this.timeAt(event));
        this.drag(this.now, event);
      }
    });
  }

  timeAt(event) {
    const box = this.svg.getBoundingClientRect();
    return this.time(((event.clientX - box.left) / box.width) * WIDTH);
  }

  handle(name, words, move) {
    const handle = el('g', {
      class: `handle ${name}`,
      role: 'slider',
      tabindex: '0',
      'aria-label': words,
      'aria-valuemin': this.data.from.toFixed(2),
      'aria-valuemax': this.data.to.toFixed(2),
    });
    handle.move = (time) => move(Math.min(this.data.to, Math.max(this.data.from, time)));
    handle.addEventListener('pointerdown', (event) => this.drag(handle, event));
    handle.addEventListener('keydown', (event) => {
      const steps = { ArrowLeft: -KEY_STEP, ArrowDown: -KEY_STEP, ArrowRight: KEY_STEP, ArrowUp: KEY_STEP, PageDown: -BIG_STEP, PageUp: BIG_STEP };
      const now = Number(handle.getAttribute('aria-valuenow'));
      if (event.key in steps) {
        handle.move(now + steps[event.key]);
      } else if (event.key === 'Home') {
        handle.move(this.data.from);
      } else if (event.key === 'End') {
        handle.move(this.data.to);
      } else {
        return;
      }
      event.preventDefault();
    });
    this.svg.append(handle);
    return handle;
  }

  drag(handle, event) {
    event.preventDefault();
    handle.focus();
    this.svg.setPointerCapture(event.pointerId);
    const follow = (e) => handle.move(this.timeAt(e));
    const end = () => {
      this.svg.removeEventListener('pointermove', follow);
      this.svg.removeEventListener('pointerup', end);
      this.svg.removeEventListener('pointercancel', end);
    };
    this.svg.addEventListener('pointermove', follow);
    this.svg.addEventListener('pointerup', end);
    this.svg.addEventListener('pointercancel', end);
  }

  setSpan(from, to) {
    this.span = from <= to ? [from, to] : [to, from];
    this.clock.span = this.span;
    this.show(this.clock.time);
    this.onSpan(...this.span);
  }

  show(time) {
    const value = (handle, t) =>
      set(handle, { 'aria-valuenow': t.toFixed(2), 'aria-valuetext': `${t.toFixed(2)} seconds`, transform: `translate(${this.x(t).toFixed(1)} 0)` });
    value(this.from, this.span[0]);
    value(this.to, this.span[1]);
    value(this.now, Math.min(this.data.to, Math.max(this.data.from, time)));
    set(this.bar, { x: this.x(this.span[0]), width: Math.max(0, this.x(this.span[1]) - this.x(this.span[0])) });
  }
}
