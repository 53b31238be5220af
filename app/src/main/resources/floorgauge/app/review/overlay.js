// What was measured, drawn over the frame that is on the screen. Pixels are those of the film.

import { indexAt } from './clock.js';
import { dimension, roleWords } from './draw.js';

const LIMBS = [
  [5, 7], [7, 9], [6, 8], [8, 10], [5, 6], [5, 11], [6, 12], [11, 12], [11, 13], [13, 15], [12, 14], [14, 16],
];
const LEAST_SCORE = 0.2;
const BODY_METRES = 0.25;
const SAME_MOMENT = 0.06;
const MOST_DURATIONS = 4096;

export class Overlay {
  constructor(canvas, data, pictures, plan) {
    this.canvas = canvas;
    this.data = data;
    this.plan = plan;
    this.frames = pictures.frames;
    this.names = new Map(data.players.map((p) => [p.track, p.mark]));
    this.holders = new Map(data.roles.map((r) => [r.track, r.role]));
    this.times = this.frames.map((f) => f.at);
    this.durations = [];
    canvas.width = data.width;
    canvas.height = data.height;
    this.pen = canvas.getContext('2d');
    this.unit = data.width / 960;
  }

  pixel(place) {
    const m = this.data.floorToPixel;
    if (!m) {
      return null;
    }
    const w = m[6] * place[0] + m[7] * place[1] + m[8];
    return [(m[0] * place[0] + m[1] * place[1] + m[2]) / w, (m[3] * place[0] + m[4] * place[1] + m[5]) / w];
  }

  /** The frame of a time; null where the film's table has none within 0.02 s. */
  frame(time) {
    const i = indexAt(this.times, time);
    const near = [this.frames[i], this.frames[i + 1]].filter((f) => f !== undefined && Math.abs(f.at - time) < 0.02);
    return near.sort((a, b) => Math.abs(a.at - time) - Math.abs(b.at - time))[0] ?? null;
  }

  show(time) {
    const began = performance.now();
    const pen = this.pen;
    pen.clearRect(0, 0, this.canvas.width, this.canvas.height);
    const frame = this.frame(time);
    if (frame === null) {
      return;
    }
    this.openWindow(time);
    frame.players.filter((p) => !this.holders.has(p.track)).forEach((p) => this.player(p, false));
    frame.players.filter((p) => this.holders.has(p.track)).forEach((p) => this.player(p, true, time));
    this.ball(frame.ball);
    this.distances(time);
    frame.players.forEach((p) => this.name(p));
    this.durations.push(performance.now() - began);
    if (this.durations.length > MOST_DURATIONS) {
      this.durations.shift();
    }
  }

  stroke(path, width, holder) {
    const pen = this.pen;
    pen.lineCap = 'round';
    pen.lineJoin = 'round';
    pen.strokeStyle = 'rgb(0 0 0 / 0.55)';
    pen.lineWidth = (width + 2) * this.unit;
    path();
    pen.stroke();
    pen.strokeStyle = holder ? '#fff' : 'rgb(255 255 255 / 0.75)';
    pen.lineWidth = width * this.unit;
    path();
    pen.stroke();
  }

  player(player, holder, time) {
    const n = player.numbers;
    if (player.guessed) {
      this.hatched(n);
      return;
    }
    if (holder) {
      this.envelope(player.track, time);
    }
    const joint = (i) => (n[4 + 3 * i] === null || n[6 + 3 * i] < LEAST_SCORE ? null : [n[4 + 3 * i], n[5 + 3 * i]]);
    this.stroke(
      () => {
        this.pen.beginPath();
        for (const [a, b] of LIMBS) {
          const p = joint(a);
          const q = joint(b);
          if (p && q) {
            this.pen.moveTo(p[0], p[1]);
            this.pen.lineTo(q[0], q[1]);
          }
        }
      },
      holder ? 2 : 0.9,
      holder,
    );
  }

  /** Not seen in this frame: hatched, never guessed. */
  hatched(n) {
    if (n[0] === null) {
      return;
    }
    const pen = this.pen;
    pen.save();
    pen.beginPath();
    pen.rect(n[0], n[1], n[2], n[3]);
    pen.clip();
    pen.strokeStyle = 'rgb(255 255 255 / 0.8)';
    pen.lineWidth = this.unit;
    pen.beginPath();
    for (let x = n[0] - n[3]; x < n[0] + n[2]; x += 7 * this.unit) {
      pen.moveTo(x, n[1] + n[3]);
      pen.lineTo(x + n[3], n[1]);
    }
    pen.stroke();
    pen.restore();
  }

