"""A job file to a checked ``JobSpec``; every problem of the file is told in one run."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any

from pydantic import ValidationError

from asfitted.errors import Place, Problem, SpecError
from asfitted.spec.explain import explain
from asfitted.spec.job_spec import VERSIONS, JobSpec
from asfitted.spec.load_firm import load_firm
from asfitted.spec.load_logo import load_logo
from asfitted.spec.load_results import LoadedResults, load_results
from asfitted.spec.load_stock import load_prices, load_stock
from asfitted.spec.load_yaml import Document, SpecPath, load_yaml
from asfitted.spec.named_file import beside
from asfitted.spec.problem_codes import Code

if TYPE_CHECKING:
    from pathlib import Path

    from asfitted.spec.load_firm import LoadedFirm
    from asfitted.spec.logo import Logo
    from asfitted.spec.stock import PriceListWords, StockWords


@dataclass(frozen=True)
class LoadedJob:
    """A job as written, and where each of its values stands in the file."""

    spec: JobSpec
    document: Document
    firm: LoadedFirm | None = None
    logo: Logo | None = None
    issued: Path | None = None  # the spec of the revision that was issued before this one
    site_marks: tuple[Any, ...] = ()  # resolve.job_record.SiteMark, laid over the job
    stock_file: StockWords | None = None
    prices: PriceListWords | None = None
    results: LoadedResults | None = None

    def place(self, path: SpecPath, *, of_key: bool = False) -> Place:
        """Return where the value at a path such as ``("boards", "DB1", "at")`` stands.

        ``of_key`` asks for the place of the key instead of the value.
        """
        return self.document.place(path, of_key=of_key)


def in_file_order(problems: list[Problem]) -> list[Problem]:
    """Return the problems sorted by line and column; those without a place come first."""

    def where(problem: Problem) -> tuple[int, int]:
        return (problem.place.line, problem.place.column) if problem.place else (0, 0)

    return sorted(problems, key=where)


def _check_version(document: Document) -> None:
    version = document.data.get("asfitted")
    known = " or ".join(VERSIONS)
    if version is None:
        problem = Problem(
            Code.VERSION,
            'the key "asfitted" is missing',
            document.place_at(0, 0),
            f'start the file with "asfitted: {known}", the version of its language',
        )
        raise SpecError([problem])
    if version not in VERSIONS:
        problem = Problem(
            Code.VERSION,
            f'version "{version}" of the spec language is not known',
            document.place(("asfitted",)),
            f"this program reads version {known}",
        )
        raise SpecError([problem])


def load_job(path: Path) -> LoadedJob:
    """Read and check one job file.

    Raises:
        SpecError: with every problem of the file, in the order of its lines.
    """
    document = load_yaml(path)
    _check_version(document)
    try:
        spec = JobSpec.model_validate(document.data)
    except ValidationError as error:
        raise SpecError(in_file_order(explain(error, document))) from error
    loaded = _with_files(LoadedJob(spec, document), path.parent)
    return _with_results(_with_stock(loaded, path.parent), path.parent)


def _with_results(loaded: LoadedJob, folder: Path) -> LoadedJob:
    """Return the job with its measured results, from its own block or the file it names."""
    name, block = loaded.spec.results, loaded.spec.test_results
    if name and block:
        message = 'both "results" and "test results" hold readings'
        place = loaded.place(("results",))
        raise SpecError([Problem(Code.KEY_TWICE, message, place, "keep one of them")])
    if name:
        path = beside(folder, name, loaded.place(("results",)), "the file of test results")
        return replace(loaded, results=load_results(path))
    if block:
        return replace(loaded, results=LoadedResults(block, loaded.document, ("test results",)))
    return loaded


def _with_stock(loaded: LoadedJob, folder: Path) -> LoadedJob:
    """Return the job with the files of stock and prices that it names."""
    stock, prices = loaded.spec.stock_file, loaded.spec.prices
    return replace(
        loaded,
        stock_file=load_stock(stock, loaded.place(("stock file",)), folder) if stock else None,
        prices=load_prices(prices, loaded.place(("prices",)), folder) if prices else None,
    )


def _with_files(loaded: LoadedJob, folder: Path) -> LoadedJob:
    """Return the job with the files it names: firm, logo, and the revision issued before."""
    words = loaded.spec.job
    firm = issued = logo = None
    if words.firm:
        firm = load_firm(words.firm, loaded.place(("job", "firm")), folder)
        if firm.words.logo and firm.logo_place:
            logo = load_logo(firm.words.logo, firm.logo_place, firm.folder)
    elif words.installer and words.installer.logo:
        logo = load_logo(words.installer.logo, loaded.place(("job", "installer", "logo")), folder)
    if words.issued:
        issued = beside(folder, words.issued, loaded.place(("job", "issued")), "the issued job")
    return replace(loaded, firm=firm, logo=logo, issued=issued)
