"""Makes labeled photographs of a slab with troubles, to try "is the slab one color?" on.

    python make.py FOLDER --first 5000 --each 20 [--kinds even,patches,...] [--width 1600]

Every picture is drawn from its seed alone: the same seed and the same numpy give the same picture.
Colors are linear light until the camera at the end. What is assumed (all of it ours, and none of it
measured on a real slab): damp darkens by a factor whose logarithm is larger where reflectance is lower
(red 1.00, green 1.09, blue 1.19 of it, give or take); bloom mixes white in; shade outdoors keeps a
share of the light that is bluer than the sun's, indoors it is neutral; glare adds the light's color.
"""
import argparse
import csv
import io
import pathlib

import numpy as np
from PIL import Image
from scipy.ndimage import gaussian_filter, map_coordinates

KINDS = ["even", "faint", "patches", "streaks", "one_side", "bloom", "straight_shade", "curved_shade", "soft_shade",
         "dappled", "shade_and_patch", "glare", "overexposed", "dark_picture", "footprints", "blurred_even",
         "blurred_patches", "heavy_jpeg_even", "heavy_jpeg_patches", "no_card_even", "no_card_patches", "tilted_even",
         "tilted_patches", "broom_even", "broom_patches", "joints_even", "joints_patches", "boots_even",
         "boots_patches", "colored_light_even", "colored_light_patches", "two_lights", "mottle", "thin_shade",
         # New ones go to the end: a picture's seed holds the place of its kind.
         "blinds", "double_shade", "hose_even", "hose_patches", "puddle", "tarp", "vignette_even", "vignette_patches",
         "flash_even", "flash_patches", "card_in_shade", "card_cut_even", "card_cut_patches", "wall_even",
         "wall_patches", "two_pours", "saw_cuts_even", "saw_cuts_patches"]


def noise(rng, shape, size):
    """Smooth noise of unit spread; size in pixels."""
    h, w = shape
    step = max(1.0, size / 4)
    small = rng.standard_normal((int(h / step) + 9, int(w / step) + 9))
    small = gaussian_filter(small, size / step, mode="wrap")
    small /= small.std() + 1e-12
    y, x = np.mgrid[0:h, 0:w]
    return map_coordinates(small, [y / step + 3, x / step + 3], order=1)


def blobs(rng, shape, coverage, size, edge):
    """A mask 0 to 1 of blobs that cover about `coverage`, with an edge of about `edge` pixels."""
    field = noise(rng, shape, size)
    level = np.quantile(field, 1 - coverage)
    gy, gx = np.gradient(field)
    slope = np.median(np.hypot(gx, gy)[np.abs(field - level) < 0.3]) + 1e-9
    return 1 / (1 + np.exp(-(field - level) / (slope * edge * 0.5)))


def lightness_of(y):
    return 116 * np.cbrt(y) - 16


def damp(rng, mask, de):
    """Factor on light for damp of about `de` CIEDE2000 (near L 60, about 0.028 in ln Y for 1)."""
    depth = 0.0275 * de
    warm = rng.uniform(0.7, 1.2)
    ratio = np.array([1 - 0.09 * warm, 1.0, 1 + 0.10 * warm])
    return np.exp(-depth * mask[..., None] * ratio)


