"""`wardwright campaign`: send seeded intruders into a site and count who is caught."""

from __future__ import annotations

from argparse import ArgumentParser, ArgumentTypeError, Namespace

from wardwright.cli.command import FINE, Command, add_sheets, add_site, columns
from wardwright.cli.given import catalogue_from, site_from
from wardwright.cli.progress import progress

MOST_TRIALS = 2_000_000
"""More intruders than this are refused: they would tell no more, and fill the memory. [-]"""
MOST_SEED = 2**63 - 1


def whole(written: str, *, least: int, most: int) -> int:
    """Read a whole number within limits."""
    try:
        value = int(written)
    except ValueError:
        raise ArgumentTypeError(f"'{written}' is not a whole number") from None
    if not least <= value <= most:
        raise ArgumentTypeError(f"{written} is not between {least} and {most}")
    return value


def trials(written: str) -> int:
    """Read how many intruders."""
    return whole(written, least=1, most=MOST_TRIALS)


def seed(written: str) -> int:
    """Read a seed."""
    return whole(written, least=0, most=MOST_SEED)


def add_arguments(parser: ArgumentParser) -> None:
    """Declare what the command takes."""
    add_site(parser)
    parser.add_argument(
        "--trials", metavar="N", type=trials, default=None, help="how many intruders; 100000 by default"
    )
    parser.add_argument(
        "--seed", metavar="S", type=seed, default=None, help="the same seed sends the same intruders"
    )
    parser.add_argument("--json", action="store_true", help="print everything as JSON")
    add_sheets(parser)


def run(arguments: Namespace) -> int:
    """Run a campaign, and print what it says."""
    catalogue = catalogue_from(arguments.sheet)
    site = site_from(arguments.site, catalogue)
    from wardwright.trials.campaign.report import report_of
    from wardwright.trials.campaign.run import TRIALS, campaign
    from wardwright.trials.draws import SEED

    count = TRIALS if arguments.trials is None else arguments.trials
    start = SEED if arguments.seed is None else arguments.seed
    with progress(f"sending {count} intruders"):
        report = report_of(campaign(site, catalogue, trials=count, seed=start), catalogue)
    if arguments.json:
        print(report.model_dump_json(indent=1))
        return FINE
    from wardwright.documents.writers.campaign_text import campaign_text
    from wardwright.documents.writers.text import WIDTH

    print(campaign_text(report, width=columns(WIDTH)), end="")
    return FINE


COMMAND = Command(
    name="campaign",
    summary="send seeded intruders into a site and count who is caught",
    description="Send seeded intruders who differ in way in, pace, order of goals and luck into a site. Prints how "
    "many are caught before a target and before the control unit, with intervals; which paths beat the design and "
    "why; what is left when a detector, a sounder or a message path is lost; and what the numbers cannot know. For "
    "the fitter alone: it tells how to get in.",
    add_arguments=add_arguments,
    run=run,
)
