"""The languages the program speaks: English as it is written, others through gettext catalogues."""