def scene(kind, seed, width):
    rng = np.random.default_rng(seed)
    w, h = width, width * 3 // 4
    unit = w / 1600
    y, x = np.mgrid[0:h, 0:w].astype(np.float32)
    base_kind = kind.split("_")[-1] if kind.endswith(("_even", "_patches")) else kind
    truth, accept, de = "uniform", "uniform|cannot_tell", 0.0
    # The slab: warm gray, a little mottle, fine texture.
    yy = rng.uniform(0.22, 0.45)
    warm = rng.uniform(0.02, 0.16)
    slab = np.array([yy * (1 + warm * 0.7), yy, yy * (1 - warm)])
    mottle = noise(rng, (h, w), rng.uniform(8, 30) * unit) * rng.uniform(0.002, 0.006)
    if kind == "mottle":
        mottle = noise(rng, (h, w), rng.uniform(15, 60) * unit) * rng.uniform(0.03, 0.055)
        accept = "uniform|cannot_tell"
    fine = gaussian_filter(rng.standard_normal((h, w)), rng.uniform(0.6, 1.6) * unit)
    fine = fine / fine.std() * rng.uniform(0.02, 0.06)
    refl = slab * np.exp((mottle + fine)[..., None])
    if kind.startswith("broom"):
        angle = rng.uniform(0, np.pi)
        across = x * np.cos(angle) + y * np.sin(angle) + 3 * unit * noise(rng, (h, w), 120 * unit)
        lines = np.interp(across, np.arange(-3 * w, 3 * w), gaussian_filter(rng.standard_normal(6 * w), rng.uniform(1, 3) * unit))
        refl = refl * np.exp(lines / lines.std() * rng.uniform(0.05, 0.12))[..., None]
    # What is in the slab.
    if base_kind == "patches" or kind == "shade_and_patch":
        de = rng.uniform(4, 13)
        mask = blobs(rng, (h, w), rng.uniform(0.12, 0.4), rng.uniform(60, 160) * unit, rng.uniform(2, 25) * unit)
        refl = refl * damp(rng, mask, de)
        truth, accept = "patchy", "patchy|cannot_tell"
    if kind == "streaks":
        de = rng.uniform(5, 12)
        field = noise(rng, (h, w // 4), 30 * unit)
        field = np.repeat(field, 4, axis=1)[:, :w]
        mask = 1 / (1 + np.exp(-(gaussian_filter(field, 2 * unit) - 1.0) * 8))
        refl = refl * damp(rng, mask, de)
        truth, accept = "patchy", "patchy|cannot_tell"
    if kind == "one_side":
        de = rng.uniform(5, 12)
        t = rng.uniform(0, 2 * np.pi)
        d = ((x - w / 2) * np.cos(t) + (y - h / 2) * np.sin(t)) / w + 0.03 * noise(rng, (h, w), 150 * unit)
        mask = 1 / (1 + np.exp(-np.clip((d - rng.uniform(0, 0.2)) / rng.uniform(0.004, 0.08), -50, 50)))
        refl = refl * damp(rng, mask, de)
        truth, accept = "patchy", "patchy|cannot_tell"
    if kind == "faint":
        de = rng.uniform(0.7, 1.8)
        refl = refl * damp(rng, blobs(rng, (h, w), 0.25, 100 * unit, 15 * unit), de)
        truth, accept = "patchy", "uniform|cannot_tell"
    if kind == "bloom":
        de = rng.uniform(5, 12)
        mask = blobs(rng, (h, w), rng.uniform(0.12, 0.3), rng.uniform(60, 140) * unit, rng.uniform(2, 20) * unit)
        lift = np.exp(0.0275 * de) - 1
        refl = refl + (mask * lift * yy)[..., None] * np.array([1.02, 1, 0.97])
        truth, accept = "patchy", "patchy|cannot_tell"
    if kind == "footprints":
        de = rng.uniform(6, 14)
        mask = np.zeros((h, w))
        px, py, head = rng.uniform(0.1, 0.4) * w, rng.uniform(0.2, 0.8) * h, rng.uniform(-0.5, 0.5)
        for i in range(rng.integers(3, 9)):
            cx, cy = px + i * 130 * unit * np.cos(head), py + i * 130 * unit * np.sin(head) + (-1) ** i * 35 * unit
            u, v = (x - cx) * np.cos(head) + (y - cy) * np.sin(head), -(x - cx) * np.sin(head) + (y - cy) * np.cos(head)
            mask = np.maximum(mask, 1 / (1 + np.exp((np.hypot(u / (45 * unit), v / (18 * unit)) - 1) * 8)))
        refl = refl * damp(rng, mask, de)
        truth, accept = "uniform", "cannot_tell|patchy"
    if kind == "two_pours":
        de = rng.uniform(4, 10)
        t = rng.uniform(0, 2 * np.pi)
        d = (x - w / 2) * np.cos(t) + (y - h / 2) * np.sin(t) - rng.uniform(-0.2, 0.2) * w + 2 * unit * noise(rng, (h, w), 30 * unit)
        mask = 1 / (1 + np.exp(-np.clip(d / (1.5 * unit), -50, 50)))
        refl = refl * np.exp(-0.0275 * de * mask[..., None] * rng.uniform(0.9, 1.1, 3))
        truth, accept = "patchy", "patchy|cannot_tell"
    if kind == "puddle":
        mask = blobs(rng, (h, w), rng.uniform(0.04, 0.15), rng.uniform(80, 200) * unit, rng.uniform(2, 5) * unit)
        refl = refl * np.exp(-0.8 * mask[..., None] * np.array([0.93, 1.0, 1.08]))
        truth, accept = "patchy", "patchy|cannot_tell"
    if kind.startswith("saw_cuts"):
        t = rng.uniform(-0.1, 0.1)
        for place in np.arange(rng.uniform(0.1, 0.3), 1, rng.uniform(0.25, 0.4)) * w:
            d = x * np.cos(t) + y * np.sin(t) - place
            refl = refl * (1 - 0.6 * np.exp(-0.5 * (d / (1.2 * unit)) ** 2))[..., None]
    if kind.startswith("joints"):
        t = rng.uniform(-0.3, 0.3)
        for axis in range(2):
            d = x * np.cos(t + axis * np.pi / 2) + y * np.sin(t + axis * np.pi / 2)
            for place in rng.uniform(0.2, 0.8, rng.integers(1, 3)) * (w if axis == 0 else h):
                refl = refl * (1 - rng.uniform(0.4, 0.8) / (1 + np.exp(np.minimum((np.abs(d - place) - 3.0 * unit) / (0.8 * unit), 50))))[..., None]
    # The light.
    tint = rng.uniform(0.9, 1.1, 3)
    if kind.startswith("colored_light"):
        tint = np.array([1.45, 1.0, 0.55]) if rng.random() < 0.5 else np.array([0.75, 1.0, 1.4])
    t = rng.uniform(0, 2 * np.pi)
    u = ((x - w / 2) * np.cos(t) + (y - h / 2) * np.sin(t)) / w
    r2 = ((x - w / 2) ** 2 + (y - h / 2) ** 2) / (w * w / 4 + h * h / 4)
    light = np.exp(rng.uniform(0, 0.4) * u) * (1 - rng.uniform(0, 0.35) * r2)
    light = light[..., None] * tint
    if kind == "two_lights":
        g = np.exp(-(((x - rng.uniform(0.2, 0.8) * w) ** 2 + (y - rng.uniform(0.2, 0.8) * h) ** 2) / (2 * (rng.uniform(0.15, 0.3) * w) ** 2)))
        light = light * (1 + rng.uniform(0.15, 0.4) * g[..., None] * np.array([1.4, 1.0, 0.5]))
        accept = "cannot_tell|uniform"
    sky = np.array([0.88, 1.0, 1.12]) if rng.random() < 0.7 else np.ones(3)
    sky = 1 + (sky - 1) * rng.uniform(0.3, 1.3)
    keep = None
    depth = rng.uniform(0.2, 0.65)
    if kind in ("straight_shade", "shade_and_patch"):
        t = rng.uniform(0, 2 * np.pi)
        d = (x - w / 2) * np.cos(t) + (y - h / 2) * np.sin(t) - rng.uniform(-0.2, 0.2) * w
        keep = 1 / (1 + np.exp(-np.clip(d / (rng.uniform(1, 8) * unit), -50, 50)))
    if kind == "curved_shade":
        r = rng.uniform(0.3, 1.0) * w
        t = rng.uniform(0, 2 * np.pi)
        d = np.hypot(x - w / 2 - r * np.cos(t), y - h / 2 - r * np.sin(t)) - r + 10 * unit * noise(rng, (h, w), 150 * unit)
        keep = 1 / (1 + np.exp(-np.clip(d / (rng.uniform(1, 10) * unit), -50, 50)))
    if kind == "blinds":
        t, pitch = rng.uniform(0, 2 * np.pi), rng.uniform(40, 140) * unit
        d = np.cos(2 * np.pi * ((x * np.cos(t) + y * np.sin(t)) / pitch + rng.random())) - rng.uniform(-0.4, 0.4)
        part = 1 / (1 + np.exp(-((x - w / 2) * np.sin(t) - (y - h / 2) * np.cos(t) + rng.uniform(-0.2, 0.3) * w) / (6 * unit)))
        keep = 1 - part * (1 - 1 / (1 + np.exp(-d * rng.uniform(3, 20))))
    if kind == "double_shade":
        t, gap = rng.uniform(0, 2 * np.pi), rng.uniform(0.03, 0.2) * w
        d = (x - w / 2) * np.cos(t) + (y - h / 2) * np.sin(t)
        keep = sum(0.5 / (1 + np.exp(-np.clip((d - off) / (rng.uniform(1, 8) * unit), -50, 50))) for off in (0, gap))
    if kind == "soft_shade":
        t = rng.uniform(0, 2 * np.pi)
        d = (x - w / 2) * np.cos(t) + (y - h / 2) * np.sin(t) + 40 * unit * noise(rng, (h, w), 200 * unit)
        keep = 1 / (1 + np.exp(-d / (rng.uniform(20, 80) * unit)))
    if kind == "dappled":
        keep = blobs(rng, (h, w), rng.uniform(0.2, 0.6), rng.uniform(20, 60) * unit, rng.uniform(8, 30) * unit)
    if kind == "thin_shade":
        d = np.abs(x * np.cos(0.6) + y * np.sin(0.6) - 0.5 * w + 60 * unit * np.sin(y / (200 * unit)))
        keep = 1 / (1 + np.exp(-(d - rng.uniform(6, 20) * unit) / (2 * unit)))
    if keep is not None:
        light = light * (keep[..., None] + (1 - keep[..., None]) * (1 - depth) * sky)
        if kind != "shade_and_patch":
            accept = "cannot_tell"
    if kind == "tarp":
        t = rng.uniform(0, 2 * np.pi)
        d = ((x - w / 2) * np.cos(t) + (y - h / 2) * np.sin(t)) / w
        cast = [np.array([0.6, 0.9, 1.5]), np.array([0.7, 1.3, 0.7]), np.array([1.5, 0.9, 0.6])][rng.integers(0, 3)]
        light = light * (1 + rng.uniform(0.1, 0.6) / (1 + np.exp(-d * rng.uniform(4, 30)))[..., None] * (cast - 1))
        accept = "cannot_tell|uniform"
    if kind.startswith("vignette"):
        light = light * ((1 + r2 * rng.uniform(0.4, 1.0)) ** -2)[..., None]
    if kind.startswith("flash"):
        far = ((x - w / 2) ** 2 + (y - rng.uniform(0.3, 0.7) * h) ** 2) / w ** 2
        light = 0.15 * light + ((1 + far * rng.uniform(0.7, 2.5)) ** -2)[..., None] * np.array([0.95, 1.0, 1.08])
    image = refl * light
    if kind.startswith("hose"):
        color = [np.array([0.05, 0.2, 0.06]), np.array([0.5, 0.2, 0.03]), np.array([0.03, 0.03, 0.03]), np.array([0.55, 0.5, 0.1])][rng.integers(0, 4)]
        course = rng.uniform(0.2, 0.8) * h + rng.uniform(30, 200) * unit * np.sin(x / (rng.uniform(80, 300) * unit) + rng.uniform(0, 6))
        slope = np.abs(np.gradient(course, axis=1))
        away = np.abs(y - course) / np.hypot(1, slope) / (rng.uniform(6, 16) * unit)
        round_ = np.sqrt(np.clip(1 - away ** 2, 0, 1))
        image = np.where((away < 1)[..., None], color * light * (0.5 + 0.7 * round_)[..., None], image)
        image = image * np.where((away >= 1) & (away < 1.4) & (y > course), 0.6, 1.0)[..., None]
    if kind == "puddle":
        sheen = np.clip(noise(rng, (h, w), 250 * unit) * 0.5 + 0.5, 0, 1) * mask
        image = image + (sheen * rng.uniform(0.0, 0.25))[..., None] * np.array([0.85, 1.0, 1.2])
    if kind.startswith("wall"):
        level = rng.uniform(0.08, 0.3) * h + rng.uniform(-0.1, 0.1) * (x - w / 2)
        color = [np.array([0.35, 0.15, 0.1]), np.array([0.7, 0.7, 0.68]), np.array([0.12, 0.2, 0.05]), np.array([0.3, 0.3, 0.3])][rng.integers(0, 4)]
        image = np.where((y < level)[..., None], color * light * np.exp(0.15 * noise(rng, (h, w), 10 * unit))[..., None], image)
    # The card.
    card, box = "none", None
    exposure = rng.uniform(0.85, 1.15)
    if kind == "glare":
        g = np.exp(-(((x - rng.uniform(0.2, 0.8) * w) ** 2 + (y - rng.uniform(0.2, 0.8) * h) ** 2) / (2 * (rng.uniform(0.05, 0.15) * w) ** 2)))
        image = image + (g * rng.uniform(0.1, 0.9))[..., None] * tint
        accept = "cannot_tell"
    if not kind.startswith("no_card") and rng.random() < 0.75:
        card = "gray" if rng.random() < 0.5 else "paper"
        cw = int(rng.uniform(0.11, 0.16) * w)
        ch = int(cw * 0.74)
        cx, cy = int(rng.uniform(0.05, 0.8) * w), int(rng.uniform(0.05, 0.75) * h)
        if kind.startswith("card_cut"):
            cx, cw = 0, cw // 2
        box = (cx, cy, cw, ch)
        part = (slice(cy, cy + ch), slice(cx, cx + cw))
        image[part] = (0.184 if card == "gray" else 0.87) * light[part] * np.exp(0.004 * rng.standard_normal((ch, cw, 1)))
        if kind == "card_in_shade":
            # A hand, or the one who takes the picture: over part of the card and a little around it.
            dark = np.hypot((x - cx - rng.uniform(0, 1) * cw) / cw, (y - cy - rng.uniform(0, 1) * ch) / cw) - rng.uniform(0.5, 1.5)
            image = image * (1 - rng.uniform(0.2, 0.6) / (1 + np.exp(np.minimum(dark * cw / (4 * unit), 50))))[..., None]
            accept = "cannot_tell"
    if kind.startswith("boots"):
        side = rng.integers(0, 2)
        color = [np.array([0.03, 0.03, 0.032]), np.array([0.12, 0.07, 0.035]), np.array([0.25, 0.17, 0.09]), np.array([0.05, 0.08, 0.16])][rng.integers(0, 4)]
        for dx in (0.0, 0.13):
            cx, cy = (0.25 + 0.4 * side + dx) * w, h * rng.uniform(0.98, 1.05)
            inside = np.hypot((x - cx) / (0.05 * w), (y - cy) / (0.2 * h)) < 1
            image[inside] = color * light[inside] * np.exp(0.1 * noise(rng, (h, w), 12 * unit)[inside])[:, None]
            rim = (np.hypot((x - cx) / (0.05 * w), (y - cy) / (0.2 * h)) < 1.15) & ~inside
            image[rim] *= 0.6
    if kind.startswith("tilted"):
        k = rng.uniform(0.3, 0.7)
        s = 1 / (1 + k * (1 - y / h))
        sx, sy = (x - w / 2) * s ** -1 * 0.55 + w / 2, h - (h - y) * (1 + k) * 0.6
        image = np.stack([map_coordinates(image[..., i], [sy, sx], order=1, mode="reflect") for i in range(3)], -1)
        card, box = "none", None
    # The camera.
    bright = np.median(image[..., 1])
    image = image * exposure * rng.uniform(0.24, 0.36) / bright
    if kind == "overexposed":
        image = image * rng.uniform(2.5, 4)
        accept = "uniform|cannot_tell"
    if kind == "dark_picture":
        image = image * rng.uniform(0.01, 0.03)
        accept = "cannot_tell"
    if kind.startswith("blurred"):
        image = gaussian_filter(image, (rng.uniform(4, 12) * unit,) * 2 + (0,))
    image = image + rng.standard_normal(image.shape) * np.sqrt(np.maximum(image, 0)) * rng.uniform(0.003, 0.012)
    if box is not None and kind in ("even", "patches") and np.median(image[box[1]:box[1] + box[3], box[0]:box[0] + box[2], 1]) > 0.95:
        image *= 0.6
    image = np.clip(image, 0, 1)
    image = np.where(image <= 0.0031308, 12.92 * image, 1.055 * image ** (1 / 2.4) - 0.055)
    return (np.clip(image, 0, 1) * 255 + 0.5).astype(np.uint8), truth, accept, de, card, box


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("folder")
    parser.add_argument("--first", type=int, default=0)
    parser.add_argument("--each", type=int, default=20)
    parser.add_argument("--kinds", default=",".join(KINDS))
    parser.add_argument("--width", type=int, default=1600)
    options = parser.parse_args()
    folder = pathlib.Path(options.folder)
    folder.mkdir(parents=True, exist_ok=True)
    with open(folder / "labels.csv", "w", newline="") as out:
        rows = csv.writer(out, lineterminator="\n")
        rows.writerow("file,truth,accept,contrast_dE00,kind,card,card_x,card_y,card_w,card_h,card_reflectance,seed".split(","))
        for kind in options.kinds.split(","):
            for i in range(options.each):
                seed = options.first + i
                image, truth, accept, de, card, box = scene(kind, [seed, KINDS.index(kind)], options.width)
                quality = 8 + 6 * (seed % 5) if kind.startswith("heavy_jpeg") else 88 + seed % 8
                name = f"{kind}_{seed}.jpg"
                data = io.BytesIO()
                Image.fromarray(image).save(data, "JPEG", quality=quality)
                (folder / name).write_bytes(data.getvalue())
                place = list(box) if box else [""] * 4
                rows.writerow([name, truth, accept, round(de, 1), kind, card, *place,
                               {"none": "", "gray": 0.184, "paper": 0.87}[card], seed])


if __name__ == "__main__":
    main()
