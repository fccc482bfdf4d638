"""The client's terms and notices: slots for the firm's own words, each on a page of its own."""

from __future__ import annotations

from datetime import date

from wardwright.documents.content.discretion import discreet
from wardwright.documents.content.forms.slots import SIGNED, empty_rows
from wardwright.documents.content.paper import Column, Paper, Section
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site

FOOT = "A frame to fill in: have the words checked by somebody who knows the law of the place before they are used."
TERMS = (
    "Who we are: name, address, tax number",
    "What is fitted: proposal of (date)",
    "Price, tax, quote of (date)",
    "Deposit, and what it is for",
    "To be paid when",
    "Whose the equipment is, from when",
    "Running costs: messages, cells, service",
    "Warranty, and what it leaves out",
    "How long our papers are kept",
    "Complaints go to",
)
HOLDS = (
    (
        "The installer code is ours until the price is paid; then it is handed over on request, face to "
        "face, and never locks the customer out."
    ),
    "What is protected, and what is not, stands in the proposal and the risk record, and both are signed with this.",
    "The customer tells us of changes, shuts and locks before setting, and keeps two keyholders.",
    "The law of the place limits how long a sounder outside may go on; who is told of it is agreed here.",
    "Smoke, heat and CO devices that are linked do not replace the dwelling\u2019s own alarms.",
)
PRIVACY = (
    "We keep: name and address, the plan of the house, how it is used, what is fitted, readings, and what we did.",
    "We keep it to design, fit, prove and look after the alarm, and to answer for our work.",
    "It stays on our own machine, under lock; nobody else is given it unless you or the law ask.",
    "We keep no code, and not when you are away.",
    "You may see it, have it put right, and have it erased when we need no longer answer for the work.",
)
PRIVACY_BLANKS = ("Who answers for it, and their telephone", "Kept until", "Who else has it, and why")
CANCEL = {
    "uk-eu": "Agreed away from our premises, such as at your kitchen table, you may cancel within 14 days without"
    " giving a reason (from memory: check the law of the place). Left with you to decide later, it may "
    "be otherwise.",
    "us": "Agreed at your home, the law of the place may let you cancel within some days: how many, we write here"
    " before you sign.",
}
CANCEL_BLANKS = (
    "You may cancel until (date)",
    "To: name, address, how to reach us",
    "I cancel the order of (date), for",
    "Name and address of the customer",
    "Date, signature",
)
EARLY = (
    "I ask that work begins before the time for cancelling is over. I have been told that I may still cancel, and"
    " that I then pay for what was done until then."
)
EARLY_BLANKS = ("Work is to begin on", "Name and address of the customer", "Date, signature")
CARE = (
    (
        "At each visit: log read, every device tried, sounders, times, cells under load, each way of messages, "
        "readings held against those of the first day, names and keyholders brought up to date."
    ),
    "Cells and devices are changed before their end, together where one visit can do them.",
)
CARE_BLANKS = (
    "From, and for how long",
    "Visits a year, of these from afar",
    "Price, and how it may change",
    "How soon we come for a fault",
    "How it is ended, by either",
)


def contract(site: Site, catalogue: Catalogue, *, drawn_up: date) -> Paper:
    """Lay out what is agreed in writing.

    Parameters
    ----------
    site : Site
        Its name and place.
    catalogue : Catalogue
        Says which names give something away.
    drawn_up : date
        The day the paper is made.

    Returns
    -------
    Paper
        Terms, privacy notice, cancellation notice, request for an early start, maintenance agreement.
    """
    return Paper(
        title="Terms and notices",
        house=discreet(site.name, site, catalogue),
        copy="client",
        drawn_up=drawn_up,
        foot=FOOT,
        sections=(
            Section("Terms", points=HOLDS, blanks=(*TERMS, *SIGNED)),
            Section("Privacy notice", points=PRIVACY, blanks=PRIVACY_BLANKS, is_form=True),
            Section(
                "Cancellation notice",
                text=(CANCEL[site.place.rule_pack],),
                blanks=CANCEL_BLANKS,
                is_form=True,
            ),
            Section("Request to begin early", text=(EARLY,), blanks=EARLY_BLANKS),
            Section("Maintenance agreement", points=CARE, blanks=(*CARE_BLANKS, *SIGNED), is_form=True),
            Section(
                "Visits agreed",
                table=empty_rows("Visits", (Column("When"), Column("What", share=3.0)), count=4),
            ),
        ),
    )
