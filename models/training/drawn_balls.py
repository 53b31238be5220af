"""Balls drawn into photographs: shaded spheres with seams, and balls cut from photographs, moving through three frames, blurred
by their motion, half hidden at times, beside round and moving things that are no balls. All colours are blue first, 0 to 1."""

import colorsys
import math

import cv2
import numpy as np
import torch
import torch.nn.functional as F

WIDTH, HEIGHT = 512, 288
SPRITE = 64
NO_BALL, BALL, IGNORED = 0, 1, 2
ORANGE_OR_BROWN, OTHER_SHARE = (0.025, 0.085), 0.14  # hues; the rest are two-coloured balls of any hue
BLUR_STEPS = tuple(k / 10 for k in range(-4, 5))  # of the way within one exposure
RADII = (2.3, 15.0)  # pixels
COARSE_BELOW = 9.0  # pixels of radius
GRID = (np.arange(SPRITE) + 0.5) / SPRITE * 2 - 1


def colour(hue, saturation, value):
    return np.array(colorsys.hsv_to_rgb(hue, saturation, value))[::-1]


def spheres(count, rng):
    """[count, 4, 64, 64]: colour and alpha of lit spheres with seams along two great circles and two bows."""
    x, y = np.meshgrid(GRID, GRID)
    squared = x * x + y * y
    points = np.stack([x, y, np.sqrt(np.clip(1 - squared, 0, 1))], -1)
    edge = np.clip((1 - np.sqrt(squared)) * SPRITE / 2 + 0.5, 0, 1)
    out = np.zeros((count, 4, SPRITE, SPRITE), np.float32)
    for k in range(count):
        turn, _ = np.linalg.qr(rng.normal(size=(3, 3)))
        out[k, :3] = lit(leather(points @ turn, rng), points, rng).transpose(2, 0, 1)
        out[k, 3] = edge
    return out


def leather(on_ball, rng):
    if rng.random() >= OTHER_SHARE:
        skin = np.broadcast_to(colour(rng.uniform(*ORANGE_OR_BROWN), rng.uniform(0.5, 0.95), rng.uniform(0.45, 1)), on_ball.shape)
    else:
        first = colour(rng.random(), rng.uniform(0.3, 0.9), rng.uniform(0.3, 1))
        second = colour(rng.random(), rng.uniform(0, 0.9), rng.uniform(0.3, 1))
        skin = np.where(on_ball[..., :1] * on_ball[..., 1:2] > 0, first, second)
    from_seam = np.minimum(np.abs(on_ball[..., 0]), np.abs(on_ball[..., 1]))
    from_bow = np.abs(on_ball[..., 2] ** 2 - 0.35 - 0.5 * on_ball[..., 0] ** 2)
    from_seam = np.minimum(from_seam, from_bow * 0.6)
    seam = np.clip((rng.uniform(0.02, 0.05) - from_seam) / 0.02 + 0.5, 0, 1)[..., None]
    return skin * (1 - seam) + seam * skin * rng.uniform(0.1, 0.5)


def lit(skin, points, rng):
    light = rng.normal(size=3)
    light[1], light[2] = -abs(light[1]) - 0.5, abs(light[2])
    light /= np.linalg.norm(light)
    half = light + [0, 0, 1]
    shade = rng.uniform(0.45, 0.8) + rng.uniform(0.4, 0.8) * np.clip(points @ light, 0, 1)
    gloss = rng.uniform(0, 0.3) * np.clip(points @ half / np.linalg.norm(half), 0, 1) ** 20
    noise = rng.normal(scale=0.02, size=points.shape)
    return np.clip(skin * shade[..., None] + gloss[..., None] + noise, 0, 1)


def cut_outs(crops, rng):
    """Sprites of photographed balls (square crops, 8-bit, blue first), each once as it is and twice turned towards orange."""
    x, y = np.meshgrid(GRID, GRID)
    alpha = np.clip((0.97 - np.sqrt(x * x + y * y)) * SPRITE / 2 + 0.5, 0, 1)
    out = []
    for crop in crops:
        as_it_is = cv2.resize(crop, (SPRITE, SPRITE), interpolation=cv2.INTER_AREA).astype(np.float32) / 255
        # A yellow ball becomes an orange or brown one when its green is lowered.
        shift = np.array([rng.uniform(0.6, 1.3), rng.uniform(0.5, 0.8), 1]) * rng.uniform(0.6, 1)
        for picture in (as_it_is, as_it_is * shift, as_it_is * shift):
            out.append(np.concatenate([np.clip(picture, 0, 1).transpose(2, 0, 1), alpha[None]]))
    return np.array(out, np.float32).reshape(-1, 4, SPRITE, SPRITE)


