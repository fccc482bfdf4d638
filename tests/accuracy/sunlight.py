"""The sun held against the published example, an independent algorithm, and worked beams."""

from __future__ import annotations

import math
import warnings
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta

import astral
import astral.sun
import numpy as np
import pandas as pd
import pvlib

from accuracy.rows import Row
from wardwright.geometry.raster import FloatArray
from wardwright.physics.sunlight.beam import incidence, lit_band, profile_angle
from wardwright.physics.sunlight.position import SunAngles, refraction, sun_angles, sun_place
from wardwright.physics.sunlight.rise_set import rise_and_set

EPOCH = datetime(2000, 1, 1, 12, tzinfo=UTC)
SPA = "I. Reda and A. Andreas, Solar Energy 76 (2004), worked example"
SHORT = "our short formula is out by 0.013 deg at most over a year; 0.02 deg is a twentieth of the sun's disc"
GOLDEN = (39.742476, -105.1786)
LATITUDES = (51.5, 39.7, 60.2, -33.9)


def days_of(when: datetime) -> float:
    """Days since the epoch of the formula."""
    return (when - EPOCH).total_seconds() / 86400.0


def angles_at(when: datetime, latitude_deg: float, longitude_deg: float) -> SunAngles:
    """Elevation and azimuth at one time. [rad]"""
    minutes = when.hour * 60.0 + when.minute + when.second / 60.0
    return sun_angles(
        sun_place(days_of(when)),
        minutes,
        latitude=math.radians(latitude_deg),
        longitude=math.radians(longitude_deg),
    )


def accuracy_rows() -> list[Row]:
    """The rows for docs/accuracy.md."""
    return [*_published_example(), *_over_a_year(), *_rise_and_set(), *_worked_beams()]


def _published_example() -> Iterator[Row]:
    when = datetime(2003, 10, 17, 19, 30, 30, tzinfo=UTC)
    true = angles_at(when, *GOLDEN)
    seen = true.elevation + refraction(true.elevation, pressure_hpa=820.0, air_c=11.0)
    zenith, azimuth = 90.0 - math.degrees(seen), math.degrees(true.azimuth)
    facing, tilt = math.radians(170.0), math.radians(30.0)
    onto = math.degrees(incidence(seen, true.azimuth, tilt=tilt, facing=facing))
    yield Row("zenith angle, 17 October 2003, Golden [deg]", SPA, 50.11162, zenith, 0.02, SHORT, "published")
    yield Row("azimuth, the same [deg]", SPA, 194.34024, azimuth, 0.02, SHORT, "published")
    yield Row("incidence on a plane 30 deg steep, 10 deg east of south, the same [deg]", SPA, 25.18700, onto, 0.02,
              SHORT, "published")  # fmt: skip
    library = "pvlib 0.16, its own solar position algorithm"
    yield Row("zenith angle without refraction, the same [deg]", library, 50.127954,
              90.0 - math.degrees(true.elevation), 0.02, SHORT, "reference tool")  # fmt: skip
    yield Row("equation of time, the same [min]", library, 14.641511,
              float(sun_place(days_of(when)).equation_of_time), 0.05, "3 s, 0.013 deg of the sun's way",
              "reference tool")  # fmt: skip
    own = "the short formula worked by hand before, a separate program"
    yield Row("zenith angle without refraction by the short formula, the same [deg]", own, 50.1279,
              90.0 - math.degrees(true.elevation), 6e-5, "four decimals are given", "prototype")  # fmt: skip
    yield Row(
        "azimuth by the short formula, the same [deg]", own, 194.3426, azimuth, 6e-5, "the same", "prototype"
    )
    yield Row("declination by the short formula, the same [deg]", own, -9.3158,
              math.degrees(sun_place(days_of(when)).declination), 6e-5, "the same", "prototype")  # fmt: skip
    with warnings.catch_warnings():
        warnings.simplefilter("ignore", DeprecationWarning)  # it asks pandas by an old name
        low = pvlib.solarposition.ephemeris(pd.DatetimeIndex([when]), *GOLDEN, pressure=82000, temperature=11)
    another = "pvlib 0.16, its low-precision almanac formula"
    yield Row("zenith angle by another short formula, the same [deg]", another,
              float(low["apparent_zenith"].iloc[0]), zenith, 0.02, SHORT, "reference tool")  # fmt: skip
    yield Row("azimuth by another short formula, the same [deg]", another, float(low["azimuth"].iloc[0]), azimuth,
              0.02, SHORT, "reference tool")  # fmt: skip
    here = astral.Observer(*GOLDEN, 1830.14)
    third = "astral 3.2"
    yield Row("elevation without refraction, the same [deg]", third,
              astral.sun.elevation(here, when, with_refraction=False), math.degrees(true.elevation), 0.02,
              "the same formula, other roundings", "reference tool")  # fmt: skip
    yield Row("azimuth by another program of the short formula, the same [deg]", third,
              astral.sun.azimuth(here, when), azimuth, 0.02, "the same formula, other roundings",
              "reference tool")  # fmt: skip
    sea_level = math.degrees(true.elevation + refraction(true.elevation))
    yield Row("elevation with refraction at sea level, the same [deg]", third,
              astral.sun.elevation(here, when), sea_level, 0.02, "another refraction formula",
              "reference tool")  # fmt: skip


