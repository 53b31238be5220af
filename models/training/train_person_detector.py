#!/usr/bin/env python3
"""Fine-tunes the person detector on photographs and rendered film, from its pretrained weights.

    python3 models/training/train_person_detector.py --source HUMAN_MODELS --people DIR --rendered DIR --out DIR

HUMAN_MODELS is the folder `models` of the npm package that models/README.md names; --people and --rendered are folders as
pictures_with_people.py reads them (rendered ones come from floorgauge.sampleclips.training.TrainingPictures). Writes
person-detector.npz (half precision), which convert/build.py --detector-weights turns into the file that the program loads, and
person-detector.json with the settings and the scores on what was kept out. A GPU is expected: 2,500 steps of 64 crops take 7
minutes on an H100. The same --seed draws the same crops; sums on a GPU are not ordered, so weights agree only closely.
"""

import argparse
import json
import math
import sys
import time
from pathlib import Path

import numpy as np
import torch

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "convert"))

from networks import PersonDetector  # noqa: E402
from detection import average_precision, loss  # noqa: E402
from pictures_with_people import LAYERS, Bank, combine, load, photometric, pick, split  # noqa: E402

BOX_WEIGHT = 5
WARM_UP_STEPS = 200
MOST_DECAY = 0.999


class Heads(torch.nn.Module):
    """The trainable part: [N, 3, H, W] blue first, 0 to 255, to heat and the four distances in one tensor."""

    def __init__(self, detector):
        super().__init__()
        self.network = detector.network

    def forward(self, pictures):
        heat, distances = self.network(pictures)
        return torch.cat([heat, distances], 1)


def apart(wanted, given):
    """Kullback-Leibler divergence of two heat maps, summed, a picture's share of a few people."""
    p, q = given.clamp(1e-4, 1 - 1e-4), wanted.clamp(1e-4, 1 - 1e-4)
    return (q * (q.log() - p.log()) + (1 - q) * ((1 - q).log() - (1 - p).log())).sum() / (given.shape[0] * 16)


def pretrained(settings, device):
    return Heads(PersonDetector.from_tfjs(Path(settings.source) / "centernet.json")).to(device).eval()


def train(net, banks, settings, device):
    generator = torch.Generator(device=device)
    generator.manual_seed(settings.seed)
    # The pretrained network has seen far more people than these pictures hold: staying near its answers keeps that.
    teacher = pretrained(settings, device).requires_grad_(False)
    optimiser = torch.optim.AdamW(net.parameters(), lr=settings.rate, weight_decay=1e-4)
    average = {k: v.detach().clone() for k, v in net.state_dict().items()}
    mixed = {"device_type": device, "dtype": torch.bfloat16, "enabled": device == "cuda"}
    start = time.time()
    net.train()
    step = 0
    while (done := max(step / settings.steps, (time.time() - start) / (60 * settings.minutes))) < 1:
        rate = settings.rate * min(1, (step + 1) / WARM_UP_STEPS)
        rate *= 0.02 + 0.98 * 0.5 * (1 + math.cos(math.pi * done))
        for group in optimiser.param_groups:
            group["lr"] = rate
        rendered = torch.rand(1, generator=generator, device=device).item() < settings.rendered_share
        bank = banks[-1] if rendered else banks[0]
        layers = []
        for _ in range(LAYERS):
            index = torch.randint(len(bank), (settings.batch,), generator=generator, device=device)
            layers.append(pick(bank, index, generator, device))
        pictures, boxes, kind = combine(layers, generator, device)
        pictures = photometric(pictures, generator, device)
        with torch.autocast(**mixed):
            output = net(pictures)
        focal, box = loss(output.float(), boxes, kind)
        total = focal + BOX_WEIGHT * box
        if settings.stay > 0 and not rendered:
            with torch.no_grad(), torch.autocast(**mixed):
                wanted = teacher(pictures)
            total = total + settings.stay * apart(wanted[:, :1].float(), output[:, :1].float())
        optimiser.zero_grad(set_to_none=True)
        total.backward()
        torch.nn.utils.clip_grad_norm_(net.parameters(), 10.0)
        optimiser.step()
        decay = min(MOST_DECAY, (1 + step) / (10 + step))
        with torch.no_grad():
            for k, v in net.state_dict().items():
                average[k].lerp_(v, 1 - decay)
        if step % 250 == 0:
            print(f"{step} focal {focal.item():.3f} box {box.item():.4f} {time.time() - start:.0f} s", flush=True)
        step += 1
    net.load_state_dict(average)
    net.eval()
    return step


def scores(net, held, device):
    """For each kept-out set: average precision at IoU 0.5, recall at precision 0.9."""
    return {name: [round(v, 4) for v in average_precision(net, items, device)] for name, items in held.items() if items}


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("--source", required=True)
    parser.add_argument("--people", required=True)
    parser.add_argument("--rendered", required=True)
    parser.add_argument("--out", required=True)
    parser.add_argument("--steps", type=int, default=2600)
    parser.add_argument("--minutes", type=float, default=60, help="the rate falls to nothing by then, however few the steps")
    parser.add_argument("--batch", type=int, default=64)
    parser.add_argument("--rate", type=float, default=1.5e-4)
    parser.add_argument("--rendered-share", type=float, default=0.35)
    parser.add_argument("--stay", type=float, default=0.6, help="weight of staying near the pretrained answers")
    parser.add_argument("--seed", type=int, default=1)
    settings = parser.parse_args()
    device = "cuda" if torch.cuda.is_available() else "cpu"
    net = pretrained(settings, device)
    photographs, held_photographs = split(load(settings.people))
    rendered, held_rendered = split(load(settings.rendered))
    held = {"photographs": held_photographs, "rendered": held_rendered}
    counts = {"photographs": len(photographs), "rendered": len(rendered)}
    before = scores(net, held, device)
    print("before", counts, before, flush=True)
    steps = train(net, [Bank(photographs, device), Bank(rendered, device)], settings, device)
    after = scores(net, held, device)
    print("after", after, flush=True)
    out = Path(settings.out)
    out.mkdir(parents=True, exist_ok=True)
    np.savez(out / "person-detector.npz", **{k: v.detach().half().cpu().numpy() for k, v in net.network.named_parameters()})
    keep = {k: v for k, v in vars(settings).items() if k not in ("source", "people", "rendered", "out")}
    record = {"settings": keep, "pictures": counts, "steps": steps, "before": before, "after": after}
    (out / "person-detector.json").write_text(json.dumps(record, indent=1) + "\n")


if __name__ == "__main__":
    main()
