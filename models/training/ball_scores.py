"""What the ball network is asked for, and how its answers are scored."""

import math

import numpy as np
import torch

from ball_network import STRIDE, best_balls
from drawn_balls import BALL, IGNORED

LEAST_SPREAD = 3.0  # pixels: a small ball's neighbours are no mistakes yet
NEAR = 4.0  # pixels: a hit lies within this or within the ball's radius
UNLABELLED_WEIGHT = 0.15  # of the rest of a photograph that may hold balls nobody labelled
LABELLED = (BALL, IGNORED)


def loss(heads, balls, doubtful):
    """Penalty-reduced focal loss at the centres (Lin and others, 2017; Law and Deng, 2018) and a smooth L1 loss on offset and log
    radius. heads [n, 4, h, w], balls [n, m, 4], doubtful [n] says which pictures may hold unlabelled balls."""
    n, m, _ = balls.shape
    h, w = heads.shape[2:]
    columns = torch.arange(w, device=heads.device).float() * STRIDE
    rows = torch.arange(h, device=heads.device).float() * STRIDE
    spread = (balls[:, :, 2:3] * 0.6).clamp(min=LEAST_SPREAD)
    gx = torch.exp(-((columns - balls[:, :, :1]) ** 2) / (2 * spread**2))
    gy = torch.exp(-((rows - balls[:, :, 1:2]) ** 2) / (2 * spread**2))
    near = gy.unsqueeze(3) * gx.unsqueeze(2)
    kind = balls[:, :, 3, None, None]
    heat = (near * (kind == BALL)).amax(1)
    ignored = (near * (kind == IGNORED)).amax(1) > 0.1
    live = balls[:, :, 3] == BALL
    cx = (balls[:, :, 0] / STRIDE).round().long().clamp(0, w - 1)
    cy = (balls[:, :, 1] / STRIDE).round().long().clamp(0, h - 1)
    picture = torch.arange(n, device=heads.device).view(n, 1).expand(n, m)
    centre = torch.zeros_like(heat)
    centre[picture[live], cy[live], cx[live]] = 1
    p = torch.sigmoid(heads[:, 0]).clamp(1e-5, 1 - 1e-5)
    weight = torch.where(doubtful, UNLABELLED_WEIGHT, 1.0).view(n, 1, 1) * (1 - centre) * ~ignored
    found = -torch.log(p) * (1 - p) ** 2 * centre
    false = -torch.log(1 - p) * p**2 * (1 - heat) ** 4 * weight
    count = live.sum().clamp(min=1)
    there = heads[picture[live], :, cy[live], cx[live]]
    wanted = torch.stack(
        [
            balls[:, :, 0][live] / STRIDE - cx[live],
            balls[:, :, 1][live] / STRIDE - cy[live],
            torch.log(balls[:, :, 2][live].clamp(min=1)),
        ],
        1,
    )
    place = torch.nn.functional.smooth_l1_loss(there[:, 1:4], wanted, reduction="sum", beta=0.1) / count
    return (found.sum() + false.sum()) / count, place


def score(network, x, balls, device):
    """Average precision, recall where precision reaches 0.95, and the number of balls asked for."""
    answers, asked = [], 0
    for k in range(0, len(x), 16):
        with torch.no_grad():
            found = best_balls(network(x[k : k + 16].float().to(device)).float()).cpu()
        for picture, truth in zip(found.tolist(), balls[k : k + 16].tolist()):
            asked += sum(1 for b in truth if b[3] == BALL)
            answers += judged(picture, truth)
    answers.sort(key=lambda a: -a[0])
    hits = np.cumsum([a[1] for a in answers]) if answers else np.zeros(1)
    precision = hits / np.arange(1, len(hits) + 1)
    recall = hits / max(1, asked)
    envelope = np.maximum.accumulate(precision[::-1])[::-1]
    average = float(np.sum(np.diff(np.concatenate([[0], recall])) * envelope))
    at = max((r for r, p in zip(recall, precision) if p >= 0.95), default=0.0)
    return [round(average, 4), round(float(at), 4), asked]


def judged(found, truth):
    """(score, hit) of each answer, best first one to one; answers at ignored balls count neither way."""
    out, used = [], set()
    for s, x, y, _ in sorted(found, key=lambda f: -f[0]):
        if s <= 0:
            continue
        nearest = min(
            (math.hypot(x - b[0], y - b[1]) / max(NEAR, b[2]), j)
            for j, b in enumerate(truth + [[1e9, 1e9, 1, BALL]])
            if j not in used and (j == len(truth) or b[3] in LABELLED)
        )
        if nearest[0] > 1:
            out.append((s, False))
        elif truth[nearest[1]][3] == BALL:
            used.add(nearest[1])
            out.append((s, True))
    return out
