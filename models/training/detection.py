"""What the person detector is asked for, how far it is from it, and how well it finds people.

The targets and losses are those of TTFNet (Liu and others, 2020, Training-Time-Friendly Network for Real-Time Object
Detection): Gaussians at the centres with a penalty-reduced focal loss, and a generalised-IoU loss on the distances to the four
edges, weighted by the Gaussian.
"""

import numpy as np
import torch
import torch.nn.functional as F

from pictures_with_people import IGNORED, PERSON, SIDE

STRIDE = 4
SPREAD = 0.54  # of a box that its Gaussian covers (Liu and others, section 3.2)
EDGE = 0.11  # of a Gaussian's height, down to which it teaches box edges
LEAST_SHOWN, LEAST_HEIGHT, LEAST_WIDTH = 0.25, 12, 4  # people with less are ignored


def targets(boxes, kind):
    """Heat map of centres, edge distances, their weights, and where the loss counts, all at stride 4."""
    n, m, _ = boxes.shape
    device = boxes.device
    cells = SIDE // STRIDE
    clipped = boxes.clamp(0, SIDE)
    w, h = clipped[:, :, 2] - clipped[:, :, 0], clipped[:, :, 3] - clipped[:, :, 1]
    area = (w * h).clamp(min=1e-6)
    full = ((boxes[:, :, 2] - boxes[:, :, 0]) * (boxes[:, :, 3] - boxes[:, :, 1])).clamp(min=1)
    seen = area / full
    person = (kind == PERSON) & (seen > LEAST_SHOWN) & (h >= LEAST_HEIGHT) & (w >= LEAST_WIDTH)
    ignored = ((kind == IGNORED) | ((kind == PERSON) & ~person)) & (w > 0) & (h > 0)
    centre_x = ((clipped[:, :, 0] + clipped[:, :, 2]) / 2 / STRIDE).floor()
    centre_y = ((clipped[:, :, 1] + clipped[:, :, 3]) / 2 / STRIDE).floor()
    sigma_x = (SPREAD * w / STRIDE + 1) / 6
    sigma_y = (SPREAD * h / STRIDE + 1) / 6
    axis = torch.arange(cells, device=device, dtype=torch.float32)
    gx = torch.exp(-((axis - centre_x.unsqueeze(2)) ** 2) / (2 * sigma_x.unsqueeze(2) ** 2))
    gy = torch.exp(-((axis - centre_y.unsqueeze(2)) ** 2) / (2 * sigma_y.unsqueeze(2) ** 2))
    heat = torch.zeros(n, cells, cells, device=device)
    best = torch.full((n, cells, cells), float("inf"), device=device)
    owner = torch.zeros(n, cells, cells, dtype=torch.long, device=device)
    weight = torch.zeros(n, cells, cells, device=device)
    ignore = torch.zeros(n, cells, cells, device=device)
    left, top, right, bottom = (clipped[:, :, k : k + 1] / STRIDE for k in range(4))
    for start in range(0, m, 20):
        part = slice(start, start + 20)
        gauss = gy[:, part].unsqueeze(3) * gx[:, part].unsqueeze(2) * person[:, part, None, None]
        heat = torch.maximum(heat, gauss.amax(1))
        near = gauss > EDGE
        total = (gauss * near).sum((2, 3), keepdim=True).clamp(min=1e-6)
        size = area[:, part, None, None].expand_as(gauss).masked_fill(~near, float("inf"))
        least, which = size.min(1)
        smaller = least < best
        best = torch.where(smaller, least, best)
        owner = torch.where(smaller, which + start, owner)
        share = gauss / total * torch.log(area[:, part, None, None].clamp(min=2))
        weight = torch.where(smaller, share.gather(1, which.unsqueeze(1)).squeeze(1), weight)
        in_x = (axis >= left[:, part]) & (axis <= right[:, part]) & ignored[:, part].unsqueeze(2)
        in_y = (axis >= top[:, part]) & (axis <= bottom[:, part])
        ignore = torch.maximum(ignore, torch.einsum("nmy,nmx->nyx", in_y.float(), in_x.float()))
    edges = clipped.gather(1, owner.view(n, -1, 1).expand(n, cells * cells, 4)).view(n, cells, cells, 4).permute(0, 3, 1, 2)
    counted = torch.where((ignore > 0) & (heat <= 0.5), 0.0, 1.0)
    return heat, edges, weight, counted


