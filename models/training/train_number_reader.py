#!/usr/bin/env python3
"""Trains the reader of jersey numbers from nothing, on numbers drawn into drawn shirts and photographed torsos.

    python3 models/training/train_number_reader.py --people DIR --fonts DIR --out DIR

--people is a folder of photographs with people (images/*.jpg and annotations.json in COCO's layout), --fonts one with TrueType or
OpenType files in any depth. Writes number-reader.npz (half precision), which convert/build.py --number-weights turns into the file
that the program loads, number-reader.json with settings and scores, and number-reader.png, drawn examples to be looked at. Kept
out of training and scored: every eighth font by name, every tenth photograph. A GPU is expected. The same --seed draws the same
pictures; sums on a GPU are not ordered, so weights agree only closely.
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
from PIL import Image

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "convert"))

from drawn_numbers import CROP_TORSOS, NONE, ONE, RAISED, TWO, UNCLEAR, DrawnNumbers, font_bank  # noqa: E402
from number_network import NUMBERS, NumberHeads, NumberReader  # noqa: E402

TORSO = 96
LEAST_TORSO = 14  # pixels from hips to shoulders
LEFT_SHOULDER, RIGHT_SHOULDER, LEFT_HIP, RIGHT_HIP = 5, 6, 11, 12
WARM_UP_STEPS = 300


def torsos(folder):
    """[N, 3, 96, 96] bytes, blue first: every person's torso, from the joints where they are labelled, else from the box."""
    document = json.loads((Path(folder) / "annotations.json").read_text(encoding="utf-8"))
    people = {}
    for annotation in document["annotations"]:
        if not annotation.get("iscrowd") and not annotation.get("ignore"):
            people.setdefault(annotation["image_id"], []).append(annotation)
    kept, held = [], []
    for k, image in enumerate(sorted(document["images"], key=lambda i: i["file_name"])):
        picture = Image.open(Path(folder) / "images" / image["file_name"]).convert("RGB")
        for person in people.get(image["id"], []):
            ends = ends_of_torso(person)
            if ends is not None and math.dist(*ends) >= LEAST_TORSO:
                (held if k % 10 == 0 else kept).append(cut(picture, *ends))
    return torch.from_numpy(np.stack(kept)), torch.from_numpy(np.stack(held))


def ends_of_torso(person):
    joints = person.get("keypoints")
    if joints and any(joints):
        points = np.array(joints, float).reshape(-1, 3)
        if (points[[LEFT_SHOULDER, RIGHT_SHOULDER, LEFT_HIP, RIGHT_HIP], 2] > 0).all():
            return points[[LEFT_SHOULDER, RIGHT_SHOULDER], :2].mean(0), points[[LEFT_HIP, RIGHT_HIP], :2].mean(0)
    left, top, width, height = person["bbox"]
    if height < 1.6 * width:
        return None
    middle = left + width / 2
    return np.array([middle, top + 0.2 * height]), np.array([middle, top + 0.52 * height])


def cut(picture, shoulders, hips):
    """The crop that drawn_numbers.py describes."""
    up = shoulders - hips
    side = CROP_TORSOS * np.linalg.norm(up)
    right = np.array([-up[1], up[0]]) / np.linalg.norm(up) * side / TORSO
    down = -up / np.linalg.norm(up) * side / TORSO
    middle = (shoulders + hips) / 2 + RAISED * up
    corner = middle - (right + down) * TORSO / 2
    data = (right[0], down[0], corner[0], right[1], down[1], corner[1])
    crop = picture.transform((TORSO, TORSO), Image.Transform.AFFINE, data, Image.Resampling.BILINEAR)
    return np.asarray(crop)[:, :, ::-1].transpose(2, 0, 1).copy()


def loss(heads, kind, tens, ones):
    judged = kind != UNCLEAR
    total = F.cross_entropy(heads[0][judged], kind[judged])
    two, any_digit = kind == TWO, (kind == ONE) | (kind == TWO)
    total = total + F.cross_entropy(heads[1][two], tens[two]) * two.float().mean()
    return total + F.cross_entropy(heads[2][any_digit], ones[any_digit]) * any_digit.float().mean()


def train(heads, drawn, settings, device):
    optimiser = torch.optim.AdamW(heads.parameters(), lr=settings.rate, weight_decay=2e-3)
    start, step = time.time(), 0
    heads.train()
    while (done := max(step / settings.steps, (time.time() - start) / (60 * settings.minutes))) < 1:
        rate = settings.rate * min(1, (step + 1) / WARM_UP_STEPS) * (0.01 + 0.99 * 0.5 * (1 + math.cos(math.pi * done)))
        for group in optimiser.param_groups:
            group["lr"] = rate
        with torch.no_grad():
            pictures, kind, tens, ones = drawn.batch(settings.batch)
        with torch.autocast(device, dtype=torch.bfloat16, enabled=device == "cuda"):
            out = heads(pictures)
        value = loss([o.float() for o in out], kind, tens, ones)
        optimiser.zero_grad(set_to_none=True)
        value.backward()
        torch.nn.utils.clip_grad_norm_(heads.parameters(), 5.0)
        optimiser.step()
        if step % 200 == 0:
            print(f"{step} {value.item():.3f} {time.time() - start:.0f} s", flush=True)
        step += 1
    heads.eval()
    return step


