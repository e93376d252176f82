"""The codes of everything that can be wrong with a spec, in one place. A code is never reused."""

from __future__ import annotations

from enum import StrEnum


class Code(StrEnum):
    """Stable codes; the comment says what each means to the reader."""

    FILE = "SP-01"  # the file cannot be read
    YAML = "SP-02"  # the file is not readable YAML (tab, bracket, depth)
    YAML_FEATURE = "SP-03"  # anchors, aliases, tags and further documents are not taken
    KEY_TWICE = "SP-04"  # one key written twice
    VERSION = "SP-05"  # "asfitted:" names no version that this program knows
    UNKNOWN_KEY = "SP-06"  # a key that has no meaning here
    MISSING = "SP-07"  # something that must be written is not
    WORDS = "SP-08"  # words that are not understood
    FIGURE = "SP-09"  # a figure or unit that is not understood
    SHAPE = "SP-10"  # a list where keys belong, and the like
    NAME = "SP-11"  # a name that nothing in the job bears
    NAME_TWICE = "SP-12"  # one tag or name for two things
    WALLS = "SP-13"  # the walls of a room do not close
    POSITION = "SP-14"  # a position off its wall or in an opening
    WAY = "SP-15"  # a way that is not there, or is taken
    FEED = "SP-16"  # boards and the circuits that feed them do not agree
    RUN = "SP-17"  # a run of containment that cannot be followed
    CIRCUIT = "SP-18"  # a circuit that lacks or contradicts something
    DATA_LINK = "SP-19"  # a port, channel or cabinet of the data part
