"""Every exception Wardwright raises on purpose.

::

    WardwrightError
    |-- InputError (ValueError)          what somebody gave us is wrong: exit status 2
    |   |-- DocumentError                a site document that does not hold together
    |   |-- NotesError                   a line of notes
    |   |-- IntakeError                  a building file or a drawing
    |   |-- CatalogueError               a device sheet or a row of figures
    |   |-- OfficeError                  a firm's own file, or its price list
    |   `-- JobError                     a job file, or what is asked of it
    |-- NotComputable                    a question or rule lacks what it needs: never "passed"
    |   `-- NoneOfAKind                  the site has no device of the kind that it is about
    |-- Stopped                          long work that somebody stopped: nothing of it is kept
    |-- GeometryError (ValueError)       arrays that no answer can be made from
    `-- OutOfRangeError (ValueError)     numbers outside of what a formula holds for

A message says what is wrong, where, and what to do about it.
"""

from __future__ import annotations


class WardwrightError(Exception):
    """Base of all errors raised on purpose."""


class InputError(WardwrightError, ValueError):
    """Something that was handed in is wrong.

    Parameters
    ----------
    what : str
        The fault, one sentence without a full stop.
    where : str
        The place: a file, a line, an object's id.
    cure : str
        What to do about it, one sentence without a full stop.
    """

    def __init__(self, what: str, *, where: str, cure: str) -> None:
        self.what = what
        self.where = where
        self.cure = cure
        super().__init__(f"{where}: {what}. {cure}.")


class DocumentError(InputError):
    """A site document that does not hold together."""


class NotesError(InputError):
    """A line of notes that cannot be read."""


class IntakeError(InputError):
    """A building file or a drawing that cannot be read."""


class CatalogueError(InputError):
    """A device sheet or a row of figures that cannot be used."""


class OfficeError(InputError):
    """A firm's own file, or its price list, that cannot be used."""


class JobError(InputError):
    """A job file that cannot be used, or a wish that it cannot grant."""


class NotComputable(WardwrightError):  # noqa: N818 - it is a state, not a fault
    """What a question or rule needs is not known: said as such, never as passed.

    Parameters
    ----------
    reason : str
        What is not known, without a full stop.
    cure : str, default ""
        What to add, without a full stop; empty where the reason says it.
    """

    def __init__(self, reason: str, *, cure: str = "") -> None:
        self.cure = cure
        super().__init__(reason)


class NoneOfAKind(NotComputable):
    """The site has no device of the kind that a rule is about: not run, and no fault unless one is wanted.

    Parameters
    ----------
    reason : str
        Which device there is none of, without a full stop.
    kind : str
        Its kind, as device sheets write it.
    cure : str, default ""
        What to add, without a full stop; empty where the reason says it.
    """

    def __init__(self, reason: str, *, kind: str, cure: str = "") -> None:
        self.kind = kind
        super().__init__(reason, cure=cure)


class Stopped(WardwrightError):  # noqa: N818 - it is a wish, not a fault
    """Long work that somebody stopped between two of its steps."""


class GeometryError(WardwrightError, ValueError):
    """Arrays that no answer can be made from."""


class OutOfRangeError(WardwrightError, ValueError):
    """Numbers outside of the range that a formula holds for.

    Parameters
    ----------
    what : str
        What is out of range, one sentence without a full stop.
    mask : ndarray
        True where it is.
    """

    def __init__(self, what: str, *, mask: object) -> None:
        self.mask = mask
        super().__init__(what)
