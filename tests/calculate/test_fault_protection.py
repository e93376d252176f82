"""Fuses and breakers with settings, from the phrase to limit of Zs, energy and sizing."""

from __future__ import annotations

from pathlib import Path

import pytest

from asfitted.calculate.fault_protection import energy_at_board, energy_at_far_end, loop_limit
from asfitted.pipeline import Checked, check_job
from asfitted.reference.fuse_energy import prearcing_energy, total_energy
from asfitted.resolve.installation import Device

STUDIO = Path(__file__).parent.parent.parent / "specs" / "pottery-studio.yaml"
FUSE = Device("32 A BS 88-3", "fuse", "BS 88-3", 32, "TP")


def _job(tmp_path: Path, device: str) -> Checked:
    """Return the studio with another device for its two 32 A socket circuits."""
    path = tmp_path / "job.yaml"
    text = STUDIO.read_text()
    assert "device: C32 TP 6 kA" in text
    path.write_text(text.replace("device: C32 TP 6 kA", f"device: {device}", 1))
    return check_job(path)


def test_energies_of_gates() -> None:
    # IEC 60269-1 gates (memory): 32 A melts at 1 800 A2s at least, lets through 5 000 A2s at most
    assert prearcing_energy("BS 88-3", 32).value == 1800
    assert total_energy("BS 88-2", 32).value == 5000
    # BS 3036 30 A: 210 A in 0.4 s (218.5 V / 1.04 ohm), so 210^2 x 0.4 = 17 640 A2s bounds it
    assert total_energy("BS 3036", 30).value == pytest.approx(210**2 * 0.4, rel=0.001)


def test_a_fuse_far_above_its_operating_current_lets_no_more_through() -> None:
    # 32 A BS 88-3: 0.91 ohm in 0.4 s (Table 41.2, memory), so 240.1 A squared x 0.4 s bounds it
    found = energy_at_far_end(FUSE, 900.0, 0.4)
    assert not isinstance(found, str)
    assert found.energy_a2s == pytest.approx(240.1**2 * 0.4, rel=0.001)
    below = energy_at_far_end(FUSE, 100.0, 0.4)
    assert not isinstance(below, str)
    assert below.energy_a2s == pytest.approx(100**2 * 0.4)


@pytest.mark.parametrize(
    ("device", "zs_max", "energy"),
    [
        # Table 41.2 (b) at 0.4 s (memory): 32 A BS 88-3, 0.91 ohm; gates 5 000 A2s
        ("32 A BS 88-3 TP 16 kA", 0.91, 5000),
        # Table 41.2 (c) at 0.4 s (memory): 30 A BS 3036, 1.04 ohm; bound 420^2 x 0.1
        ("30 A BS 3036 TP 4.5 kA", 1.04, 17640),
        # by hand: 0.95 x 230 V / (1.2 x 320 A); (3 600 A)^2 x 0.1 s
        ("MCCB 63 A Ir 32 A Im 320 A TP 25 kA", 0.95 * 230 / 384, 3600**2 * 0.1),
    ],
)
def test_a_device_end_to_end(tmp_path: Path, device: str, zs_max: float, energy: float) -> None:
    job = _job(tmp_path, device)
    circuit, result = job.installation.circuits["DB1/3TP"], job.results.circuits["DB1/3TP"]
    assert circuit.device.rating_a == (30 if "3036" in device else 32)
    assert result.zs_limit_ohm == pytest.approx(zs_max, abs=0.005)
    assert result.line_energy_a2s == pytest.approx(energy, rel=0.01)
    own = [f for f in job.report.findings if f.subject == "DB1/3TP" and f.word == "not checked"]
    assert not own


def test_a_rewirable_fuse_needs_a_larger_cable(tmp_path: Path) -> None:
    # Cc 0.725 (BS 7671 Appendix 4, 5.1): In 30 A needs 30 / (0.725 x 0.73) = 56.7 A, so 10 mm2
    job = _job(tmp_path, "30 A BS 3036 TP 4.5 kA")
    cable = job.results.cables["W05"]
    assert cable.required_tabulated_a == pytest.approx(30 / (0.725 * 0.73), rel=0.001)
    assert cable.csa_mm2 == 10


def test_a_moulded_case_breaker_without_its_setting_is_not_checked(tmp_path: Path) -> None:
    job = _job(tmp_path, "MCCB 32 A TP 25 kA")
    result = job.results.circuits["DB1/3TP"]
    assert result.zs_limit_ohm is None
    assert "Im" in result.zs_limit_source
    limit = loop_limit(job.installation.circuits["DB1/3TP"], job.installation)
    assert limit.zs_ohm is None


def test_a_breaker_with_a_setting_below_its_tripping_current_has_no_known_energy() -> None:
    device = Device("MCCB", "mccb", "BS EN 60947-2", 125, "TP", icn_ka=25, im_a=1250)
    assert isinstance(energy_at_board(device, 1400.0), str)
    assert not isinstance(energy_at_board(device, 1600.0), str)


def test_a_delayed_rcd_before_the_sub_board_guards_its_circuits_on_tt() -> None:
    # BS 7671 411.5.3: RA x IDn not above 50 V, so 50 V / 0.1 A = 500 ohm behind a 100 mA RCD and
    # 50 V / 0.03 A = 1667 ohm behind 30 mA (Table 41.5 states both, memory)
    installation = check_job(STUDIO.parent / "community-hall.yaml").installation
    behind_100_ma = loop_limit(installation.circuits["DB2/1TP"], installation)
    behind_30_ma = loop_limit(installation.circuits["DB2/2L1"], installation)
    assert (behind_100_ma.zs_ohm, behind_100_ma.by_rcd) == (pytest.approx(500), True)
    assert behind_30_ma.zs_ohm == pytest.approx(1667, abs=0.5)
