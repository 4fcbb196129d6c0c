"""A square code that leads a phone's camera from the sheet back to its page."""

import io

import segno


def square_code(address: str) -> str:
    """Return a QR code (ISO/IEC 18004, error correction level M) as an SVG drawing, its quiet zone included."""
    drawn = io.BytesIO()
    code = segno.make(address, error="m", boost_error=False, micro=False)
    code.save(drawn, kind="svg", xmldecl=False, svgns=True, border=4, omitsize=True, dark="#000")
    return drawn.getvalue().decode()
