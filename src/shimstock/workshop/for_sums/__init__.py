"""What a machine's book and its readings hold for a sum, each value with its origin."""

from shimstock.workshop.for_sums.found import found_for as found_for
from shimstock.workshop.for_sums.found import work_out_for as work_out_for
