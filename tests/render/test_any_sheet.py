"""Whatever a sheet holds, its pages can be written in every form, and are read back without a complaint."""

from __future__ import annotations

import io
import xml.etree.ElementTree as ET

import pypdf
from ezdxf import recover
from hypothesis import given

from boxwright.drawing.layout import laid_out
from boxwright.drawing.paper import LETTER
from boxwright.drawing.sheet import Sheet
from boxwright.render.dxf import dxf_of
from boxwright.render.pdf import pdf_of
from boxwright.render.svg import svg_of
from tests.drawing.sample import TITLE
from tests.drawing.test_layout import SHEETS
from tests.lanes import examples


@given(SHEETS)
@examples(5, 200)
def test_any_sheet_can_be_written_and_read(any_sheet: Sheet) -> None:
    pages = laid_out(any_sheet, LETTER, TITLE)
    for page in pages:
        ET.fromstring(svg_of(page).encode("utf-8"))
        doc, audit = recover.read(io.BytesIO(dxf_of(page)))
        assert (audit.errors, audit.fixes) == ([], [])
        assert len(doc.modelspace().query("DIMENSION")) == len(page.dimensions)
    assert len(pypdf.PdfReader(io.BytesIO(pdf_of(pages))).pages) == len(pages)
