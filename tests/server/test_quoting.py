from __future__ import annotations

from pathlib import Path

import pytest

from wardwright.errors import OfficeError
from wardwright.server.desk import Desk
from wardwright.server.quoting import NOTHING, has_quote, offered, quoted
from wardwright.store.catalogue import load_catalogue
from wardwright.store.firms import sample_firm, write_firm
from wardwright.store.jobs.opening import new_job
from wardwright.store.office import FIRM
from wardwright.store.samples import read_sample


def test_only_a_firm_that_is_told_offers_anything(tmp_path: Path) -> None:
    with new_job(tmp_path / "a.job", read_sample("terrace"), author="fitter") as job:
        desk = Desk(job, load_catalogue())
        assert offered(desk, tmp_path) == NOTHING
        assert not has_quote(desk, tmp_path)
        assert quoted(desk, tmp_path).firm is None
        write_firm(tmp_path / FIRM, sample_firm("example-alarms"))
        found = offered(desk, tmp_path).quote
        assert has_quote(desk, tmp_path)
        assert found is not None
        assert found.firm == sample_firm("example-alarms")
        (tmp_path / FIRM).write_text("name = ", encoding="utf-8")
        assert not has_quote(desk, tmp_path)
        assert offered(desk, tmp_path) == NOTHING
        with pytest.raises(OfficeError):
            quoted(desk, tmp_path)


def test_with_nothing_to_fit_there_is_no_offer(tmp_path: Path) -> None:
    site = read_sample("terrace").model_copy(update={"devices": (), "zones": ()})
    with new_job(tmp_path / "a.job", site, author="fitter") as job:
        desk = Desk(job, load_catalogue())
        write_firm(tmp_path / FIRM, sample_firm("example-alarms"))
        assert offered(desk, tmp_path).quote is None
        assert not has_quote(desk, tmp_path)


def test_the_logo_is_that_beside_the_firms_file(tmp_path: Path) -> None:
    with new_job(tmp_path / "a.job", read_sample("one-room"), author="fitter") as job:
        desk = Desk(job, load_catalogue())
        assert offered(desk, tmp_path).logo is None
        (tmp_path / "ours.svg").write_text("<svg xmlns='http://www.w3.org/2000/svg'/>", encoding="utf-8")
        firm = sample_firm("example-alarms").model_copy(update={"logo": "ours.svg"})
        write_firm(tmp_path / FIRM, firm)
        found = offered(desk, tmp_path).logo
        assert found is not None
        assert (found.name, found.words) == ("ours.svg", "Logo of Example Alarms")
        (tmp_path / "ours.svg").unlink()
        assert offered(desk, tmp_path).logo is None
