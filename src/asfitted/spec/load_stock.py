"""Reads the files of stock in hand and of prices that a job file names."""

from __future__ import annotations

from typing import TYPE_CHECKING, TypeVar

from pydantic import ValidationError

from asfitted.errors import SpecError
from asfitted.spec.explain import explain
from asfitted.spec.load_yaml import load_yaml
from asfitted.spec.named_file import beside
from asfitted.spec.stock import PriceListWords, StockWords

if TYPE_CHECKING:
    from pathlib import Path

    from asfitted.errors import Place
    from asfitted.spec.fields import SpecModel

Words = TypeVar("Words", bound="SpecModel")


def load_stock(name: str, place: Place, folder: Path) -> StockWords:
    """Read the file of stock in hand and to order.

    Args:
        name: path as written, relative to ``folder``.
        place: where the job file names it.
        folder: folder of the job file.

    Raises:
        SpecError: the file is missing or something in it is not understood.
    """
    return _read(beside(folder, name, place, "the stock file"), StockWords)


def load_prices(name: str, place: Place, folder: Path) -> PriceListWords:
    """Read the file of prices; arguments and errors as :func:`load_stock`."""
    return _read(beside(folder, name, place, "the price file"), PriceListWords)


def _read(path: Path, model: type[Words]) -> Words:
    document = load_yaml(path)
    try:
        return model.model_validate(document.data)
    except ValidationError as error:
        raise SpecError(explain(error, document, model)) from error