def year_against_pvlib(latitude_deg: float, *, step_min: int = 10) -> tuple[FloatArray, FloatArray]:
    """Zenith errors and azimuth errors times sin zenith over 2026, sun up, at Greenwich. [deg]"""
    times = pd.date_range("2026-01-01", "2027-01-01", freq=f"{step_min}min", tz="UTC", inclusive="left")
    theirs = pvlib.solarposition.spa_python(times, latitude_deg, 0.0, delta_t=69.2, how="numpy")
    minutes = np.arange(len(times)) * float(step_min)
    days = days_of(times[0].to_pydatetime()) + minutes / 1440.0
    mine = sun_angles(sun_place(days), minutes % 1440.0, latitude=math.radians(latitude_deg), longitude=0.0)
    up = theirs["elevation"].to_numpy() > 0.0
    zenith = theirs["elevation"].to_numpy() - np.degrees(mine.elevation)
    turn = (theirs["azimuth"].to_numpy() - np.degrees(mine.azimuth) + 180.0) % 360.0 - 180.0
    sine = np.cos(np.radians(theirs["elevation"].to_numpy()))
    return np.asarray(zenith[up]), np.asarray((turn * sine)[up])


def _over_a_year() -> Iterator[Row]:
    source = "pvlib 0.16, solar position algorithm, all 10-minute steps of 2026 with the sun up"
    for latitude in LATITUDES:
        zenith, turn = year_against_pvlib(latitude)
        yield Row(f"largest error of the zenith angle over a year, latitude {latitude} [deg]", source, 0.02,
                  float(np.abs(zenith).max()), 0.0, "asked for; a twentieth of the sun's disc", "reference tool",
                  "at most")  # fmt: skip
        yield Row(f"root mean square of the same, latitude {latitude} [deg]", source, 0.005,
                  float(np.sqrt((zenith**2).mean())), 0.0, "0.004 was found by a separate program", "reference tool",
                  "at most")  # fmt: skip
        yield Row(f"largest error of the azimuth across the line of sight, latitude {latitude} [deg]", source, 0.02,
                  float(np.abs(turn).max()), 0.0, "asked for; a twentieth of the sun's disc", "reference tool",
                  "at most")  # fmt: skip


def _seconds(clock: str) -> float:
    hours, minutes, seconds = clock.split(":")
    return int(hours) * 3600.0 + int(minutes) * 60.0 + float(seconds)


def _golden(when: datetime) -> tuple[float, float, float]:
    found = rise_and_set(days_of(when), latitude=math.radians(GOLDEN[0]), longitude=math.radians(GOLDEN[1]))
    rise, noon, down = ((one - 7 * 60.0) * 60.0 for one in found)
    return rise, noon, down


def _zero_of_pvlib(day: datetime, about_s: float) -> float:
    """Where pvlib's elevation passes -0.8333 degrees within five minutes of a time, seven hours west. [s]"""
    seconds = np.arange(about_s - 300.0, about_s + 301.0)
    times = pd.DatetimeIndex([day]).repeat(len(seconds)) + pd.to_timedelta(seconds + 7 * 3600.0, unit="s")
    high = pvlib.solarposition.spa_python(times, *GOLDEN, altitude=1830.14, delta_t=67)[
        "elevation"
    ].to_numpy()
    return float(np.interp(0.8333, -high, seconds))