class DrawnBalls:
    """Makes batches on the device from photographs (bytes [512, 512, 3] with their own width and height) and sprites."""

    def __init__(self, photographs, sprites, device, seed):
        self.photographs = torch.from_numpy(np.stack([p[0] for p in photographs])).permute(0, 3, 1, 2).contiguous().to(device)
        self.size = torch.tensor([p[1] for p in photographs], dtype=torch.float32, device=device)
        self.sprites = torch.from_numpy(sprites).to(device)
        self.device = device
        self.generator = torch.Generator(device=device)
        self.generator.manual_seed(seed)
        self.columns = torch.arange(WIDTH, device=device).float()
        self.rows = torch.arange(HEIGHT, device=device).float()

    def random(self, low, high, *shape):
        return torch.rand(*shape, generator=self.generator, device=self.device) * (high - low) + low

    def some(self, share, n):
        return self.random(0, 1, n, 1, 1, 1) < share

    def picked(self, bank, n):
        return bank[torch.randint(len(bank), (n,), generator=self.generator, device=self.device)]

    def batch(self, n):
        """Frames [n, 9, H, W] 0 to 255 and balls [n, 2, 4]: column, row, radius, kind."""
        frames = self.background(n)
        for _ in range(2):
            frames = self.with_moving_patch(frames, n)
        frames = self.with_disc(frames, n)
        usual = torch.exp(self.random(math.log(RADII[0]), math.log(RADII[1]), n, 1))
        truth = []
        for share in (0.82, 0.2):
            frames, balls = self.with_ball(frames, usual * self.random(0.85, 1.15, n, 1), share, n)
            truth.append(balls)
        return photometric(torch.cat(frames, 1), self.generator), torch.stack(truth, 1)

    def background(self, n):
        """A part of a photograph seen by a camera that may drift, three times."""
        index = torch.randint(len(self.photographs), (n,), generator=self.generator, device=self.device)
        pictures, size = self.photographs[index].float(), self.size[index]
        scale = torch.exp(self.random(math.log(0.45), math.log(1.1), n, 1))  # picture pixels for one frame pixel
        room = (size - scale * torch.tensor([WIDTH, HEIGHT], device=self.device)).clamp(min=0)
        corner = room * self.random(0, 1, n, 2)
        drift = self.random(-2.5, 2.5, n, 2) * (self.random(0, 1, n, 1) < 0.5).float()
        flip = (self.random(0, 1, n, 1) < 0.5).float() * 2 - 1
        side = float(self.photographs.shape[-1])
        frames = []
        for k in range(3):
            gx = corner[:, :1] + (k - 1) * drift[:, :1] + scale * (flip * (self.columns - WIDTH / 2) + WIDTH / 2)
            gy = corner[:, 1:] + (k - 1) * drift[:, 1:] + scale * self.rows
            gx, gy = reflected(gx, size[:, :1]), reflected(gy, size[:, 1:])
            across = ((gx * 2 + 1) / side - 1).unsqueeze(1).expand(n, HEIGHT, WIDTH)
            down = ((gy * 2 + 1) / side - 1).unsqueeze(2).expand(n, HEIGHT, WIDTH)
            frames.append(F.grid_sample(pictures, torch.stack([across, down], 3), align_corners=False))
        return frames

    def ellipse(self, centre, rx, ry, softness):
        d = ((self.columns - centre[:, :1]) / rx).unsqueeze(1) ** 2 + ((self.rows - centre[:, 1:]) / ry).unsqueeze(2) ** 2
        return ((1.1 - d) * softness).clamp(0, 1).unsqueeze(1)

    def anywhere(self, n, margin=0):
        return torch.cat([self.random(margin, WIDTH - margin, n, 1), self.random(margin, HEIGHT - margin, n, 1)], 1)

    def with_moving_patch(self, frames, n):
        """A piece of another picture that moves and is no ball."""
        patch = self.background(n)[1]
        centre, velocity = self.anywhere(n), self.random(-8, 8, n, 2)
        rx, ry = self.random(6, 60, n, 1), self.random(10, 110, n, 1)
        out = []
        for k, frame in enumerate(frames):
            share = self.ellipse(centre + (k - 1) * velocity, rx, ry, 6)
            out.append(frame * (1 - share) + torch.roll(patch, (k - 1) * 4, 3) * share)
        return out

    def with_disc(self, frames, n):
        """A disc of one colour that is no ball of ours: pale, dark or blue."""
        tint = torch.stack([self.random(0.4, 1, n), self.random(0.1, 0.9, n), self.random(0.1, 0.9, n)], 1)
        alpha = self.picked(self.sprites, n)[:, 3:]
        disc = torch.cat([tint.view(n, 3, 1, 1).expand(n, 3, SPRITE, SPRITE) * self.random(0.6, 1, n, 1, 1, 1), alpha], 1)
        centre, velocity = self.anywhere(n), self.random(-5, 5, n, 2)
        there = (self.random(0, 1, n) < 0.35).float()
        places = [centre - velocity, centre, centre + velocity]
        return self.stamped(frames, disc, places, self.random(2.5, 14, n, 1), None, there, None)

    def with_ball(self, frames, radius, share, n):
        there = (self.random(0, 1, n) < share).float()
        centre = self.anywhere(n, 6)
        sort = self.random(0, 1, n, 1)  # held, dribbled or passed
        pace = torch.where(
            sort < 0.35,
            self.random(0, 0.4, n, 1),
            torch.where(sort < 0.7, self.random(0.2, 2, n, 1), self.random(1, 5, n, 1)),
        )
        angle = self.random(0, 2 * math.pi, n, 1)
        velocity = torch.cat([torch.cos(angle), torch.sin(angle)], 1) * pace * radius
        bend = torch.cat([torch.zeros_like(radius), self.random(0, 0.4, n, 1) * radius], 1)
        places = [centre - velocity + bend / 2, centre, centre + velocity + bend / 2]
        beside = self.random(0, 2 * math.pi, n, 1)
        cover = torch.cat([torch.cos(beside), torch.sin(beside)], 1) * self.random(0.5, 1.6, n, 1) * radius
        held = (self.random(0, 1, n) < 0.5).float().view(n, 1, 1, 1)
        hidden = [self.ellipse(p + cover, radius * 0.9, radius * 0.7, 5) * held for p in places]
        frames = self.stamped(frames, self.picked(self.sprites, n), places, radius, velocity, there, hidden)
        return frames, torch.cat([centre, radius, there.unsqueeze(1) * BALL], 1)

    def stamped(self, frames, sprites, places, radius, velocity, there, hidden):
        """Each sprite averaged over the exposure; small ones are averaged first, or their seams would alias."""
        n = len(sprites)
        solid = torch.cat([sprites[:, :3] * sprites[:, 3:], sprites[:, 3:]], 1)
        coarse = F.interpolate(F.avg_pool2d(solid, 8), size=(SPRITE, SPRITE), mode="bilinear", align_corners=False)
        sprites = torch.where(radius.view(n, 1, 1, 1) < COARSE_BELOW, coarse, solid)
        turn = self.random(0, 2 * math.pi, n)
        exposure = self.random(0.2, 1.2, n, 1)
        steps = (0.0,) if velocity is None else BLUR_STEPS
        out = []
        for k, frame in enumerate(frames):
            c, s = torch.cos(turn + k * 0.3).view(n, 1, 1), torch.sin(turn + k * 0.3).view(n, 1, 1)
            layer = 0
            for q in steps:
                centre = places[k] if velocity is None else places[k] + q * velocity * exposure
                dx = ((self.columns - centre[:, :1]) / radius).unsqueeze(1).expand(n, HEIGHT, WIDTH)
                dy = ((self.rows - centre[:, 1:]) / radius).unsqueeze(2).expand(n, HEIGHT, WIDTH)
                layer = layer + F.grid_sample(sprites, torch.stack([dx * c - dy * s, dx * s + dy * c], 3), align_corners=False)
            layer = layer / len(steps)
            share = there.view(n, 1, 1, 1) * (1 if hidden is None else 1 - hidden[k])
            out.append(frame * (1 - layer[:, 3:] * share) + layer[:, :3] * 255 * share)
        return out


