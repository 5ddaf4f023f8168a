"""Doses: amount, volume and strength that agree, and how they are made up."""
