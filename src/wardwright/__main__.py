"""`python -m wardwright` does what the command `wardwright` does."""

import sys

from wardwright.cli.main import main

sys.exit(main())
