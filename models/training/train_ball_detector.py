#!/usr/bin/env python3
"""Trains the ball detector from nothing: balls drawn into photographs, photographed balls, rendered film.

    python3 models/training/train_ball_detector.py --people DIR --balls DIR --rendered DIR... --out DIR

--people is a folder of photographs as pictures_with_people.py reads it (as background), --balls and --rendered as
ball_pictures.py reads them. Writes ball-detector.npz (half precision), which convert/build.py --ball-weights turns into the file
that the program loads, and ball-detector.json with settings and scores on what was kept out: every tenth photograph of people,
every tenth session of the balls, every eighth rendered scene. A GPU is expected. The same --seed draws the same pictures; sums on a
GPU are not ordered, so weights agree only closely.
"""

import argparse
import json
import math
import sys
import time
from pathlib import Path

import numpy as np
import torch
import torch.nn.functional as F

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "convert"))

from ball_network import BallHeads  # noqa: E402
from ball_pictures import Triples, crops, labelled_photographs, rendered_triples, split_clips, split_sessions, still_triples  # noqa: E402
from ball_scores import loss, score  # noqa: E402
from drawn_balls import DrawnBalls, cut_outs, photometric, spheres  # noqa: E402
from pictures_with_people import load, split  # noqa: E402

WARM_UP_STEPS = 300
MOST_DECAY = 0.999
DRAWN_SHARE, PHOTOGRAPH_SHARE = 0.3, 0.1
SPRITES, HELD_SPRITES = 2500, 200


def train(network, drawn, photographs, rendered, settings, device):
    optimiser = torch.optim.AdamW(network.parameters(), lr=settings.rate, weight_decay=1e-3)
    average = {k: v.detach().clone().float() for k, v in network.state_dict().items()}
    counts = [round(settings.batch * DRAWN_SHARE), round(settings.batch * PHOTOGRAPH_SHARE)]
    counts.append(settings.batch - sum(counts))
    doubtful = torch.tensor([False] * counts[0] + [True] * counts[1] + [False] * counts[2], device=device)
    start, step = time.time(), 0
    network.train()
    while (done := max(step / settings.steps, (time.time() - start) / (60 * settings.minutes))) < 1:
        rate = settings.rate * min(1, (step + 1) / WARM_UP_STEPS) * (0.01 + 0.99 * 0.5 * (1 + math.cos(math.pi * done)))
        for group in optimiser.param_groups:
            group["lr"] = rate
        parts = [drawn.batch(counts[0])]
        for bank, n in ((photographs, counts[1]), (rendered, counts[2])):
            x, balls = bank.batch(n)
            parts.append((photometric(x, bank.generator), balls))
        most = max(p[1].shape[1] for p in parts)
        balls = torch.cat([F.pad(p[1], (0, 0, 0, most - p[1].shape[1])) for p in parts])
        with torch.autocast(device, dtype=torch.bfloat16, enabled=device == "cuda"):
            heads = network(torch.cat([p[0] for p in parts]))
        focal, place = loss(heads.float(), balls, doubtful)
        optimiser.zero_grad(set_to_none=True)
        (focal + place).backward()
        torch.nn.utils.clip_grad_norm_(network.parameters(), 10.0)
        optimiser.step()
        decay = min(MOST_DECAY, (1 + step) / (10 + step))
        with torch.no_grad():
            for k, v in network.state_dict().items():
                average[k].mul_(decay).add_(v.float(), alpha=1 - decay)
        if step % 500 == 0:
            print(f"{step} focal {focal.item():.3f} place {place.item():.4f} {time.time() - start:.0f} s", flush=True)
        step += 1
    network.load_state_dict({k: v.to(network.state_dict()[k].dtype) for k, v in average.items()})
    network.eval()
    return step


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("--people", required=True)
    parser.add_argument("--balls", required=True)
    parser.add_argument("--rendered", required=True, nargs="+")
    parser.add_argument("--out", required=True)
    parser.add_argument("--steps", type=int, default=20000)
    parser.add_argument("--minutes", type=float, default=6, help="the rate falls to nothing by then, however few the steps")
    parser.add_argument("--batch", type=int, default=64)
    parser.add_argument("--rate", type=float, default=2e-3)
    parser.add_argument("--seed", type=int, default=1)
    settings = parser.parse_args()
    device = "cuda" if torch.cuda.is_available() else "cpu"
    torch.manual_seed(settings.seed)
    rng = np.random.default_rng(settings.seed)
    people, held_people = split([(p[0], p[3]) for p in load(settings.people)])
    balls, held_balls = split_sessions(labelled_photographs(settings.balls))
    film, held_film = split_clips(rendered_triples(settings.rendered))
    sprites = np.concatenate([spheres(SPRITES, rng), cut_outs(crops(balls), rng)])
    drawn = DrawnBalls(people, sprites, device, settings.seed)
    held_drawn = DrawnBalls(held_people, spheres(HELD_SPRITES, np.random.default_rng(99)), device, 99)
    batches = [held_drawn.batch(16) for _ in range(12)]
    held = {"drawn": (torch.cat([b[0].cpu() for b in batches]), torch.cat([b[1].cpu() for b in batches]))}
    for name, rows in (("photographs", still_triples(held_balls)), ("rendered", held_film)):
        bank = Triples(rows, "cpu", 1)
        held[name] = (bank.x, bank.balls)
    photographs, rendered = Triples(still_triples(balls), device, 5), Triples(film, device, 6)
    counts = {"people": len(people), "sprites": len(sprites), "photographs": len(photographs), "rendered": len(rendered)}
    network = BallHeads().to(device)
    print(counts, sum(p.numel() for p in network.parameters()), "parameters", flush=True)
    steps = train(network, drawn, photographs, rendered, settings, device)
    result = {k: score(network, v[0], v[1], device) for k, v in held.items()}
    print(steps, "steps; average precision, recall at precision 0.95, balls:", result, flush=True)
    out = Path(settings.out)
    out.mkdir(parents=True, exist_ok=True)
    np.savez(out / "ball-detector.npz", **{k: v.half().cpu().numpy() for k, v in network.state_dict().items() if v.is_floating_point()})
    keep = {k: v for k, v in vars(settings).items() if k not in ("people", "balls", "rendered", "out")}
    record = {"settings": keep, "pictures": counts, "steps": steps, "kept out": result}
    (out / "ball-detector.json").write_text(json.dumps(record, indent=1) + "\n")


if __name__ == "__main__":
    main()
