// Charts of the season: a mark a practice, its interval as a bar, its count above it; a mark leads to what stands behind it.

import uPlot from './uplot/uPlot.esm.js';
import { listen } from './keys.js';
import { read, say } from './server.js';

const place = document.getElementById('trends');

function colours() {
  const style = getComputedStyle(document.documentElement);
  const of = (name) => style.getPropertyValue(name).trim();
  return { ink: of('--ink'), quiet: of('--quiet'), faint: of('--faint'), paper: of('--paper') };
}

/** Bars and counts, drawn over the chart's own points. */
function marks(trend, ink) {
  return (u) => {
    const pen = u.ctx;
    const ratio = devicePixelRatio;
    pen.save();
    pen.font = `${11 * ratio}px "Liberation Sans", "DejaVu Sans", Arial, sans-serif`;
    pen.textAlign = 'center';
    trend.marks.forEach((m) => {
      const x = u.valToPos(m.at, 'x', true);
      const y = u.valToPos(m.mean, 'y', true);
      const low = u.valToPos(m.low, 'y', true);
      const high = u.valToPos(m.high, 'y', true);
      pen.strokeStyle = ink.ink;
      pen.lineWidth = 1.2 * ratio;
      pen.beginPath();
      pen.moveTo(x, low);
      pen.lineTo(x, high);
      for (const end of [low, high]) {
        pen.moveTo(x - 4 * ratio, end);
        pen.lineTo(x + 4 * ratio, end);
      }
      pen.stroke();
      pen.beginPath();
      pen.arc(x, y, 4 * ratio, 0, 2 * Math.PI);
      pen.fillStyle = m.count > 1 ? ink.ink : ink.paper;
      pen.fill();
      pen.stroke();
      pen.fillStyle = ink.ink;
      pen.fillText(`${m.count}`, x, Math.min(high, y) - 6 * ratio);
    });
    pen.restore();
  };
}

function teamLine(trend, ink) {
  return (u) => {
    const pen = u.ctx;
    const y = u.valToPos(trend.team, 'y', true);
    pen.save();
    pen.strokeStyle = ink.quiet;
    pen.setLineDash([6 * devicePixelRatio, 4 * devicePixelRatio]);
    pen.lineWidth = devicePixelRatio;
    pen.beginPath();
    pen.moveTo(u.bbox.left, y);
    pen.lineTo(u.bbox.left + u.bbox.width, y);
    pen.stroke();
    pen.fillStyle = ink.quiet;
    pen.font = `${11 * devicePixelRatio}px "Liberation Sans", "DejaVu Sans", Arial, sans-serif`;
    pen.textAlign = 'left';
    pen.fillText("team's mean", u.bbox.left + 3 * devicePixelRatio, y - 4 * devicePixelRatio);
    pen.restore();
  };
}

function draw(box, trend, first, last) {
  const ink = colours();
  const xs = trend.marks.map((m) => m.at);
  const lows = trend.marks.map((m) => m.low);
  const highs = trend.marks.map((m) => m.high);
  const low = Math.min(...lows, trend.team);
  const high = Math.max(...highs, trend.team);
  const room = (high - low || Math.abs(high) || 1) * 0.2;
  const week = 7 * 86400;
  const axis = { stroke: ink.quiet, grid: { stroke: ink.faint, width: 0.5 }, ticks: { stroke: ink.faint, width: 0.5 }, font: '11px "Liberation Sans", "DejaVu Sans", Arial, sans-serif' };
  const chart = new uPlot(
    {
      width: Math.max(280, box.clientWidth),
      height: 210,
      legend: { show: false },
      cursor: { drag: { x: false, y: false }, points: { show: false } },
      scales: {
        x: { time: true, range: [first - 1.2 * week, last + week / 2] },
        y: { range: [low - room, high + room] },
      },
      series: [{}, { stroke: ink.faint, width: 1, points: { show: false } }],
      axes: [
        { ...axis, values: (u, at) => at.map((v) => new Date(v * 1000).toLocaleDateString('en-GB', { day: 'numeric', month: 'short', timeZone: 'UTC' })), space: 60 },
        { ...axis, size: 58, values: (u, at) => at.map((v) => `${Math.round(v * 100) / 100}${trend.unit && trend.unit !== 'of 100' ? ` ${trend.unit}` : ''}`) },
      ],
      hooks: { draw: [teamLine(trend, ink), marks(trend, ink)] },
    },
    [xs, trend.marks.map((m) => m.mean)],
    box,
  );
  chart.over.addEventListener('click', (event) => {
    const left = event.offsetX;
    const near = trend.marks
      .map((m) => ({ m, far: Math.abs(chart.valToPos(m.at, 'x') - left) }))
      .sort((a, b) => a.far - b.far)[0];
    if (near && near.far < 24) {
      location.assign(near.m.address);
    }
  });
  const canvas = box.querySelector('canvas');
  canvas.setAttribute('role', 'img');
  canvas.setAttribute('aria-label', `${trend.label}: ${trend.marks.map((m) => `${m.day} mean ${m.mean.toFixed(2)} of ${m.count}`).join('; ')}`);
  return chart;
}

async function show() {
  const data = await read(`/data/trends?topic=${encodeURIComponent(place.dataset.topic)}`);
  const charts = [];
  for (const trend of data.trends) {
    const box = place.querySelector(`article[data-who="${CSS.escape(trend.who)}"] .chart`);
    if (box) {
      charts.push([box, draw(box, trend, data.first, data.last)]);
    }
  }
  addEventListener('resize', () => charts.forEach(([box, chart]) => chart.setSize({ width: Math.max(280, box.clientWidth), height: 210 })));
  place.dataset.ready = '1';
}

listen();
if (place) {
  show().catch((failure) => say(failure.message));
}
