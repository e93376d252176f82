"""``python -m asfitted``."""

import sys

from asfitted.cli import main

sys.exit(main())
