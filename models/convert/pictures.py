"""Drawn pictures for parity checks and golden tensors: a figure of ellipses on a gym-like ground. Blue first, 8-bit."""

import cv2
import numpy as np

LIMBS = [  # from, to as shares of the figure's height from its top and of its width from its left; thickness as a share
    ((0.07, 0.50), (0.07, 0.50), 0.13),
    ((0.18, 0.50), (0.48, 0.50), 0.22),
    ((0.20, 0.35), (0.36, 0.16), 0.07),
    ((0.36, 0.16), (0.50, 0.22), 0.06),
    ((0.20, 0.65), (0.36, 0.84), 0.07),
    ((0.36, 0.84), (0.46, 0.70), 0.06),
    ((0.50, 0.42), (0.74, 0.30), 0.10),
    ((0.74, 0.30), (0.97, 0.26), 0.08),
    ((0.50, 0.58), (0.74, 0.68), 0.10),
    ((0.74, 0.68), (0.97, 0.76), 0.08),
]
SKIN, SHIRT, TROUSERS = (110, 140, 190), (40, 40, 190), (60, 40, 30)
COLOURS = [SKIN, SHIRT, SKIN, SKIN, SKIN, SKIN, TROUSERS, SKIN, TROUSERS, SKIN]


def figure_picture(width, height, boxes):
    """A picture with one figure in each box (left, top, width, height)."""
    rows = np.linspace(150, 190, height)[:, None, None]
    picture = np.broadcast_to(rows + np.array([-30.0, 0.0, 25.0]), (height, width, 3)).copy()
    picture = np.clip(picture, 0, 255).astype(np.uint8)
    for left, top, w, h in boxes:
        for ((y0, x0), (y1, x1), share), colour in zip(LIMBS, COLOURS):
            start = (round(left + x0 * w), round(top + y0 * h))
            end = (round(left + x1 * w), round(top + y1 * h))
            cv2.line(picture, start, end, colour, max(1, round(share * h)), cv2.LINE_AA)
    return picture
