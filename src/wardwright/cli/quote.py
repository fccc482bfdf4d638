"""`wardwright quote`: what a job costs, in options."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from pathlib import Path
from typing import TYPE_CHECKING

from wardwright.cli.command import FINE, Command, add_sheets, add_site, columns
from wardwright.cli.given import SAMPLE, catalogue_from, site_from
from wardwright.cli.progress import progress

if TYPE_CHECKING:  # pydantic is not to be loaded for --help
    from wardwright.costing.firm import Firm
    from wardwright.costing.price_list import PriceList
    from wardwright.documents.content.paper import Logo


def add_arguments(parser: ArgumentParser) -> None:
    """Declare what the command takes."""
    add_site(parser)
    add_firm(parser)
    parser.add_argument("--json", action="store_true", help="print the quote as JSON")
    parser.add_argument("-o", "--output", metavar="FILE", help="write its lines as CSV as well")
    add_sheets(parser)


def add_firm(parser: ArgumentParser) -> None:
    """Let a command take a firm's own file and its price list."""
    parser.add_argument(
        "--firm",
        metavar="FILE",
        help="the firm's own file (TOML): name, rates, tax, terms; or sample:example-alarms, an invented one",
    )
    parser.add_argument(
        "--prices",
        metavar="FILE",
        help="the firm's price list (CSV or XLSX) with the columns code, cost, price, date; what is not in it has "
        "no price that is known",
    )


def firm_from(text: str | None) -> Firm | None:
    """Read the firm that a command was given."""
    if text is None:
        return None
    from wardwright.store.firms import read_firm, sample_firm

    if text.startswith(SAMPLE):
        return sample_firm(text.removeprefix(SAMPLE))
    return read_firm(Path(text))


def logo_from(text: str | None, firm: Firm | None) -> Logo | None:
    """Read the logo beside the firm's file that a command was given; the samples have none."""
    if firm is None or text is None or text.startswith(SAMPLE):
        return None
    from wardwright.store.firms import logo_beside

    return logo_beside(Path(text), firm)


def prices_from(text: str | None) -> PriceList | None:
    """Read the price list that a command was given."""
    if text is None:
        return None
    from wardwright.store.price_files import read_price_list

    return read_price_list(Path(text))


def run(arguments: Namespace) -> int:
    """Ask, put the options together, and print them."""
    catalogue = catalogue_from(arguments.sheet)
    firm, prices = firm_from(arguments.firm), prices_from(arguments.prices)
    site = site_from(arguments.site, catalogue)
    from wardwright.documents.writers.quote_text import quote_json, quote_table, quote_text
    from wardwright.questions.quoted import quote_of
    from wardwright.questions.table import ask

    with progress("asking the house and pricing what would mend it"):
        quote = quote_of(site, catalogue, answers=ask(site, catalogue), firm=firm, prices=prices)
    if arguments.output:
        from wardwright.documents.writers.csv_rows import write_csv
        from wardwright.errors import OfficeError
        from wardwright.store.texts import write_bytes

        write_bytes(Path(arguments.output), write_csv(quote_table(quote)), fault=OfficeError)
    if arguments.json:
        print(quote_json(quote), end="")
    else:
        from wardwright.documents.writers.text import WIDTH

        print(quote_text(quote, site, catalogue, width=columns(WIDTH)), end="")
    return FINE


COMMAND = Command(
    name="quote",
    summary="say what the job costs, in options",
    description="Price the design as it stands and options built from what would mend it, each told by what it "
    "changes: lines in exact money, tax, the difference, upkeep. A part without a price makes the sum unknown, never "
    "less. Tax rates are from memory: check with the local rules.",
    add_arguments=add_arguments,
    run=run,
)
