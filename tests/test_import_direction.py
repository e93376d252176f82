"""Imports go one way, and drawing libraries stay in their rooms."""

from __future__ import annotations

import ast
import subprocess
import sys
from pathlib import Path

import pytest

SOURCE = Path(__file__).parent.parent / "src" / "asfitted"
#: Each part may import from itself and from parts to its left.
ORDER = [
    "errors",
    "rounding",
    "quantities",
    "geometry",
    "fonts",
    "reference",
    "spec",
    "resolve",
    "calculate",
    "quick_sums",
    "check",
    "explain",
    "compare",
    "layout",
    "sheets",
    "draw",
    "pack",
    "pipeline",
    "cli",
    "dev",
    "__main__",
]
#: Narrower than the order: what a part may import of ours, itself aside.
ONLY = {
    "draw": {"errors", "geometry", "fonts", "layout.sheet_layout"},
    "calculate": {"errors", "rounding", "geometry", "fonts", "reference", "resolve"},
}
#: Part-to-library: the only places that may import a drawing library.
LIBRARIES = {
    "schemdraw": {"draw"},
    "svgwrite": {"draw"},
    "cairosvg": {"draw"},
    "ezdxf": {"draw"},
    "reportlab": {"draw"},
    "pypdf": {"pack"},
    "xlsxwriter": {"pack"},
}
#: Only these may print; only these may look at the clock, the environment or the working folder.
MAY_PRINT = {"cli"}
#: Generated jobs are drawn by lot, from a seed.
MAY_DRAW_LOTS = {"dev"}


def part_of(name: str) -> str:
    return name.split(".")[1] if "." in name else "__init__"


def modules() -> list[tuple[str, Path]]:
    found = []
    for path in sorted(SOURCE.rglob("*.py")):
        parts = path.relative_to(SOURCE.parent).with_suffix("").parts
        found.append((".".join(p for p in parts if p != "__init__"), path))
    return found


def imports(path: Path) -> list[str]:
    names = []
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            names += [alias.name for alias in node.names]
        elif isinstance(node, ast.ImportFrom) and node.module and node.level == 0:
            names.append(node.module)
            names += [f"{node.module}.{alias.name}" for alias in node.names]
    return names


@pytest.mark.parametrize(("name", "path"), modules(), ids=[name for name, _ in modules()])
def test_module_imports_only_from_parts_before_its_own(name: str, path: Path) -> None:
    if name == "asfitted":
        return
    own = part_of(name)
    allowed = set(ORDER[: ORDER.index(own) + 1])
    for imported in imports(path):
        top = imported.split(".")[0]
        if top in LIBRARIES:
            assert own in LIBRARIES[top], f"{name} imports {imported}"
        if top != "asfitted" or imported in {"asfitted", "asfitted.__version__"}:
            continue
        part = part_of(imported)
        assert part in allowed, f"{name} imports {imported}"
        if own in ONLY and part != own:
            narrow = {part, ".".join(imported.split(".")[1:3])}
            assert narrow & ONLY[own], f"{name} imports {imported}"


def test_rules_symbols_and_sheets_do_not_know_each_other() -> None:
    for folder in ("check/rules", "draw/symbols", "sheets"):
        room = SOURCE / folder
        package = f"asfitted.{folder.replace('/', '.')}"
        siblings = {p.stem for p in room.glob("*.py") if not p.stem.startswith("_")}
        for path in room.glob("*.py"):
            for imported in imports(path):
                rest = imported.removeprefix(package + ".").split(".")[0]
                known = imported.startswith(package + ".") and rest in siblings
                assert not known or path.stem == "__init__", f"{path.name} imports {imported}"


def test_print_and_clocks_only_where_allowed() -> None:
    for name, path in modules():
        tree = ast.parse(path.read_text(encoding="utf-8"))
        called = {ast.unparse(node.func) for node in ast.walk(tree) if isinstance(node, ast.Call)}
        if part_of(name) not in MAY_PRINT:
            assert "print" not in called, name
        for banned in ("datetime.now", "datetime.today", "date.today", "time.time", "Path.cwd"):
            assert not any(c.endswith(banned) for c in called), f"{name} calls {banned}"
        by_chance = {"random", "secrets", "uuid"} & {i.split(".")[0] for i in imports(path)}
        assert not by_chance or part_of(name) in MAY_DRAW_LOTS, name
        # what is drawn by lot must come again from its seed
        assert not any(c.startswith("random.") and c != "random.Random" for c in called), name


def test_the_calculation_imports_no_drawing_library() -> None:
    code = (
        "import sys; import asfitted.check.run, asfitted.calculate.calculate;"
        "print(sorted({'schemdraw','svgwrite','cairosvg','reportlab','pypdf'} & set(sys.modules)))"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"
