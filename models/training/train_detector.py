#!/usr/bin/env python3
"""Fine-tunes the person detector on photographs and rendered film, from the converted weights.

    python3 models/training/train_detector.py --weights models/person-detector.pt --out OUT \
        --folder PEOPLE_FOLDER:0.5 --folder RENDERED_FOLDER:0.5 [--steps 6000] [--device cuda]

Each folder has a share of the training pictures. OUT receives `best.npz` (the parameters with the best mean average precision
over the folders' held-out tenths, the untrained ones among the candidates) and `log.json`. Then

    python3 models/convert/build.py NODE_MODULES --detector-weights OUT/best.npz

makes the network file from them. Seeded: the same folders, options and machine give the same parameters up to the order of
sums on a GPU.
"""

import argparse
import json
from concurrent.futures import ProcessPoolExecutor
from multiprocessing import get_context
from pathlib import Path

import cv2
import numpy as np
import torch

from pictures import GREY, Augmentation, Folder
from scores import AveragePrecision, overlap
from targets import box_loss, draw_targets, heat_loss

BOX_WEIGHT = 2.0
LEAST_SCORE = 0.05
MOST_OVERLAP = 0.6
KEEP_BEHIND = 0.999  # decay of the running mean of the parameters


def main():
    options = parse()
    torch.manual_seed(options.seed)
    network = load(options.weights, options.device)
    training = [(Folder(path, False), share) for path, share in options.folder]
    held_out = [(path, Folder(path, True)) for path, _ in options.folder]
    for (folder, _), (path, kept) in zip(training, held_out):
        print(f"{path}: {len(folder)} pictures to train on, {len(kept)} held out", flush=True)
    # The optimizer would recompile the network for every size of held-out picture.
    with torch.jit.optimized_execution(False):
        Run(network, training, held_out, options).train()


def parse():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--weights", required=True)
    parser.add_argument("--out", required=True)
    parser.add_argument("--folder", action="append", required=True, type=path_and_share)
    parser.add_argument("--steps", type=int, default=6000)
    parser.add_argument("--batch", type=int, default=32)
    parser.add_argument("--rate", type=float, default=3e-4)
    parser.add_argument("--width", type=int, default=512)
    parser.add_argument("--height", type=int, default=384)
    parser.add_argument("--check-every", type=int, default=500)
    parser.add_argument("--check-at-most", type=int, default=200, help="held-out pictures of each folder")
    parser.add_argument("--workers", type=int, default=8)
    parser.add_argument("--seed", type=int, default=20260101)
    parser.add_argument("--device", default="cpu")
    return parser.parse_args()


def path_and_share(text):
    path, _, share = text.rpartition(":")
    return path, float(share)


class Examples:
    """Training pictures with targets; each depends on seed, step and place alone, whichever process makes it."""

    current = None

    def __init__(self, folders, options):
        self.folders = [folder for folder, _ in folders]
        shares = np.array([share for _, share in folders])
        self.shares = shares / shares.sum()
        self.seed, self.width, self.height = options.seed, options.width, options.height

    def make(self, step, place):
        random = np.random.default_rng([self.seed, step, place])
        folder = self.folders[random.choice(len(self.folders), p=self.shares)]
        augment = Augmentation(self.width, self.height, random)
        picture, boxes, ignored = augment(*folder.read(int(random.integers(len(folder)))))
        return (picture, *draw_targets(boxes, ignored, self.width, self.height))


def prepare_worker(examples):
    cv2.setNumThreads(0)
    Examples.current = examples


def make_example(step, place):
    return Examples.current.make(step, place)


def load(file, device):
    """The trainable part of the network file: [N, H, W, 3] 8-bit in, people's heat and edge distances out."""
    network = torch.jit.load(file, map_location=device).network
    for parameter in network.parameters():
        parameter.requires_grad_(True)
    return network


def heads(network, pictures):
    return network(pictures.permute(0, 3, 1, 2).float())


