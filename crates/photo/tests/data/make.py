"""Makes the pictures in this folder, with coding features that the Rust encoder used in the tests
does not write: progressive JPEG, restart markers, CMYK with a color-transform note, interleaved
metadata. Run with Pillow 13.0.0:  python make.py

Every text that must not survive contains the word SECRET.
"""

import pathlib

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
