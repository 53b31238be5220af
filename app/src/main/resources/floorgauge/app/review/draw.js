// Line work: SVG elements, dimension lines, player marks. No style attributes: looks are in the style sheet.

const SPACE = 'http://www.w3.org/2000/svg';

/** An SVG element with attributes. */
export function el(name, attributes = {}, ...children) {
  const element = document.createElementNS(SPACE, name);
  set(element, attributes);
  element.append(...children);
  return element;
}

export function set(element, attributes) {
  for (const [name, value] of Object.entries(attributes)) {
    if (name === 'font-size') {
      element.style.fontSize = `${round(value)}px`;
      continue;
    }
    element.setAttribute(name, typeof value === 'number' ? round(value) : value);
  }
}

export function round(value) {
  return Math.round(value * 100) / 100;
}

/** A slim arrowhead with its tip at (x, y), pointing along (dx, dy). */
export function arrow(x, y, dx, dy, length = 7, half = 1.8) {
  const bx = x - dx * length;
  const by = y - dy * length;
  return [
    [x, y],
    [bx - dy * half, by + dx * half],
    [bx + dy * half, by - dx * half],
  ]
    .map((p) => p.map(round).join(','))
    .join(' ');
}

/** The pieces of a dimension between two places: extension lines, dimension line, arrowheads, place of the words. */
export function dimension(a, b, offset) {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const length = Math.hypot(dx, dy);
  const ux = length > 0 ? dx / length : 1;
  const uy = length > 0 ? dy / length : 0;
  const nx = uy;
  const ny = -ux;
  const at = (p, d) => [p[0] + nx * d, p[1] + ny * d];
  const side = Math.sign(offset) || 1;
  const from = at(a, offset);
  const to = at(b, offset);
  const inside = length >= 22;
  return {
    extensions: [
      [at(a, 2 * side), at(a, offset + 3 * side)],
      [at(b, 2 * side), at(b, offset + 3 * side)],
    ],
    line: inside
      ? [from, to]
      : [
          [from[0] - ux * 13, from[1] - uy * 13],
          [to[0] + ux * 13, to[1] + uy * 13],
        ],
    arrows: inside
      ? [
          [from[0], from[1], -ux, -uy],
          [to[0], to[1], ux, uy],
        ]
      : [
          [from[0], from[1], ux, uy],
          [to[0], to[1], -ux, -uy],
        ],
    words: at([(a[0] + b[0]) / 2, (a[1] + b[1]) / 2], offset + 6 * side),
    anchor: Math.abs(nx) < 0.35 ? 'middle' : nx * side > 0 ? 'start' : 'end',
  };
}

/** A role as it is written beside a mark; nothing where the mark itself says it. */
export function roleWords(role) {
  return role === 'attacker' || role === 'defender' ? '' : (role ?? '');
}
