"""The version, kept here so that showing it costs no search through installed packages."""

VERSION = "0.1.0"
