from __future__ import annotations

import pytest

from wardwright.documents.content.suggestions import suggestions
from wardwright.model.catalogue import Catalogue
from wardwright.model.fixture import Outlet
from wardwright.model.site import Site
from wardwright.rules.finding import Mend

ON_WALL = (("on", "wall"), ("wall", "g-hall"), ("side", "right"), ("offset_m", 2.0))


def one(mend: Mend, site: Site, catalogue: Catalogue) -> tuple[str, tuple[float, float], str]:
    (sketch,) = suggestions((mend,), site, catalogue, at_most=9)
    return sketch.storey, sketch.points[0], sketch.label


def test_a_device_on_a_wall_is_drawn_off_its_face(site: Site, catalogue: Catalogue) -> None:
    mend = Mend(action="move-device", subject="control-unit", values=ON_WALL)
    # The wall's line is at x = 1.95, 0.1 m thick; a device stands 0.04 m off its face.
    assert one(mend, site, catalogue) == ("ground", pytest.approx((1.95 + 0.05 + 0.04, 2.0)), "CU here")


def test_a_device_moved_along_its_wall_stays_on_its_side(site: Site, catalogue: Catalogue) -> None:
    mend = Mend(action="move-device", subject="md-landing", values=(("offset_m", 3.0),))
    storey, point, label = one(mend, site, catalogue)
    assert (storey, label) == ("first", "MD3 here")
    assert point == pytest.approx((1.95 - 0.05 - 0.04, 3.0))


def test_a_contact_is_drawn_in_its_opening(site: Site, catalogue: Catalogue) -> None:
    mend = Mend(action="add-device", subject="kitchen-window", values=(("sheet", "contact"),))
    assert one(mend, site, catalogue) == ("ground", pytest.approx((5.15 - 3.9, 8.65)), "OC here")


def test_a_place_near_a_power_point_is_drawn_there(site: Site, catalogue: Catalogue) -> None:
    socket = Outlet(id="socket", name="Landing socket", kind="power", storey="first", at_m=(1.0, 1.0))
    mend = Mend(action="move-device", subject="control-unit", values=(("near", "socket"),))
    house = site.model_copy(update={"outlets": (socket,)})
    assert one(mend, house, catalogue) == ("first", (1.0, 1.0), "CU here")


def test_a_mend_without_a_place_has_no_sketch(site: Site, catalogue: Catalogue) -> None:
    mends = (
        Mend(action="change-lock", subject="front-door"),
        Mend(action="move-device", subject="control-unit", values=(("space", "landing"),)),
        Mend(action="move-device", subject="gone", values=ON_WALL),
        Mend(action="add-device", subject="kitchen-window", values=(("sheet", "gone"),)),
        Mend(action="turn-device", subject="md-living", values=(("heading_deg", 10.0),)),
    )
    assert suggestions(mends, site, catalogue, at_most=9) == ()


def test_two_mends_at_one_place_are_one_and_no_more_than_asked(site: Site, catalogue: Catalogue) -> None:
    move = Mend(action="move-device", subject="control-unit", values=ON_WALL)
    add = Mend(action="add-device", subject="kitchen-window", values=(("sheet", "contact"),))
    assert len(suggestions((move, move, add), site, catalogue, at_most=9)) == 2
    assert len(suggestions((move, move, add), site, catalogue, at_most=1)) == 1
