"""Calculate: an ``Installation`` and the reference tables give every figure. Nothing is judged."""
