"""Makes the pictures in this folder, with coding features that the Rust encoder used in the tests
does not write: progressive JPEG, restart markers, CMYK with a color-transform note, interleaved
metadata, interlaced and palette PNG. Run with Pillow 13.0.0:  python make.py

Every text that must not survive contains the word SECRET.
"""

import pathlib
import struct
import zlib

from PIL import Image, ImageCms, PngImagePlugin

HERE = pathlib.Path(__file__).parent
XMP = b"<x:xmpmeta xmlns:x='adobe:ns:meta/'>SECRET 48.8584 2.2945</x:xmpmeta>"


def picture(mode):
    image = Image.new("RGB", (40, 24))
    image.putdata([(6 * x, 10 * y, (x * y) % 256) for y in range(24) for x in range(40)])
    return image.convert(mode)


def exif():
    block = Image.Exif()
    block[0x0112] = 6
    block[0x010F] = "SECRET maker"
    block[0x010E] = "SECRET caption"
    detail = block.get_ifd(0x8769)
    detail[0x9003] = "2026:05:04 07:08:09"
    detail[0x9011] = "-05:00"
    detail[0x927C] = b"SECRET maker note"
    gps = block.get_ifd(0x8825)
    gps[1], gps[2], gps[3], gps[4] = "N", (48.0, 51.0, 30.24), "E", (2.0, 17.0, 40.2)
    gps[28] = b"ASCII\0\0\0SECRET area"
    return block


profile = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
common = {"exif": exif(), "xmp": XMP, "icc_profile": profile, "comment": b"SECRET comment", "quality": 90}
picture("RGB").save(HERE / "progressive.jpg", progressive=True, **common)
picture("RGB").save(HERE / "restarts.jpg", restart_marker_blocks=1, **common)
picture("CMYK").save(HERE / "cmyk.jpg", **common)
picture("L").save(HERE / "gray.jpg", **common)

text = PngImagePlugin.PngInfo()
text.add_text("Comment", "SECRET comment")
text.add_itxt("XML:com.adobe.xmp", XMP.decode(), zip=False)
picture("RGB").save(HERE / "texts.png", pnginfo=text, exif=exif(), icc_profile=profile)


# Just large enough to be measured (the shorter side needs 240 pixels), and smooth, so that they stay small.
def slab(mode):
    image = Image.new("RGB", (320, 244))
    patch = [18 if (x - 150) ** 2 + (y - 130) ** 2 < 3600 else 0 for y in range(244) for x in range(320)]
    grain = [(x * x + 3 * x * y + 7 * y * y) % 5 for y in range(244) for x in range(320)]
    image.putdata([(150 + g - p, 141 + g - p, 129 + g - p) for g, p in zip(grain, patch)])
    return image.convert(mode)


slab("RGB").save(HERE / "slab_progressive.jpg", progressive=True, exif=exif(), quality=85)
slab("RGB").convert("P", palette=Image.Palette.ADAPTIVE, colors=12).save(HERE / "slab_palette.png", exif=exif())


def chunk(name, data):
    return struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data))


def interlaced(image, name):
    """A PNG in the seven passes of PNG third edition, section 8.2: start and step along x and y."""
    passes = [(0, 8, 0, 8), (4, 8, 0, 8), (0, 4, 4, 8), (2, 4, 0, 4), (0, 2, 2, 4), (1, 2, 0, 2), (0, 1, 1, 2)]
    rows = b""
    for x0, dx, y0, dy in passes:
        for y in range(y0, image.height, dy):
            rows += b"\0" + b"".join(bytes(image.getpixel((x, y))) for x in range(x0, image.width, dx))
    header = struct.pack(">IIBBBBB", image.width, image.height, 8, 2, 0, 0, 1)
    whole = chunk(b"IHDR", header) + chunk(b"IDAT", zlib.compress(rows, 9)) + chunk(b"IEND", b"")
    (HERE / name).write_bytes(b"\x89PNG\r\n\x1a\n" + whole)


interlaced(slab("RGB"), "slab_interlaced.png")


def blank(side_x, side_y, name):
    """A whole PNG of one color, one bit a pixel, that is a few kilobytes for very many pixels."""
    packer, row = zlib.compressobj(9), b"\0" * (1 + (side_x + 7) // 8)
    rows = b"".join(packer.compress(row) for _ in range(side_y)) + packer.flush()
    header = struct.pack(">IIBBBBB", side_x, side_y, 1, 3, 0, 0, 0)
    whole = chunk(b"IHDR", header) + chunk(b"PLTE", bytes([150, 141, 129])) + chunk(b"IDAT", rows) + chunk(b"IEND", b"")
    (HERE / name).write_bytes(b"\x89PNG\r\n\x1a\n" + whole)


blank(10_000, 10_000, "hundred_megapixels.png")
blank(8_192, 6_144, "most_megapixels.png")