def _rise_and_set() -> Iterator[Row]:
    near = _golden(datetime(2015, 9, 20, tzinfo=UTC))
    jpl = "JPL ephemeris DE430, Golden, worked out by a reader of the algorithm who found its fault"
    root = "the zero of pvlib's elevation at -0.8333 deg"
    asked = "within a minute, as NOAA states; the algorithm's own routine is out by 100 s on this day"
    for name, clock, mine in zip(
        ("sunrise", "noon", "sunset"), ("05:46:15.93", "11:54:08.52", "18:01:21.47"), near, strict=True
    ):
        yield Row(f"{name}, 20 September 2015, near the equinox [s]", jpl, _seconds(clock), mine, 10.0, asked,
                  "published")  # fmt: skip
    for name, clock, mine in zip(
        ("sunrise", "sunset"), ("05:46:16.17", "18:01:21.57"), near[::2], strict=True
    ):
        yield Row(
            f"{name} against another zero, the same [s]",
            root,
            _seconds(clock),
            mine,
            10.0,
            asked,
            "reference tool",
        )
    faulty = _seconds("18:03:01.11")
    yield Row("how far sunset is from the faulty routine's, the same [s]", "the published fault, 100 s", 90.0,
              abs(faulty - near[2]), 0.0, "finding the zero must not share the fault", "published",
              "at least")  # fmt: skip
    day = datetime(2003, 10, 17, tzinfo=UTC)
    example = _golden(day)
    table = "solar position algorithm, its own routine, run in pvlib 0.16"
    for name, clock, mine in zip(
        ("sunrise", "noon"), ("06:12:43.46", "11:46:04.96"), example[:2], strict=True
    ):
        yield Row(f"{name}, 17 October 2003 [s]", table, _seconds(clock), mine, 10.0, asked, "reference tool")
    yield Row("sunset, 17 October 2003 [s]", root, _zero_of_pvlib(day, example[2]), example[2], 10.0, asked,
              "reference tool")  # fmt: skip
    yield Row("how far sunset is from that routine's 17:20:19.18, the same [s]", "the same fault on this day",
              80.0, abs(_seconds("17:20:19.18") - example[2]), 0.0, "finding the zero must not share the fault",
              "reference tool", "at least")  # fmt: skip
    worst = 0.0
    for latitude in (51.5, 39.7, 60.2, -33.9):
        here = astral.Observer(latitude, 0.0)
        for month in range(1, 13):
            when = datetime(2026, month, 21, tzinfo=UTC)
            mine = rise_and_set(days_of(when), latitude=math.radians(latitude), longitude=0.0)
            for found, theirs in ((mine.rise_min, astral.sun.sunrise), (mine.set_min, astral.sun.sunset)):
                other = theirs(here, when.date()) - when
                worst = max(worst, abs(found * 60.0 - other / timedelta(seconds=1)))
    yield Row("sunrise and sunset, the 21st of each month of 2026 at four latitudes: largest error [s]", "astral 3.2",
              60.0, worst, 0.0, "NOAA states one minute for latitudes up to 72", "reference tool",
              "at most")  # fmt: skip


BEAMS = (
    ("21 June 12:00", datetime(2026, 6, 21, 12, tzinfo=UTC), 61.9435, 179.1139, 61.946, 0.480, 1.119, 61.947),
    ("21 December 12:00", datetime(2026, 12, 21, 12, tzinfo=UTC), 15.1203, 180.4597, 15.121, 3.331, 7.772, 15.127),
    ("20 March 09:00", datetime(2026, 3, 20, 9, tzinfo=UTC), 25.1399, 126.3001, 38.404, 1.135, 2.649, 57.593),
    ("20 March 15:00", datetime(2026, 3, 20, 15, tzinfo=UTC), 27.0453, 230.1454, 38.542, 1.130, 2.636, 55.196),
)  # fmt: skip


def _worked_beams() -> Iterator[Row]:
    source = "worked with pvlib 0.16: latitude 51.5, longitude 0, south window from 0.9 to 2.1 m"
    south = math.pi
    for name, when, elevation, azimuth, profile, near, far, onto in BEAMS:
        true = angles_at(when, 51.5, 0.0)
        seen = true.elevation + refraction(true.elevation)
        steep = profile_angle(seen, true.azimuth, facing=south)
        low, high = lit_band(steep, sill=0.9, head=2.1)
        # What 0.02 deg of the sun moves the edge of the patch by.
        slack = math.radians(0.02) / math.sin(math.radians(profile)) ** 2
        for what, unit, told, mine, within in (
            ("elevation", "deg", elevation, math.degrees(seen), 0.02),
            ("azimuth", "deg", azimuth, math.degrees(true.azimuth), 0.02),
            ("profile angle", "deg", profile, math.degrees(steep), 0.02),
            ("near edge of the lit floor", "m", near, float(low), 0.9 * slack + 0.0005),
            ("far edge of the lit floor", "m", far, float(high), 2.1 * slack + 0.0005),
            ("incidence", "deg", onto,
             math.degrees(incidence(seen, true.azimuth, tilt=math.pi / 2, facing=south)), 0.02),
        ):  # fmt: skip
            why = "what 0.02 deg of the sun comes to, and the figure's own rounding" if unit == "m" else SHORT
            yield Row(f"{what}, {name} [{unit}]", source, told, mine, within, why, "reference tool")