  /** A ring about the ball where it was seen in the picture. */
  ball(place) {
    if (place) {
      this.stroke(
        () => {
          this.pen.beginPath();
          this.pen.arc(place[0], place[1], 9 * this.unit, 0, 2 * Math.PI);
        },
        1.6,
        true,
      );
    }
  }

  envelope(track, time) {
    const place = this.plan.place(track, time);
    if (place === null || !this.data.floorToPixel) {
      return;
    }
    this.stroke(
      () => {
        this.pen.beginPath();
        for (let i = 0; i <= 24; i++) {
          const angle = (2 * Math.PI * i) / 24;
          const p = this.pixel([place[0] + BODY_METRES * Math.cos(angle), place[1] + BODY_METRES * Math.sin(angle)]);
          this.pen[i === 0 ? 'moveTo' : 'lineTo'](p[0], p[1]);
        }
      },
      1.2,
      true,
    );
  }

  openWindow(time) {
    const opens = this.data.ticks.find((t) => t.words === 'window opens');
    const closes = this.data.ticks.find((t) => t.words === 'window closes');
    const from = this.data.roles.find((r) => r.role === 'passer' || r.role === 'ball handler');
    const to = this.data.roles.find((r) => r.role === 'receiver');
    if (!opens || !from || !to || time < opens.at || (closes && time > closes.at)) {
      return;
    }
    const a = this.plan.place(from.track, time);
    const b = this.plan.place(to.track, time);
    const p = a && this.pixel(a);
    const q = b && this.pixel(b);
    if (!p || !q) {
      return;
    }
    const pen = this.pen;
    pen.fillStyle = 'rgb(255 255 255 / 0.28)';
    pen.beginPath();
    pen.moveTo(p[0], p[1]);
    pen.lineTo(q[0] - 14 * this.unit, q[1]);
    pen.lineTo(q[0] + 14 * this.unit, q[1]);
    pen.closePath();
    pen.fill();
  }

  distances(time) {
    for (const mark of this.data.marks.filter((m) => m.draws === 'distance' && Math.abs(m.at - time) <= SAME_MOMENT)) {
      const a = this.plan.place(mark.from, time);
      const b = this.plan.place(mark.to, time);
      const p = a && this.pixel(a);
      const q = b && this.pixel(b);
      if (p && q) {
        this.dimension(p, q, `${mark.name} ${mark.text}`, mark.beyond);
      }
    }
  }

  dimension(a, b, words, beyond) {
    const [right, left] = a[0] >= b[0] ? [a, b] : [b, a];
    const parts = dimension(right.map((v) => v / this.unit), left.map((v) => v / this.unit), 20);
    const scaled = (p) => p.map((v) => v * this.unit);
    this.stroke(
      () => {
        this.pen.beginPath();
        for (const [p, q] of [...parts.extensions, parts.line]) {
          this.pen.moveTo(...scaled(p));
          this.pen.lineTo(...scaled(q));
        }
      },
      1.3,
      true,
    );
    this.words(words, scaled(parts.words), beyond ? 700 : 500, parts.anchor === 'middle' ? 'center' : parts.anchor);
  }

  words(text, at, weight, align) {
    const pen = this.pen;
    pen.font = `${weight} ${13 * this.unit}px "Liberation Sans", "DejaVu Sans", Arial, sans-serif`;
    pen.textAlign = align;
    pen.lineJoin = 'round';
    pen.strokeStyle = '#fdfcf9';
    pen.lineWidth = 4 * this.unit;
    pen.strokeText(text, at[0], at[1]);
    pen.fillStyle = weight > 600 ? '#b3261e' : '#1b1b1a';
    pen.fillText(text, at[0], at[1]);
  }

  name(player) {
    const n = player.numbers;
    if (n[0] === null) {
      return;
    }
    const role = this.holders.get(player.track);
    const text = `${this.names.get(player.track) ?? `t${player.track}`} ${roleWords(role)}`.trim();
    this.words(text, [n[0] + n[2] / 2, n[1] - 4 * this.unit], role ? 600 : 400, 'center');
  }
}