class Run:
    """One training run."""

    def __init__(self, network, training, held_out, options):
        self.network, self.training, self.held_out, self.options = network, training, held_out, options
        self.mean = {name: p.detach().clone() for name, p in network.named_parameters()}
        self.optimiser = torch.optim.AdamW(network.parameters(), lr=options.rate, weight_decay=1e-4)
        self.log, self.best = [], -1.0
        Path(options.out).mkdir(parents=True, exist_ok=True)

    def train(self):
        options = self.options
        self.check(0)
        examples = Examples(self.training, options)
        with ProcessPoolExecutor(options.workers, get_context("spawn"), prepare_worker, (examples,)) as pool:
            ahead = [self.submit(pool, step) for step in range(1, min(5, options.steps + 1))]
            for step in range(1, options.steps + 1):
                batch = [future.result() for future in ahead.pop(0)]
                if step + 4 <= options.steps:
                    ahead.append(self.submit(pool, step + 4))
                loss = self.step(batch, step)
                if step % 50 == 0 or step == options.steps:
                    print(f"step {step}: loss {loss:.3f}", flush=True)
                if step % options.check_every == 0 or step == options.steps:
                    self.check(step)

    def submit(self, pool, step):
        return [pool.submit(make_example, step, place) for place in range(self.options.batch)]

    def step(self, batch, step):
        device = self.options.device
        pictures, heat, counts, reach, weight = (
            torch.from_numpy(np.stack(part)).to(device, non_blocking=True) for part in zip(*batch)
        )
        for group in self.optimiser.param_groups:
            group["lr"] = self.rate(step)
        found_heat, found_reach = heads(self.network, pictures)
        loss = heat_loss(found_heat[:, 0], heat, counts) + BOX_WEIGHT * box_loss(found_reach, reach, weight)
        self.optimiser.zero_grad()
        loss.backward()
        torch.nn.utils.clip_grad_norm_(self.network.parameters(), 10.0)
        self.optimiser.step()
        behind = min(KEEP_BEHIND, (1 + step) / (10 + step))
        with torch.no_grad():
            for name, parameter in self.network.named_parameters():
                self.mean[name].lerp_(parameter.detach(), 1 - behind)
        return float(loss)

    def rate(self, step):
        """Grows over the first twentieth, then falls as a cosine."""
        warm = max(1, self.options.steps // 20)
        if step <= warm:
            return self.options.rate * step / warm
        progress = (step - warm) / max(1, self.options.steps - warm)
        return self.options.rate * (0.02 + 0.98 * 0.5 * (1 + np.cos(np.pi * progress)))

    def check(self, step):
        """Scores the mean parameters on the held-out pictures and keeps the best."""
        own = {name: p.detach().clone() for name, p in self.network.named_parameters()}
        self.assign(self.mean)
        scores = {path: self.score(folder) for path, folder in self.held_out}
        self.assign(own)
        value = float(np.mean([score["average_precision"] for score in scores.values()]))
        self.log.append({"step": step, "mean_average_precision": value, "folders": scores})
        print(f"step {step}: held out {value:.4f} {scores}", flush=True)
        Path(self.options.out, "log.json").write_text(json.dumps(self.log, indent=1) + "\n")
        if value > self.best:
            self.best = value
            numbers = {name: p.half().cpu().numpy() for name, p in self.mean.items()}
            np.savez(Path(self.options.out, "best.npz"), **numbers)

    def assign(self, values):
        with torch.no_grad():
            for name, parameter in self.network.named_parameters():
                parameter.copy_(values[name])

    def score(self, folder):
        result = AveragePrecision()
        for index in range(min(len(folder), self.options.check_at_most)):
            picture, boxes, ignored = folder.read(index)
            result.add(self.detect(picture), boxes, ignored)
        return result.result()

    def detect(self, picture):
        """Boxes of a whole picture at its own scale, best first."""
        height, width = (-(-side // 32) * 32 for side in picture.shape[:2])
        padded = np.full((height, width, 3), GREY, np.uint8)
        padded[: picture.shape[0], : picture.shape[1]] = picture
        with torch.no_grad():
            heat, reach = heads(self.network, torch.from_numpy(padded)[None].to(self.options.device))
        peaks = heat * (torch.nn.functional.max_pool2d(heat, 3, 1, 1) == heat)
        rows = []
        scores, places = (t.cpu().numpy() for t in peaks.flatten().topk(100))
        edges = reach[0].flatten(1).cpu().numpy()
        for score, place in zip(scores, places):
            if score >= LEAST_SCORE:
                y, x = divmod(int(place), heat.shape[3])
                left, top, right, bottom = edges[:, place]
                if left + right > 0 and top + bottom > 0:
                    rows.append([score, x * 4 - left, y * 4 - top, left + right, top + bottom])
        return suppressed(np.array(rows, np.float32).reshape(-1, 5))


def suppressed(rows):
    """The best of boxes that overlap."""
    kept = []
    for row in rows:
        if all(overlap(row[None, 1:], other[None, 1:])[0, 0] <= MOST_OVERLAP for other in kept):
            kept.append(row)
    return np.array(kept, np.float32).reshape(-1, 5)


if __name__ == "__main__":
    main()
