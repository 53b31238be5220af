// The one clock of the finding view: everything is drawn for its time, and it is the film's own where there is film.

const SPEEDS = [1, 0.5, 0.25];

/** Index of the last of ascending times that is not after a time; 0 where all are. */
export function indexAt(times, time) {
  let low = 0;
  let high = times.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (times[middle] <= time) {
      low = middle;
    } else {
      high = middle - 1;
    }
  }
  return low;
}

/** What both clocks have: a stretch of time, a span to go round in, a speed, and who wants to know the time. */
class Clock {
  constructor(from, to) {
    Object.assign(this, { from, to, time: from, playing: false, speed: 0, looping: false, span: [from, to] });
    this.watchers = [];
  }

  onChange(watcher) {
    this.watchers.push(watcher);
  }

  tell() {
    this.watchers.forEach((w) => w(this.time));
  }

  /** Takes the next speed. @return what part of the whole it is */
  slower() {
    this.speed = (this.speed + 1) % SPEEDS.length;
    this.pace(SPEEDS[this.speed]);
    this.tell();
    return SPEEDS[this.speed];
  }

  loop() {
    this.looping = !this.looping;
    this.tell();
    return this.looping;
  }

  toggle() {
    if (this.playing) {
      this.stop();
    } else {
      this.play();
    }
  }

  held(time) {
    return Math.min(this.to, Math.max(this.from, time));
  }
}

/** A clock for what has no film: it runs only while it is played. */
export class FreeClock extends Clock {
  constructor(from, to, step) {
    super(from, to);
    this.step = step;
  }

  /** The speed is read with every tick. */
  pace() {}

  seek(time) {
    this.time = this.held(time);
    this.tell();
  }

  frame(by) {
    this.stop();
    this.seek(this.time + by * this.step);
  }

  play() {
    if (this.time >= this.to - this.step / 2) {
      this.time = this.looping ? this.span[0] : this.from;
    }
    this.playing = true;
    let last = null;
    const run = (now) => {
      if (!this.playing) {
        return;
      }
      if (last !== null) {
        this.advance(((now - last) / 1000) * SPEEDS[this.speed]);
      }
      last = now;
      requestAnimationFrame(run);
    };
    requestAnimationFrame(run);
    this.tell();
  }

  advance(seconds) {
    this.time += seconds;
    const end = this.looping ? this.span[1] : this.to;
    if (this.time >= end) {
      if (this.looping) {
        this.time = this.span[0];
      } else {
        this.time = end;
        this.playing = false;
      }
    }
    this.tell();
  }

  stop() {
    this.playing = false;
    this.tell();
  }
}

/** A clock that is a film: its time is that of the frame on the screen, by the film's own table of times. */
export class FilmClock extends Clock {
  constructor(video, from, to, times) {
    super(from, to);
    Object.assign(this, { video, times });
    video.addEventListener('play', () => this.mark(true));
    video.addEventListener('pause', () => this.mark(false));
    if ('requestVideoFrameCallback' in video) {
      const shown = (now, data) => {
        this.shown(data.mediaTime);
        video.requestVideoFrameCallback(shown);
      };
      video.requestVideoFrameCallback(shown);
    } else {
      video.addEventListener('timeupdate', () => this.shown(video.currentTime));
      video.addEventListener('seeked', () => this.shown(video.currentTime));
    }
  }

  mark(playing) {
    this.playing = playing;
    this.tell();
  }

  pace(part) {
    this.video.playbackRate = part;
  }

  /** Index of the frame that is on the screen at a time. */
  index(time) {
    return indexAt(this.times, time + 1e-4);
  }

  shown(mediaTime) {
    this.time = this.times.length > 0 ? this.times[this.index(mediaTime + 0.002)] : mediaTime;
    const end = this.looping ? this.span[1] : this.to;
    if (this.playing && this.time >= end - 1e-3) {
      if (this.looping) {
        this.video.currentTime = this.inside(this.span[0]);
      } else {
        this.video.pause();
      }
    }
    this.tell();
  }

  /** A time within the frame, so that rounding never shows the one before. */
  inside(time) {
    if (this.times.length < 2) {
      return time;
    }
    const i = this.index(time);
    const next = i + 1 < this.times.length ? this.times[i + 1] : this.times[i] + 0.02;
    return this.times[i] + Math.min(0.5 * (next - this.times[i]), 0.01);
  }

  seek(time) {
    const held = this.held(time);
    this.time = this.times.length > 0 ? this.times[this.index(held)] : held;
    this.video.currentTime = this.inside(held);
    this.tell();
  }

  frame(by) {
    this.video.pause();
    if (this.times.length > 0) {
      const i = Math.min(this.times.length - 1, Math.max(0, this.index(this.time) + by));
      this.seek(this.times[i]);
    }
  }

  play() {
    if (this.time >= this.to - 0.05 || this.time < this.from) {
      this.seek(this.looping ? this.span[0] : this.from);
    }
    this.video.play();
  }

  stop() {
    this.video.pause();
  }
}
