"""Options and fixtures for every test: golden files hold the structure of drawings as text.

``pytest --update-golden`` writes what the code draws now and fails those tests on purpose, so that
such a run cannot pass for a check. Read the difference like code before keeping it.
"""

from __future__ import annotations

import difflib
import importlib
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from asfitted.pipeline import check_job, lay_out_job, model_of

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from asfitted.layout.sheet_layout import SheetLayout
    from asfitted.layout.sheet_model import Model

GOLDEN = Path(__file__).parent / "golden"
SPECS = Path(__file__).parent.parent / "specs"
DEMOS = ("pottery-studio", "community-shed", "shop-cctv")
LARGE = ("community-hall", "two-storey-office")  # seconds each to lay out: only where asked for


@pytest.fixture(scope="session")
def cairo() -> None:
    """Skip, saying so, where previews cannot be made for want of the cairo library."""
    try:
        importlib.import_module("cairosvg")
    except (ImportError, OSError) as error:
        pytest.skip(f"NOT COMPARED with cairo: {error}")


@pytest.fixture(scope="session")
def demo_models() -> dict[str, Model]:
    """Return each demo job, calculated and checked, by its name."""
    return {name: model_of(check_job(SPECS / f"{name}.yaml")) for name in DEMOS}


@pytest.fixture(scope="session")
def demo_sheets() -> dict[str, tuple[SheetLayout, ...]]:
    """Return every sheet of each demo job, by the name of the job."""
    return {name: lay_out_job(check_job(SPECS / f"{name}.yaml")) for name in DEMOS}


@pytest.fixture(scope="session")
def every_job(
    demo_models: dict[str, Model], demo_sheets: dict[str, tuple[SheetLayout, ...]]
) -> dict[str, tuple[Model, tuple[SheetLayout, ...]]]:
    """Return each job of the folder of specs with all its sheets, the large ones too."""
    jobs = {name: (demo_models[name], demo_sheets[name]) for name in DEMOS}
    for name in LARGE:
        checked = check_job(SPECS / f"{name}.yaml")
        jobs[name] = (model_of(checked), lay_out_job(checked))
    return jobs


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption(
        "--update-golden", action="store_true", help="write golden files, and fail saying so"
    )


@pytest.fixture
def golden(request: pytest.FixtureRequest) -> Callable[[str, Sequence[str]], None]:
    """Return a check of lines of text against ``tests/golden/<name>.txt``."""
    update = bool(request.config.getoption("--update-golden"))

    def check(name: str, lines: Sequence[str]) -> None:
        path = GOLDEN / f"{name}.txt"
        if update:
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text("\n".join(lines) + "\n", encoding="utf-8")
            pytest.fail(f"wrote golden {name}: read the difference, then run without the option")
        if not path.is_file():
            pytest.fail(f"no golden file {name}: run pytest --update-golden")
        kept = path.read_text(encoding="utf-8").splitlines()
        changes = list(difflib.unified_diff(kept, list(lines), "golden", "drawn", lineterm="", n=0))
        if changes:
            pytest.fail(f"golden {name} differs:\n" + "\n".join(changes[:60]))

    return check
