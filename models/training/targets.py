"""What the detector's heads should give for labelled boxes, and the losses (Zhou and others, 2019, Objects as Points)."""

import numpy as np
import torch

STRIDE = 4
LEAST_OVERLAP = 0.7


def draw_targets(boxes, ignored, width, height):
    """Heat with a Gaussian at each box's centre, edge distances and their weight, and where the heat counts."""
    rows, columns = height // STRIDE, width // STRIDE
    heat = np.zeros((rows, columns), np.float32)
    counts = np.ones((rows, columns), np.float32)
    reach = np.zeros((4, rows, columns), np.float32)
    weight = np.zeros((rows, columns), np.float32)
    y, x = np.mgrid[0:rows, 0:columns].astype(np.float32)
    # Large ones first, so that a small person in front keeps their own distances.
    for index in sorted(range(len(boxes)), key=lambda i: -boxes[i][2] * boxes[i][3]):
        left, top, w, h = boxes[index]
        if ignored[index]:
            inside = (x * STRIDE >= left) & (x * STRIDE <= left + w) & (y * STRIDE >= top) & (y * STRIDE <= top + h)
            counts[inside] = 0
            continue
        column = min(columns - 1, int((left + w / 2) / STRIDE))
        row = min(rows - 1, int((top + h / 2) / STRIDE))
        spread_x, spread_y = max(0.6, 0.12 * w / STRIDE), max(0.6, 0.12 * h / STRIDE)
        bump = np.exp(-((x - column) ** 2) / (2 * spread_x**2) - ((y - row) ** 2) / (2 * spread_y**2))
        heat = np.maximum(heat, bump)
        heat[row, column] = 1
        counts[row, column] = 1
        near = bump > LEAST_OVERLAP
        near[row, column] = True
        edges = (x * STRIDE - left, y * STRIDE - top, left + w - x * STRIDE, top + h - y * STRIDE)
        for channel, distance in enumerate(edges):
            reach[channel][near] = distance[near]
        weight[near] = 1 / near.sum()
    return heat, counts, reach, weight


def heat_loss(heat, wanted, counts):
    """Focal loss with penalty reduced round the centres (Law and Deng, 2018, CornerNet, equation 1)."""
    heat = heat.clamp(1e-4, 1 - 1e-4)
    centres = (wanted == 1).float()
    found = (1 - heat) ** 2 * torch.log(heat) * centres
    missed = (1 - wanted) ** 4 * heat**2 * torch.log(1 - heat) * (1 - centres) * counts
    return -(found + missed).sum() / centres.sum().clamp(min=1)


def box_loss(reach, wanted, weight):
    """One less the generalised intersection over union of boxes round the same point (Rezatofighi and others, 2019)."""
    reach = reach.clamp(min=0.01)
    wanted = wanted.clamp(min=0.01)
    smaller, larger = torch.minimum(reach, wanted), torch.maximum(reach, wanted)
    common = (smaller[:, 0] + smaller[:, 2]) * (smaller[:, 1] + smaller[:, 3])
    hull = (larger[:, 0] + larger[:, 2]) * (larger[:, 1] + larger[:, 3])
    areas = (reach[:, 0] + reach[:, 2]) * (reach[:, 1] + reach[:, 3]) + (wanted[:, 0] + wanted[:, 2]) * (wanted[:, 1] + wanted[:, 3])
    union = areas - common
    generalised = common / union - (hull - union) / hull
    return ((1 - generalised) * weight).sum() / weight.sum().clamp(min=1e-6)
