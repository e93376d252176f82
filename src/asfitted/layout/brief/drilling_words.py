"""Where hidden cables may be looked for, and what may be cut of joists, in words."""

from __future__ import annotations

from asfitted.reference.heights import prescribed_zone_mm
from asfitted.reference.loader import table


def zone_words() -> tuple[str, ...]:
    """Return where hidden cables may be looked for, and what may be cut of joists."""
    top = prescribed_zone_mm("top of wall").value
    corner = prescribed_zone_mm("vertical corner").value
    joists = {row["key"]: row["value"] for row in table("containment", "joist_holes").rows}
    share = float(joists["hole_max_fraction_of_depth"])
    notch = float(joists["notch_max_fraction_of_depth"])
    return (
        (
            "Hidden cables may run in these zones (BS 7671 522.6.202): "
            f"within {top:.0f} of the top of a wall, within {corner:.0f} of a corner where walls "
            "meet, and straight up, down and level from each point, board or box, on either face. "
            "Old cables may lie anywhere. Scan first; drill there only for the fixings listed, at "
            "marked places, with the circuit dead. Where a cable is hidden less than 50 deep it "
            "also needs an RCD of 30 mA or mechanical "
            "protection (522.6.203)."
        ),
        (
            f"Joists: holes on the centre line, at most {share:g} of the depth, between 25 % and "
            f"40 % of the span from an end, {joists['hole_spacing_min']} apart, cable at least "
            f"{joists['least_depth_from_top_or_bottom_mm']} from top and bottom. Notches at most "
            f"{notch:g} of the depth, between 7 % and 25 % of the span. Never both in one place, "
            "never in a truss or a made beam."
        ),
    )
