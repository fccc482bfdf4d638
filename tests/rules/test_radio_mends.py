from common.radio_house import CATALOGUE, device, long_house
from wardwright.rules.radio_links import links_of
from wardwright.rules.radio_mends import link_mends


def test_a_repeater_is_offered_and_only_a_sheet_that_sends_enough_more() -> None:
    site = long_house(device("far", "contact-radio", 23.0))
    link = links_of(site, CATALOGUE, site.device("far"))[0]
    little, much = (
        link_mends(site, CATALOGUE, site.device("far"), link=link, short_db=short) for short in (0.0, 99.0)
    )
    assert [mend.action for mend in much] == ["add-device"]
    assert [mend.action for mend in little][:1] == ["add-device"]