@torch.no_grad()
def answers(heads, drawn, pictures):
    """Logits and truths of so many drawings; those that nobody could judge are left out."""
    rows = []
    for _ in range(pictures // 512):
        x, kind, tens, ones = drawn.batch(512)
        judged = kind != UNCLEAR
        truth = torch.where(kind == NONE, NUMBERS, torch.where(kind == TWO, tens * 10 + ones, ones))
        rows.append([x[judged].permute(0, 2, 3, 1).byte(), truth[judged]])
    return torch.cat([r[0] for r in rows]), torch.cat([r[1] for r in rows])


@torch.no_grad()
def probabilities(heads, temperature, pictures):
    reader = NumberReader(heads, temperature).to(pictures.device)
    return torch.cat([reader(part) for part in pictures.split(1024)])


def calibrated(heads, pictures, truth):
    """The temperature under which the truths are likeliest."""
    def cost(t):
        p = probabilities(heads, t, pictures)
        return -torch.log(p[torch.arange(len(truth), device=p.device), truth] + 1e-9).mean().item()

    return min((round(0.6 + 0.1 * k, 1) for k in range(20)), key=cost)


def scores(p, truth):
    best, number = p[:, :NUMBERS].max(1)
    legible = truth < NUMBERS
    table = []
    for threshold in (0.3, 0.5, 0.7, 0.9):
        said = best >= threshold
        right = said & (number == truth)
        table.append(
            {
                "threshold": threshold,
                "read": round((right.sum() / legible.sum()).item(), 4),
                "right": round((right.sum() / said.sum().clamp(min=1)).item(), 4),
                "saidOfNone": round(((said & ~legible).sum() / (~legible).sum()).item(), 4),
            }
        )
    bins = []
    for low in np.arange(0.1, 1, 0.1):
        inside = (best >= low) & (best < low + 0.1)
        if inside.sum() > 20:
            bins.append([round(best[inside].mean().item(), 3), round((number == truth)[inside].float().mean().item(), 3)])
    return {"pictures": len(truth), "byThreshold": table, "meanProbabilityAndShareRight": bins}


def sheet(drawn, file):
    x, kind, tens, ones = drawn.batch(144)
    rows = x.permute(0, 2, 3, 1).byte().cpu().numpy()[:, :, :, ::-1].reshape(9, 16, 64, 64, 3)
    Image.fromarray(rows.transpose(0, 2, 1, 3, 4).reshape(9 * 64, 16 * 64, 3).copy()).save(file)
    names = ["--", "1", "2", "??"]
    said = [names[k] if k in (NONE, UNCLEAR) else str(t * 10 * (k == TWO) + o) for k, t, o in zip(kind.tolist(), tens.tolist(), ones.tolist())]
    for r in range(9):
        print(" ".join(f"{s:>3}" for s in said[16 * r : 16 * r + 16]))


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("--people", required=True)
    parser.add_argument("--fonts", required=True)
    parser.add_argument("--out", required=True)
    parser.add_argument("--steps", type=int, default=12000)
    parser.add_argument("--minutes", type=float, default=6)
    parser.add_argument("--batch", type=int, default=512)
    parser.add_argument("--rate", type=float, default=2e-3)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--scored", type=int, default=20480)
    settings = parser.parse_args()
    torch.manual_seed(settings.seed)
    device = "cuda" if torch.cuda.is_available() else "cpu"
    out = Path(settings.out)
    out.mkdir(parents=True, exist_ok=True)
    files = sorted((f for f in Path(settings.fonts).rglob("*") if f.suffix.lower() in (".ttf", ".otf")), key=lambda f: f.name)
    kept_fonts = font_bank([f for k, f in enumerate(files) if k % 8])
    held_fonts = font_bank(files[::8])
    kept, held = torsos(settings.people)
    print(f"{len(kept_fonts[0])} + {len(held_fonts[0])} fonts, {len(kept)} + {len(held)} torsos", flush=True)
    drawn = DrawnNumbers(*kept_fonts, kept, device, settings.seed)
    sheet(drawn, out / "number-reader.png")
    heads = NumberHeads().to(device)
    heads.to(memory_format=torch.channels_last)
    steps = train(heads, drawn, settings, device)
    heads = heads.float()
    pictures, truth = answers(heads, DrawnNumbers(*held_fonts, held, device, settings.seed + 1), settings.scored)
    half = len(truth) // 2
    temperature = calibrated(heads, pictures[:half], truth[:half])
    result = scores(probabilities(heads, temperature, pictures[half:]), truth[half:])
    document = {"settings": {**vars(settings), "people": "", "fonts": [f.name for f in files], "out": "", "stepsDone": steps}, "temperature": temperature, "keptOut": result}
    (out / "number-reader.json").write_text(json.dumps(document, indent=1) + "\n", encoding="utf-8")
    weights = {k: v.half().cpu().numpy() if v.is_floating_point() else v.cpu().numpy() for k, v in heads.state_dict().items()}
    np.savez(out / "number-reader.npz", temperature=np.float32(temperature), **weights)
    print(json.dumps({"temperature": temperature, **result}), flush=True)


if __name__ == "__main__":
    main()