def reflected(x, size):
    """Coordinates folded back into 0 to size - 1."""
    last = (size - 1).clamp(min=1)
    folded = torch.remainder(x, 2 * last)
    return torch.where(folded > last, 2 * last - folded, folded)


def photometric(x, generator):
    """Contrast, light, colour cast, lower resolution, blur, noise, and the dither of film stored in few colours; the same for
    the frames of one triple but for the noise."""
    n, device = len(x), x.device

    def random(low, high, channels=1):
        return torch.rand(n, channels, 1, 1, generator=generator, device=device) * (high - low) + low

    def some(share):
        return random(0, 1) < share

    mean = x.mean((1, 2, 3), keepdim=True)
    x = (x - mean) * random(0.6, 1.3) + mean * random(0.5, 1.4)
    x = x * random(0.9, 1.1, 3).repeat(1, 3, 1, 1)
    low = F.interpolate(F.interpolate(x, scale_factor=0.5, mode="area"), size=x.shape[2:], mode="bilinear", align_corners=False)
    x = torch.where(some(0.25), low, x)
    x = torch.where(some(0.25), F.avg_pool2d(F.pad(x, (1, 1, 1, 1), mode="replicate"), 3, 1), x)
    x = x + torch.randn(x.shape, generator=generator, device=device) * random(0, 10)
    step = random(16, 40)
    bayer = torch.tensor([[0, 8, 2, 10], [12, 4, 14, 6], [3, 11, 1, 9], [15, 7, 13, 5]], device=device).float() / 16 - 0.5
    dither = bayer.repeat(x.shape[2] // 4, x.shape[3] // 4) * step
    x = torch.where(some(0.12), ((x + dither) / step).round() * step, x)
    return x.clamp(0, 255)
