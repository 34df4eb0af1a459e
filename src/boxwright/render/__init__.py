"""Writers: a laid-out page becomes an SVG, a PDF, a PNG or a DXF. They return text or bytes; who calls them writes."""
