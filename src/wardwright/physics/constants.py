"""Constants of nature that more than one engine needs."""

from __future__ import annotations

LIGHT_M_S = 299_792_458.0
"""Speed of light. [m/s] (SI, exact)"""
VACUUM_F_M = 8.8541878128e-12
"""Permittivity of free space. [F/m] (CODATA 2018)"""
