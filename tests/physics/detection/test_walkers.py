from wardwright.physics.detection.walkers import HEIGHTS_M, body_of


def test_lower_postures_are_lower_and_pets_narrower() -> None:
    heights = [body_of(posture).height for posture in ("upright", "crouch", "crawl", "pet")]
    assert heights == sorted(heights, reverse=True)
    assert len(set(heights)) == len(HEIGHTS_M)
    assert body_of("pet").radius < body_of("crawl").radius