def loss(output, boxes, kind):
    heat, edges, weight, counted = targets(boxes, kind)
    p = output[:, 0].clamp(1e-4, 1 - 1e-4)
    centre = (heat >= 0.9999).float()
    positive = -torch.log(p) * (1 - p) ** 2 * centre
    negative = -torch.log(1 - p) * p**2 * (1 - heat) ** 4 * (1 - centre) * counted
    focal = (positive.sum() + negative.sum()) / centre.sum().clamp(min=1)
    cells = SIDE // STRIDE
    axis = torch.arange(cells, device=p.device, dtype=torch.float32) * STRIDE
    gx, gy = axis.view(1, 1, -1), axis.view(1, -1, 1)
    d = output[:, 1:5]
    px1, py1, px2, py2 = gx - d[:, 0], gy - d[:, 1], gx + d[:, 2], gy + d[:, 3]
    tx1, ty1, tx2, ty2 = edges[:, 0], edges[:, 1], edges[:, 2], edges[:, 3]
    pa = (px2 - px1).clamp(min=0) * (py2 - py1).clamp(min=0)
    ta = (tx2 - tx1) * (ty2 - ty1)
    inter = (torch.min(px2, tx2) - torch.max(px1, tx1)).clamp(min=0) * (torch.min(py2, ty2) - torch.max(py1, ty1)).clamp(min=0)
    union = pa + ta - inter + 1e-6
    hull = (torch.max(px2, tx2) - torch.min(px1, tx1)).clamp(min=0) * (torch.max(py2, ty2) - torch.min(py1, ty1)).clamp(min=0) + 1e-6
    giou = inter / union - (hull - union) / hull
    box = ((1 - giou) * weight).sum() / weight.sum().clamp(min=1e-6)
    return focal, box


def detect(output, threshold=0.05, most=100):
    """Peaks of the heat map: (score, x1, y1, x2, y2) of one picture, overlapping ones thinned at IoU 0.6."""
    heat = output[0]
    peak = F.max_pool2d(heat[None, None], 3, 1, 1)[0, 0]
    keep = (heat == peak) & (heat > threshold)
    ys, xs = keep.nonzero(as_tuple=True)
    s = heat[ys, xs]
    order = s.argsort(descending=True)[:most]
    ys, xs, s = ys[order], xs[order], s[order]
    d = output[1:5, ys, xs]
    boxes = torch.stack([xs * STRIDE - d[0], ys * STRIDE - d[1], xs * STRIDE + d[2], ys * STRIDE + d[3]], 1)
    rows = torch.cat([s.unsqueeze(1), boxes], 1).cpu().numpy()
    kept = []
    for row in rows:
        if all(iou(row[1:], k[1:]) < 0.6 for k in kept):
            kept.append(row)
    return np.array(kept).reshape(-1, 5)


def iou(a, b):
    w = min(a[2], b[2]) - max(a[0], b[0])
    h = min(a[3], b[3]) - max(a[1], b[1])
    if w <= 0 or h <= 0:
        return 0.0
    return w * h / ((a[2] - a[0]) * (a[3] - a[1]) + (b[2] - b[0]) * (b[3] - b[1]) - w * h)


def average_precision(net, items, device, scale=1.0, least=12):
    """AP at IoU 0.5 (all points), and recall where precision is at least 0.9; people under `least` pixels ignored."""
    records, total = [], 0
    for pixels, boxes, ignored, size in items:
        x = torch.from_numpy(pixels).permute(2, 0, 1).unsqueeze(0).float().to(device)
        if scale != 1:
            side = int(SIDE * scale) // 32 * 32
            x = F.interpolate(x, size=(side, side), mode="bilinear", align_corners=False)
        ratio = SIDE / x.shape[2]
        with torch.no_grad():
            rows = detect(net(x)[0].float())
        rows[:, 1:] *= ratio
        truth = [b for b in boxes if b[3] - b[1] >= least]
        skip = ignored + [b for b in boxes if b[3] - b[1] < least]
        total += len(truth)
        used = set()
        for row in rows:
            scores = [(iou(row[1:], b), k) for k, b in enumerate(truth) if k not in used]
            best = max(scores, default=(0, -1))
            if best[0] >= 0.5:
                used.add(best[1])
                records.append((row[0], 1))
            elif not any(covered(row[1:], b) > 0.5 for b in skip):
                records.append((row[0], 0))
    records.sort(key=lambda r: -r[0])
    hit = np.cumsum([r[1] for r in records])
    precision = hit / np.arange(1, len(records) + 1)
    recall = hit / max(1, total)
    envelope = np.maximum.accumulate(precision[::-1])[::-1] if len(records) else np.array([])
    ap = float(np.sum(np.diff(np.concatenate([[0], recall])) * envelope)) if len(records) else 0.0
    at90 = max([r for r, p in zip(recall, precision) if p >= 0.9], default=0.0)
    return ap, float(at90)


def covered(a, b):
    w = min(a[2], b[2]) - max(a[0], b[0])
    h = min(a[3], b[3]) - max(a[1], b[1])
    return 0.0 if w <= 0 or h <= 0 else w * h / max(1e-6, (a[2] - a[0]) * (a[3] - a[1]))
