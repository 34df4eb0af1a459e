"""Writes the page's types from the messages of the workbench; with ``--check`` it compares instead of writing."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import Any

from boxwright.web.contract import CONTRACT, Wire

TARGET = Path(__file__).resolve().parents[1] / "web" / "src" / "contract.ts"
PLAIN = {"string": "string", "integer": "number", "number": "number", "boolean": "boolean", "null": "null"}
HEAD = "// Written by tools/contract.py from src/boxwright/web/contract.py. Change that file, never this one.\n\n"


def typed(schema: dict[str, Any]) -> str:
    """Return the TypeScript type of a JSON schema."""
    if "$ref" in schema:
        return str(schema["$ref"]).rsplit("/", 1)[1]
    if "const" in schema:
        return f'"{schema["const"]}"'
    if "enum" in schema:
        return " | ".join(f'"{one}"' for one in schema["enum"])
    for key in ("anyOf", "oneOf"):
        if key in schema:
            return " | ".join(typed(one) for one in schema[key])
    if "prefixItems" in schema:
        return f"[{', '.join(typed(one) for one in schema['prefixItems'])}]"
    if schema.get("type") == "array":
        inner = typed(schema["items"])
        return f"({inner})[]" if "|" in inner else f"{inner}[]"
    if schema.get("type") == "object":
        return f"Record<string, {typed(schema.get('additionalProperties') or {'type': 'string'})}>"
    return PLAIN[str(schema["type"])]


def contract() -> str:
    """Return the whole file of types."""
    ways = Wire.model_json_schema(mode="validation")
    down = Wire.model_json_schema(mode="serialization")
    lines = [HEAD, f"export const CONTRACT = {CONTRACT};\n"]
    sent = _reached(ways, "up")
    for name, shape in sorted(down["$defs"].items()):
        required = set(ways["$defs"].get(name, {}).get("required", ())) if name in sent else set(shape["properties"])
        fields = [f"  {key}{'' if key in required else '?'}: {typed(one)};" for key, one in shape["properties"].items()]
        lines.append("export type " + name + " = {\n" + "\n".join(fields) + "\n};\n")
    for name in ("up", "down"):
        lines.append(f"export type {name.capitalize()} = {typed(down['properties'][name])};\n")
    return "\n".join(lines)


def _reached(schema: dict[str, Any], start: str) -> set[str]:
    """Return the names of all messages that are sent up: their fields with a default may be left out."""
    found: set[str] = set()
    open_ones = [schema["properties"][start]]
    while open_ones:
        one = open_ones.pop()
        if isinstance(one, dict):
            name = str(one.get("$ref", "")).rsplit("/", 1)[-1]
            if name and name not in found:
                found.add(name)
                open_ones.append(schema["$defs"][name])
            open_ones += list(one.values())
        elif isinstance(one, list):
            open_ones += one
    return found


def main() -> int:
    """Write the file, or say whether it is as it would be written."""
    text = contract()
    if "--check" in sys.argv:
        same = TARGET.exists() and TARGET.read_text(encoding="utf-8") == text
        sys.stdout.write("the types are current\n" if same else "the types differ: run python tools/contract.py\n")
        return 0 if same else 1
    TARGET.write_text(text, encoding="utf-8")
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
